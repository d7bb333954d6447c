package eaveside.web.sheets;

import eaveside.visits.SentSheet;
import jakarta.json.JsonArray;
import jakarta.json.JsonObject;
import jakarta.json.JsonString;
import jakarta.json.JsonValue;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A script's sheet as the fields that the page would have sent, so that the office reads both in the same words. Nothing of
 * the body is left out: what the page has no name for stays under its own.
 */
final class SentBody {
    /** What the page calls the rows of a list. */
    private static final Map<String, String> ROWS = Map.ofEntries(
            Map.entry("lines", "line"),
            Map.entry("skips", "skip"),
            Map.entry("extras", "extra"),
            Map.entry("findings", "finding"),
            Map.entry("surfaces", "surface"),
            Map.entry("newSurfaces", "surface"),
            Map.entry("readings", "reading"),
            Map.entry("mixes", "mix"),
            Map.entry("brushes", "brush"),
            Map.entry("items", "item"),
            Map.entry("counted", "count"),
            Map.entry("photos", "photo"));

    /** What the page calls a member of a row, where that is not the member's own name. */
    private static final Map<String, String> NAMES = Map.of(
            "lines.line", "id",
            "surfaces.surface", "id",
            "counted.quantity", "found",
            "count.reason", "count-reason",
            "count.document", "count-id",
            "serviceLine", "line");

    /** Between value and unit: no phone's keyboard has it. */
    private static final String GAP = "\u00a0";

    private static final Set<String> QUANTITY_MEMBERS = Set.of("value", "unit");

    private static final Pattern QUANTITY = Pattern.compile("-?[0-9.]+" + GAP + "[0-9A-Z]+");

    private final List<SentSheet.Field> fields = new ArrayList<>();
    private final Map<String, Integer> rows = new HashMap<>();

    private SentBody() {}

    static List<SentSheet.Field> fields(JsonObject body) {
        SentBody sent = new SentBody();
        body.forEach((member, value) -> sent.take("", "", member, value));
        return List.copyOf(sent.fields);
    }

    static boolean isQuantity(String value) {
        return QUANTITY.matcher(value).matches();
    }

    private void take(String prefix, String of, String member, JsonValue said) {
        if (said instanceof JsonObject quantity && quantity.keySet().equals(QUANTITY_MEMBERS)) {
            say(prefix, of, member, text(quantity.get("value")) + GAP + text(quantity.get("unit")));
        } else if (said instanceof JsonObject object) {
            object.forEach((name, value) -> take(prefix, member, name, value));
        } else if (said instanceof JsonArray list) {
            takeRows(prefix, member, list);
        } else if (said != JsonValue.NULL && said != JsonValue.FALSE) {
            say(prefix, of, member, said == JsonValue.TRUE ? "yes" : text(said));
        }
    }

    private void takeRows(String prefix, String list, JsonArray rowsSaid) {
        String row = prefix + ROWS.getOrDefault(list, list);
        for (JsonValue one : rowsSaid) {
            if (one instanceof JsonObject object) {
                String inRow = row + "-" + (rows.merge(row, 1, Integer::sum) - 1) + "-";
                object.forEach((name, value) -> take(inRow, list, name, value));
            } else {
                fields.add(new SentSheet.Field(row, text(one)));
            }
        }
    }

    private void say(String prefix, String of, String member, String text) {
        String name = NAMES.getOrDefault(of + "." + member, NAMES.getOrDefault(member, member));
        fields.add(new SentSheet.Field(prefix + name, text));
    }

    private static String text(@Nullable JsonValue value) {
        return value instanceof JsonString text ? text.getString() : String.valueOf(value);
    }
}
