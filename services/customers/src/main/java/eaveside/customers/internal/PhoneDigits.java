package eaveside.customers.internal;

import eaveside.kernel.Decision;
import java.util.regex.Pattern;

/**
 * The digits of a phone number in any writing: with blanks, brackets, dots or dashes, with a country's or an area's code or
 * without.
 */
@Decision
record PhoneDigits(String digits) {
    /** What a number's subscriber has in every writing: the seven digits after the area code (NANP). */
    private static final int SUBSCRIBER = 7;

    private static final Pattern WRITTEN = Pattern.compile("[0-9 ()+./\u00a0\u2010-\u2013-]{7,40}");

    /** No digits where the text can be no phone number. */
    static PhoneDigits of(String text) {
        String given = text.strip();
        return new PhoneDigits(WRITTEN.matcher(given).matches() ? given.replaceAll("[^0-9]", "") : "");
    }

    boolean isPhone() {
        return digits.length() >= SUBSCRIBER;
    }

    /** What is looked for. */
    String last() {
        return digits.substring(digits.length() - SUBSCRIBER);
    }
}
