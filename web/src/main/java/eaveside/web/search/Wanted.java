package eaveside.web.search;

import eaveside.web.search.Hits.Type;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What was typed into the search, read: "invoice 139" and "#139" ask for a number, the first of them for an invoice's alone.
 *
 * @param  text   without blanks around it; the number alone where one was asked for
 * @param  number whether a document's number may be meant
 * @param  types  what to look for
 */
record Wanted(String text, boolean number, Set<Type> types) {
    private static final Set<Type> NUMBERED = Set.of(Type.QUOTE, Type.INVOICE, Type.PAYMENT);

    /** As many digits as numbers of documents have; those that begin with a zero are the end of a phone number. */
    private static final Pattern NUMBER =
            Pattern.compile("(?:(quote|invoice|payment)\\s*)?#?\\s*(?:no\\.?\\s*)?([1-9][0-9]{0,8})");

    Wanted {
        types = Set.copyOf(types);
    }

    static Wanted of(String typed) {
        String text = typed.strip();
        Matcher number = NUMBER.matcher(text.toLowerCase(Locale.ROOT));
        if (!number.matches()) {
            return new Wanted(text, false, Set.of(Type.values()));
        }
        String digits = number.group(2);
        if (number.group(1) != null) {
            return new Wanted(digits, true, Set.of(Type.valueOf(number.group(1).toUpperCase(Locale.ROOT))));
        }
        return new Wanted(digits, true, text.equals(digits) ? Set.of(Type.values()) : NUMBERED);
    }

    boolean is(Type type) {
        return types.contains(type);
    }
}
