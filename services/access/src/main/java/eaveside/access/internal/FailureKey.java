package eaveside.access.internal;

import eaveside.kernel.Digest;
import eaveside.kernel.Network;
import eaveside.kernel.UserId;
import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;

/**
 * Whose failures are counted: the SHA-256 of a username, an address or a browser, since what is typed as a username may be a password
 * in the wrong field.
 */
@Embeddable
record FailureKey(
        @Enumerated(EnumType.STRING) @Column(name = "type") FailureType type,
        @Column(name = "subject") String subject) {
    static FailureKey username(String username) {
        return new FailureKey(FailureType.USERNAME, Digest.sha256(username));
    }

    /** Of passkeys from an address: apart from its passwords, which they shall not keep waiting. */
    static FailureKey passkeys(String address) {
        return new FailureKey(FailureType.ADDRESS, Digest.sha256("passkeys of " + Network.of(address)));
    }

    static FailureKey address(String address) {
        return new FailureKey(FailureType.ADDRESS, Digest.sha256(Network.of(address)));
    }

    /** Of codes in a browser in which the user has shown one before: apart from those that are tried elsewhere. */
    static FailureKey code(UserId user, String browser) {
        return new FailureKey(FailureType.CODE, Digest.sha256(user + " " + browser));
    }

    static FailureKey code(UserId user) {
        return new FailureKey(FailureType.CODE, Digest.sha256(user.toString()));
    }

    static FailureKey browser(UserId user, String hash) {
        return new FailureKey(FailureType.BROWSER, Digest.sha256(user + " " + hash));
    }
}
