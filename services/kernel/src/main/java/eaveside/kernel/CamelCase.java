package eaveside.kernel;

import java.util.Locale;

/** The words of a name of the program, such as those of {@code paymentTermDays}: for labels, codes and columns. */
public final class CamelCase {
    private CamelCase() {}

    /** In lower case, with that between them. A word of one letter is one too: {@code NotAStockDocument} has four words. */
    public static String words(String name, String between) {
        return name.replaceAll("(?<=[a-z0-9])(?=[A-Z])|(?<=[A-Z])(?=[A-Z][a-z])", between)
                .toLowerCase(Locale.ROOT);
    }
}
