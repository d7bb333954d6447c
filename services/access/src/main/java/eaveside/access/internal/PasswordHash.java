package eaveside.access.internal;

import eaveside.kernel.Decision;
import java.nio.CharBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.text.Normalizer;
import java.util.Arrays;
import java.util.Base64;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.bouncycastle.crypto.generators.Argon2BytesGenerator;
import org.bouncycastle.crypto.params.Argon2Parameters;

/**
 * An Argon2id hash (RFC 9106) with the cost that it was made at, in the text form that the reference implementation
 * writes: {@code $argon2id$v=19$m=…,t=…,p=…$salt$hash}, both in Base64 without padding.
 */
@Decision
final class PasswordHash {
    private static final Pattern FORM = Pattern.compile(
            "\\$argon2id\\$v=19\\$m=(\\d{1,7}),t=(\\d{1,3}),p=(\\d{1,3})\\$([A-Za-z0-9+/]+)\\$([A-Za-z0-9+/]+)");
    private static final int HASH_BYTES = 32;

    private final Cost cost;
    private final byte[] salt;
    private final byte[] hash;

    PasswordHash(Cost cost, byte[] salt, byte[] hash) {
        this.cost = cost;
        this.salt = salt;
        this.hash = hash;
    }

    /** Memory in KiB, passes over it, lanes. */
    record Cost(int memory, int passes, int lanes) {}

    static PasswordHash of(char[] password, byte[] salt, Cost cost) {
        return new PasswordHash(cost, salt, derive(password, salt, cost, HASH_BYTES));
    }

    static PasswordHash parse(String text) {
        Matcher form = FORM.matcher(text);
        if (!form.matches()) {
            throw new IllegalStateException("a stored password hash has a form that is not known here");
        }
        return new PasswordHash(
                new Cost(
                        Integer.parseInt(form.group(1)),
                        Integer.parseInt(form.group(2)),
                        Integer.parseInt(form.group(3))),
                Base64.getDecoder().decode(form.group(4)),
                Base64.getDecoder().decode(form.group(5)));
    }

    Cost cost() {
        return cost;
    }

    boolean matches(char[] password) {
        return MessageDigest.isEqual(hash, derive(password, salt, cost, hash.length));
    }

    @Override
    public String toString() {
        Base64.Encoder base64 = Base64.getEncoder().withoutPadding();
        return "$argon2id$v=19$m=" + cost.memory + ",t=" + cost.passes + ",p=" + cost.lanes + "$"
                + base64.encodeToString(salt) + "$" + base64.encodeToString(hash);
    }

    private static byte[] derive(char[] password, byte[] salt, Cost cost, int length) {
        // The same password typed on another keyboard must give the same bytes: NIST SP 800-63B-4 §3.1.1.2 (NFC or
        // NFKC).
        byte[] bytes = Normalizer.normalize(CharBuffer.wrap(password), Normalizer.Form.NFKC)
                .getBytes(StandardCharsets.UTF_8);
        Argon2BytesGenerator generator = new Argon2BytesGenerator();
        generator.init(new Argon2Parameters.Builder(Argon2Parameters.ARGON2_id)
                .withVersion(Argon2Parameters.ARGON2_VERSION_13)
                .withMemoryAsKB(cost.memory)
                .withIterations(cost.passes)
                .withParallelism(cost.lanes)
                .withSalt(salt)
                .build());
        byte[] hash = new byte[length];
        generator.generateBytes(bytes, hash);
        Arrays.fill(bytes, (byte) 0);
        return hash;
    }
}
