package eaveside.access;

import eaveside.access.internal.PasswordStrength;
import eaveside.kernel.Decision;
import java.nio.CharBuffer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * A password that someone wants to have from now on. Long rather than composed: NIST SP 800-63B-4 §3.1.1.2 asks for at
 * least 15 characters where the password is the only factor, allows at least 64, counts code points and forbids rules
 * of composition; what is easily guessed is refused. Blanks count, at either end too: what is typed is the password.
 */
@Decision
public final class NewPassword {
    /** In code points. */
    public static final int SHORTEST = 15;

    /** In code points. */
    public static final int LONGEST = 128;

    private static final int FEWEST_DIFFERENT = 6;
    private static final String GUESSED =
            "is easily guessed. A few words that only you would put together are safe and easy to keep in mind";

    private final String text;

    /** Refuses with {@link AccessRefusal.WeakPassword} one that is too short, too long, or made of a few characters. */
    public NewPassword(String text) {
        int length = text.codePointCount(0, text.length());
        if (length < SHORTEST) {
            throw new AccessRefusal.WeakPassword("needs at least " + SHORTEST
                    + " characters. A few words that only you would put together are easiest to keep in mind");
        }
        if (length > LONGEST) {
            throw new AccessRefusal.WeakPassword("is longer than " + LONGEST + " characters");
        }
        if (text.codePoints().distinct().count() < FEWEST_DIFFERENT || isSequence(text)) {
            throw new AccessRefusal.WeakPassword("repeats itself too much to be safe");
        }
        if (PasswordStrength.isEasilyGuessed(text, List.of())) {
            throw new AccessRefusal.WeakPassword(GUESSED);
        }
        this.text = text;
    }

    /** Refuses the one that was there before: whoever else knows it would still come in. */
    void requireOther(char[] before) {
        if (text.contentEquals(CharBuffer.wrap(before))) {
            throw new AccessRefusal.WeakPassword("is the one that you have. Choose another");
        }
    }

    /** Refuses also one that the name of the company makes easy to guess. */
    void requireUnlike(Username username, String name, List<String> companyWords) {
        requireUnlike(username, name);
        List<String> words = new ArrayList<>(companyWords);
        words.add(username.value());
        words.add(name);
        if (PasswordStrength.isEasilyGuessed(text, words)) {
            throw new AccessRefusal.WeakPassword(GUESSED);
        }
    }

    /** Refuses a password that holds the username or the name of its user, or is held by them. */
    void requireUnlike(Username username, String name) {
        String lower = text.toLowerCase(Locale.ROOT);
        for (String known : new String[] {username.value(), name.toLowerCase(Locale.ROOT)}) {
            if (known.length() > 3 && lower.contains(known) && lower.length() - known.length() < SHORTEST) {
                throw new AccessRefusal.WeakPassword("is too much like the username or the name");
            }
        }
    }

    char[] characters() {
        return text.toCharArray();
    }

    /** Whether each character follows the one before it, as in 123456 or fedcba. */
    private static boolean isSequence(String text) {
        int up = 0;
        int down = 0;
        for (int i = 1; i < text.length(); i++) {
            int step = text.charAt(i) - text.charAt(i - 1);
            up += step == 1 ? 1 : 0;
            down += step == -1 ? 1 : 0;
        }
        return Math.max(up, down) * 2 > text.length();
    }

    /** Never the password. */
    @Override
    public String toString() {
        return "(a password)";
    }
}
