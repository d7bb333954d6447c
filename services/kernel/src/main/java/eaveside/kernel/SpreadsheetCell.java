package eaveside.kernel;

import java.text.Normalizer;

/**
 * Texts in files that people open with a spreadsheet, which runs what looks like a formula (OWASP, "CSV Injection"). Such a
 * text gets an apostrophe in front, which a spreadsheet does not show; plain numbers stay numbers.
 */
public final class SpreadsheetCell {
    private static final String BEGINS_A_FORMULA = "=+-@|\u2212";
    private static final char GUARD = '\'';

    private SpreadsheetCell() {}

    public static String guarded(String text) {
        return isPlainNumber(text) || !isRisky(text) ? text : GUARD + text;
    }

    /** The text without the apostrophe that was put in front of it. */
    public static String plain(String cell) {
        return !cell.isEmpty() && cell.charAt(0) == GUARD && isRisky(cell.substring(1)) ? cell.substring(1) : cell;
    }

    private static boolean isPlainNumber(String text) {
        return text.matches("-?\\d+(\\.\\d+)?");
    }

    /**
     * Whether it begins with what a spreadsheet may pass over, blanks and marks that nobody sees, and goes on like a formula; also
     * in the wide form of its sign. A tab or a line break in front may end the cell before.
     */
    private static boolean isRisky(String text) {
        if (!text.isEmpty() && "\t\r\n".indexOf(text.charAt(0)) >= 0) {
            return true;
        }
        int first = text.codePoints()
                .filter(c -> !Character.isWhitespace(c)
                        && !Character.isSpaceChar(c)
                        && !Character.isISOControl(c)
                        && Character.getType(c) != Character.FORMAT)
                .findFirst()
                .orElse(' ');
        return BEGINS_A_FORMULA.indexOf(Normalizer.normalize(Character.toString(first), Normalizer.Form.NFKC)
                        .charAt(0))
                >= 0;
    }
}
