package eaveside.web.sheets;

import eaveside.web.Texts;
import jakarta.ws.rs.core.MultivaluedHashMap;
import jakarta.ws.rs.core.MultivaluedMap;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * The names of a sheet's fields on the page. Phones keep them with what was typed, for days and past a change of the page:
 * so they are not changed lightly, and what an older page called a field is understood for good.
 */
public final class PhoneNames {
    /** A field of a row: its group, the group inside where it is of a skip, and its own name. */
    static final Pattern ROW = Pattern.compile(
            "(?<list>line|extra|finding|surface|reading|mix|brush|item|count)-(?<row>\\d{1,6})-(?<skip>skip-\\d{1,6}-)?(?<name>.+)");

    /** What older pages called a field, and what it is called now. */
    private static final Map<String, String> OLDER = new TreeMap<>(Map.of(
            "place", "location",
            "doneOn", "completedOn",
            "offering", "serviceItem",
            "kind", "type",
            "feed", "tapWater",
            "product", "pureWater",
            "agreed", "acceptedBy",
            "told", "customerNotified",
            "thing", "item"));

    private static final Pattern LAST = Pattern.compile("(?<![A-Za-z])[A-Za-z]++$");

    private PhoneNames() {}

    /** What the field is called today. */
    static String today(String name) {
        return LAST.matcher(name).replaceFirst(last -> OLDER.getOrDefault(last.group(), last.group()));
    }

    /** What was sent, under the names of today. */
    static MultivaluedMap<String, String> today(MultivaluedMap<String, String> form) {
        MultivaluedMap<String, String> today = new MultivaluedHashMap<>();
        form.forEach((name, values) -> today.put(today(name), values));
        return today;
    }

    /** The older names for the page's script, which opens what an older page has kept. */
    public static String older() {
        return OLDER.entrySet().stream()
                .map(name -> name.getKey() + "=" + name.getValue())
                .collect(Collectors.joining(" "));
    }

    /** What people know the field by; its own name where no text is for it. */
    static String label(String name) {
        Matcher row = ROW.matcher(name);
        if (!row.matches()) {
            return text(name, name);
        }
        String group = row.group("skip") == null ? row.group("list") : "skip";
        return text(group + "-" + row.group("name"), text(row.group("name"), row.group("name")));
    }

    private static String text(String name, String otherwise) {
        String key = "sheets.field." + name;
        String text = Texts.of(Locale.ENGLISH, key);
        return text.equals(key) ? otherwise : text;
    }
}
