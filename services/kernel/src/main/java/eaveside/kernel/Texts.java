package eaveside.kernel;

import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Checks on free text that constructors of several modules share. */
public final class Texts {
    private Texts() {}

    /** The text without surrounding blanks; refuses a missing, empty or overlong one. */
    public static String required(String field, @Nullable String text, int longest) {
        String trimmed = text == null ? "" : text.strip();
        if (trimmed.isEmpty()) {
            throw new KernelRefusal.BadText(field, "is required");
        }
        return within(field, trimmed, longest);
    }

    /** The text without surrounding blanks, empty where missing; refuses an overlong one. */
    public static String optional(String field, @Nullable String text, int longest) {
        return within(field, text == null ? "" : text.strip(), longest);
    }

    /** The text that was entered, or none where nobody could see anything of it: such as a name of nothing but a mark of direction. */
    public static String seen(String text) {
        return text.codePoints().anyMatch(Texts::isSeen) ? text : "";
    }

    /** A pattern for SQL's {@code like}, in lower case: what begins with the text as it was typed. */
    public static String beginning(String typed) {
        return typed.strip().toLowerCase(Locale.ROOT).replaceAll("([\\\\%_])", "\\\\$1") + "%";
    }

    private static boolean isSeen(int codePoint) {
        return switch (Character.getType(codePoint)) {
            case Character.CONTROL,
                    Character.FORMAT,
                    Character.SPACE_SEPARATOR,
                    Character.LINE_SEPARATOR,
                    Character.PARAGRAPH_SEPARATOR -> false;
            default -> true;
        };
    }

    /** Half of a pair of characters, which no encoding can store. */
    private static boolean isHalf(int codePoint) {
        return codePoint >= Character.MIN_SURROGATE && codePoint <= Character.MAX_SURROGATE;
    }

    private static String within(String field, String text, int longest) {
        if (text.length() > longest) {
            throw new KernelRefusal.BadText(field, "is longer than " + longest + " characters");
        }
        if (text.indexOf('\u0000') >= 0 || text.codePoints().anyMatch(Texts::isHalf)) {
            throw new KernelRefusal.BadText(field, "contains a character that cannot be stored");
        }
        return text;
    }
}
