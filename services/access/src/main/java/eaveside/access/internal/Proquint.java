package eaveside.access.internal;

import eaveside.kernel.Decision;

/**
 * Numbers as words that can be read, spelled and pronounced: D. S. Wilkerson, "A Proposal for Proquints", 2009,
 * arXiv:0901.4016. Sixteen bits make a word of consonant, vowel, consonant, vowel, consonant.
 */
@Decision
public final class Proquint {
    private static final String CONSONANTS = "bdfghjklmnprstvz";
    private static final String VOWELS = "aiou";

    private Proquint() {}

    /** The words of the numbers' low sixteen bits, with hyphens between. */
    public static String of(int... numbers) {
        StringBuilder text = new StringBuilder();
        for (int number : numbers) {
            if (!text.isEmpty()) {
                text.append('-');
            }
            text.append(CONSONANTS.charAt(number >> 12 & 15))
                    .append(VOWELS.charAt(number >> 10 & 3))
                    .append(CONSONANTS.charAt(number >> 6 & 15))
                    .append(VOWELS.charAt(number >> 4 & 3))
                    .append(CONSONANTS.charAt(number & 15));
        }
        return text.toString();
    }
}
