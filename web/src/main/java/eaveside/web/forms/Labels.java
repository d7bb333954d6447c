package eaveside.web.forms;

import eaveside.kernel.CamelCase;
import eaveside.web.Texts;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What people know the fields of a form by. */
final class Labels {
    /** A field of a row within a row, {@code line-0-adjustment-1-amount}. */
    private static final Pattern PART = Pattern.compile("[a-zA-Z]+-(\\d{1,6})-([a-zA-Z]+)-(\\d{1,6})-(.+)");

    private static final Pattern ROW = Pattern.compile("([a-zA-Z]+)-(\\d{1,6})-(.+)");

    private List<String> prefixes = List.of("common.");
    private final Map<String, String> keys = new HashMap<>();
    private final Map<String, String> called = new HashMap<>();

    /**
     * Names the bundle of texts: {@code customers.site.name} for the thing {@code site}, else {@code customers.name}, else
     * {@code common.name}.
     */
    void of(String bundle, String thing) {
        prefixes = List.of(bundle + "." + thing + ".", bundle + ".", "common.");
    }

    /** Says that a field's label stands under another key than its name. */
    void keyed(String name, String key) {
        keys.put(name, key);
    }

    /** Says what people know a field by that no text is for. */
    void called(String name, String label) {
        called.put(name, label);
    }

    /** The same words as for another form. */
    void takeOver(Labels other) {
        prefixes = other.prefixes;
        keys.putAll(other.keys);
        called.putAll(other.called);
    }

    /** The text of the first of the bundles that has one for the key; empty where none has. */
    String text(String key) {
        for (String prefix : prefixes) {
            String text = Texts.of(Locale.ENGLISH, prefix + key);
            if (!text.equals(prefix + key)) {
                return text;
            }
        }
        return "";
    }

    /**
     * What people know a field by. A field of a row, {@code line-3-quantity}, is called by its last part and its row, and that
     * of a row within by both; a field without a text of its own by its own name, as words.
     */
    String label(String name) {
        String own = called.get(name);
        if (own != null) {
            return own;
        }
        if (name.contains(".")) {
            return label(name.substring(name.lastIndexOf('.') + 1)); // of what the page has no field for
        }
        Matcher part = PART.matcher(name);
        if (part.matches()) {
            return Texts.of(
                    Locale.ENGLISH,
                    "forms.in-part",
                    inList(part.group(2), part.group(4)),
                    words(part.group(2)).toLowerCase(Locale.ROOT),
                    Integer.parseInt(part.group(3)) + 1,
                    Integer.parseInt(part.group(1)) + 1);
        }
        Matcher row = ROW.matcher(name);
        if (row.matches()) {
            return Texts.of(
                    Locale.ENGLISH,
                    "forms.in-row",
                    inList(row.group(1), row.group(3)),
                    Integer.parseInt(row.group(2)) + 1);
        }
        String text = text(keys.getOrDefault(name, name));
        return text.isEmpty() ? words(name) : text;
    }

    /** A field that means something else in one list than in others has a text of its own, {@code skip-quantity}. */
    private String inList(String list, String name) {
        String own = text(list + "-" + name);
        return own.isEmpty() ? label(name) : own;
    }

    private static String words(String name) {
        String words = CamelCase.words(name, " ").replaceAll("[-_]", " ");
        return words.isEmpty() ? "This" : words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }
}
