package eaveside.access;

import eaveside.access.internal.Proquint;
import eaveside.kernel.Shared;
import java.security.SecureRandom;

/** Makes up a password that can be read out, typed on a phone and not guessed, such as {@code lusab-babad-gutih-tugad}. */
@Shared
public class GeneratePassword {
    private static final SecureRandom RANDOM = new SecureRandom();
    private static final int WORDS = 4;

    /** Four pronounceable words of 16 random bits each: 64 bits. */
    public String generate() {
        return Proquint.of(RANDOM.ints(WORDS, 0, 1 << 16).toArray());
    }
}
