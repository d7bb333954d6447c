package eaveside.access.internal;

import eaveside.access.Admitted;
import eaveside.access.Duty;
import eaveside.access.Role;
import eaveside.access.SessionId;
import eaveside.access.Sight;
import eaveside.access.SignedIn;
import eaveside.access.TokenScope;
import eaveside.access.User;
import eaveside.kernel.UserId;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.time.Instant;
import java.util.UUID;
import org.hibernate.annotations.Formula;
import org.hibernate.annotations.OptimisticLock;
import org.jspecify.annotations.Nullable;

/** A user with the hash of the password. */
@Entity
@Table(name = "app_user")
public class UserRow {
    @Id
    UUID id;

    @Column(updatable = false)
    String username;

    String name;

    @Enumerated(EnumType.STRING)
    Role role;

    boolean active;

    // A sign-in may store a stronger hash: that is no change that an open form should lose against.
    @Column(name = "password_hash")
    @OptimisticLock(excluded = true)
    String passwordHash;

    @OptimisticLock(excluded = true)
    int credentials;

    // Chosen by somebody else than the user.
    @Column(name = "password_given")
    @OptimisticLock(excluded = true)
    boolean passwordGiven;

    @Version
    int version;

    // Asked with the user at every request, so read with the user.
    @Formula("(select r.reads_books from office_rights r)")
    boolean officeReadsBooks;

    @Formula("(exists (select 1 from passkey p where p.user_id = id)"
            + " or exists (select 1 from authenticator_app a where a.user_id = id and a.confirmed_at is not null))")
    boolean hasSecondFactor;

    @Formula("(exists (select 1 from user_preference f where f.user_id = id and f.comfortable))")
    boolean comfortable;

    UserRow() {}

    public String passwordHash() {
        return passwordHash;
    }

    /** The password that somebody made up for the user, until they choose one of their own; null where they have. */
    public @Nullable String givenPasswordHash() {
        return passwordGiven ? passwordHash : null;
    }

    public int credentials() {
        return credentials;
    }

    /** Whether a session or an attempt that began with these credentials may go on. */
    public boolean admits(int begunWith) {
        return active && credentials == begunWith;
    }

    /** Whoever is shut out stays so with what they had: sessions do not come back to life with them. */
    public void become(User user) {
        if (active && !user.active()) {
            this.credentials++;
        }
        this.name = user.name();
        this.role = user.role();
        this.active = user.active();
    }

    /** Another password of the user's own: what began with the one before has ended. */
    public void setPassword(String hash) {
        this.passwordHash = hash;
        this.passwordGiven = false;
        this.credentials++;
    }

    /** A password that somebody else has made up. */
    public void givePassword(String hash) {
        setPassword(hash);
        this.passwordGiven = true;
    }

    /** Every session has ended, and whatever was begun with these credentials. */
    public void endSessions() {
        this.credentials++;
    }

    boolean owesSecondFactor(@Nullable Instant shown) {
        return hasSecondFactor && shown == null;
    }

    private @Nullable Duty duty(@Nullable Instant secondShown, boolean ownersNeedTwo) {
        if (owesSecondFactor(secondShown)) {
            return Duty.SECOND_FACTOR;
        }
        if (passwordGiven) {
            return Duty.NEW_PASSWORD;
        }
        return ownersNeedTwo && role == Role.OWNER && !hasSecondFactor ? Duty.SET_UP_SECOND_FACTOR : null;
    }

    void strengthen(String hashOfSamePassword) {
        this.passwordHash = hashOfSamePassword;
    }

    SignInGate.Candidate toCandidate(String address, @Nullable String browser) {
        return new SignInGate.Candidate(username, address, new UserId(id), passwordHash, credentials, browser);
    }

    public User toUser() {
        return new User(new UserId(id), username, name, role, active, version);
    }

    Admitted toAdmitted(SessionId session, @Nullable Instant secondShown, boolean ownersNeedTwo) {
        return new Admitted(
                toUser(),
                Sight.of(role, officeReadsBooks),
                session,
                duty(secondShown, ownersNeedTwo),
                null,
                comfortable);
    }

    /** A script owes nothing. */
    public Admitted toAdmitted(TokenScope scope) {
        return new Admitted(toUser(), Sight.of(role, officeReadsBooks), null, null, scope, false);
    }

    SignedIn toSignedIn() {
        return new SignedIn(toUser(), credentials, false);
    }

    /** With a passkey, or a code after the password. */
    SignedIn toStronglySignedIn() {
        return new SignedIn(toUser(), credentials, true);
    }
}
