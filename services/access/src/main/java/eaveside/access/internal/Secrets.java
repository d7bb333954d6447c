package eaveside.access.internal;

import eaveside.kernel.Decision;
import java.security.SecureRandom;
import java.util.Base64;

/** Random texts that let somebody in. 256 bits cannot be guessed, so a plain SHA-256 of them may be kept to find them by. */
@Decision
public final class Secrets {
    private static final SecureRandom RANDOM = new SecureRandom();
    private static final int BYTES = 32;

    private Secrets() {}

    public static String random() {
        byte[] random = new byte[BYTES];
        RANDOM.nextBytes(random);
        return Base64.getUrlEncoder().withoutPadding().encodeToString(random);
    }
}
