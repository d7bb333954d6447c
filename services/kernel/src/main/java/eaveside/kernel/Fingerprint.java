package eaveside.kernel;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/**
 * What a command says, in 64 hex digits: tells a retry (same id, same content: answer as before) from a clash (same
 * id, other content: 409). Commands are records all the way down, so their text form is their content.
 */
public record Fingerprint(String hex) {
    public static Fingerprint of(Record command) {
        try {
            byte[] hash = MessageDigest.getInstance("SHA-256")
                    .digest(command.toString().getBytes(StandardCharsets.UTF_8));
            return new Fingerprint(HexFormat.of().formatHex(hash));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java runtime has SHA-256", e);
        }
    }
}
