package eaveside.web.api;

import jakarta.json.Json;
import jakarta.json.JsonArray;
import jakarta.json.JsonException;
import jakarta.json.JsonNumber;
import jakarta.json.JsonObject;
import jakarta.json.JsonString;
import jakarta.json.JsonValue;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.regex.Pattern;

/**
 * A body with one value each that cannot be taken, whatever else it says: a unit of another type, another currency, more
 * digits than fit, a day long ago, an id of nothing. Its refusal must name the field of that value.
 */
final class WrongValues {
    /**
     * One of them.
     *
     * @param field that was made wrong, such as {@code lines[0].quantity}
     * @param what  is wrong with it
     */
    record Wrong(String field, String what, String body) {
        private static final Pattern INDEX = Pattern.compile("\\d+");

        /** The same for every row, so that one of them is enough. */
        String kind() {
            return what + " in " + INDEX.matcher(field).replaceAll("");
        }

        /**
         * Whether a refusal tells it: under its name, that of its part, or that of the list of plain values that it is one of.
         * Of two that contradict one another, either is wrong: one row's currency and the next one's, a price and the
         * unit of its quantity.
         */
        boolean isTold(List<String> fields) {
            String plain = field.replaceFirst("\\[\\d+]$", "");
            return fields.stream()
                    .anyMatch(told -> told.equals(field)
                            || told.equals(plain)
                            || told.startsWith(plain + ".")
                            || contradicts(told));
        }

        private boolean contradicts(String told) {
            return switch (what) {
                case CURRENCY -> told.replaceAll(LAST_INDEX, "").equals(field.replaceAll(LAST_INDEX, ""));
                case PER -> told.replaceAll(LAST_INDEX + PRICED, "").equals(field.replaceAll(LAST_INDEX + PRICED, ""));
                default -> false;
            };
        }

        private static final String LAST_INDEX = "\\d+(?=][^\\[]*$)";
        private static final String PRICED = "|\\.(price|price\\.gross|quantity|from)$";
    }

    private static final String CURRENCY = "another currency";
    private static final String PER = "a price for another unit";
    private static final String MANY_DIGITS = "999999999999999";
    private static final Set<String> TIMES = Set.of("HUR", "MIN");

    /**
     * What holds any text or an id that its sender makes; and the closing that a reopening names, which stands for the state of
     * the whole visit and is answered as a conflict.
     */
    private static final Pattern FREE =
            Pattern.compile(".*(\\bid|\\bzipCode|\\bphone|\\btaxNumber|\\bversion|\\bclosing"
                    + "|/receipts: lines\\[\\d+]\\.lot|count\\.document|newSurfaces\\[\\d+]\\.surface)");

    private final String operation;
    private final JsonObject whole;
    private final List<Wrong> wrongs = new ArrayList<>();

    private WrongValues(String operation, JsonObject whole) {
        this.operation = operation;
        this.whole = whole;
    }

    /** Every way to spoil it; none of what is no JSON object. */
    static List<Wrong> of(String operation, String body) {
        try (var reader = Json.createReader(new StringReader(body))) {
            WrongValues values = new WrongValues(operation, reader.readObject());
            values.object("", "", values.whole);
            return values.wrongs;
        } catch (JsonException e) {
            return List.of();
        }
    }

    private void wrong(String field, String what, String pointer, JsonValue value) {
        wrongs.add(new Wrong(
                field, what, Json.createPointer(pointer).replace(whole, value).toString()));
    }

    private void wrong(String field, String what, String pointer, String value) {
        wrong(field, what, pointer, Json.createValue(value));
    }

    private void value(String field, String pointer, JsonValue value) {
        if (FREE.matcher(operation + ": " + field).matches()) {
            return;
        }
        switch (value) {
            case JsonObject object -> object(field, pointer, object);
            case JsonArray list -> {
                for (int i = 0; i < list.size(); i++) {
                    value(field + "[" + i + "]", pointer + "/" + i, list.get(i));
                }
            }
            case JsonString text -> text(field, pointer, text.getString());
            case JsonNumber number -> wrong(field, "a number below zero", pointer, Json.createValue(-7));
            default -> {}
        }
    }

    private void object(String field, String pointer, JsonObject object) {
        Set<String> parts = object.keySet();
        if (parts.equals(Set.of("value", "unit"))) {
            wrong(field, "many digits", pointer + "/value", MANY_DIGITS);
            wrong(field, "many decimals", pointer + "/value", "1.1234567");
            wrong(field, "another unit", pointer + "/unit", unlike(object.getString("unit")));
        } else if (parts.containsAll(Set.of("amount", "currency"))) {
            wrong(field, "many digits", pointer + "/amount", MANY_DIGITS);
            wrong(field, CURRENCY, pointer + "/currency", "JPY");
            if (parts.contains("per")) {
                String unit = object.getJsonObject("per").getString("unit");
                wrong(field, PER, pointer + "/per/unit", unlike(unit));
            }
        } else {
            object.forEach(
                    (name, part) -> value(field.isEmpty() ? name : field + "." + name, pointer + "/" + name, part));
        }
    }

    private static String unlike(String unit) {
        return TIMES.contains(unit) ? "OZA" : "HUR";
    }

    private void text(String field, String pointer, String text) {
        if (text.matches("\\d{4}-\\d{2}-\\d{2}")) {
            wrong(field, "a day long ago", pointer, "1899-12-31");
        } else if (text.matches("[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}")) {
            wrong(
                    field,
                    "an id of nothing",
                    pointer,
                    UUID.nameUUIDFromBytes(text.getBytes()).toString());
        } else if (text.matches("-?[0-9.]+")) {
            wrong(field, "many digits", pointer, MANY_DIGITS);
            wrong(field, "a number below zero", pointer, "-7");
        } else {
            wrong(field, "a long text", pointer, "x".repeat(30_000));
        }
    }
}
