package eaveside.access;

/**
 * What an authenticator app is told, to be scanned or typed.
 *
 * @param  secret in base 32
 * @param  uri    the same as a Key URI ({@code otpauth://totp/...}), which apps scan
 */
public record AppKey(String secret, String uri) {
    /** Never the secret. */
    @Override
    public String toString() {
        return "(the key of an app)";
    }
}
