package eaveside.web.api;

import jakarta.json.Json;
import jakarta.json.JsonArray;
import jakarta.json.JsonException;
import jakarta.json.JsonObject;
import jakarta.json.JsonString;
import jakarta.json.JsonValue;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;

/**
 * Writes JSON so that a difference reads well: members in their order, a short object or list on one line.
 *
 * @param words     what to write for a text
 * @param shortened whether a list ends after its first two, with how many more there are
 */
record Print(UnaryOperator<String> words, boolean shortened) {
    private static final int WIDTH = 120;

    /** As it is. */
    static Print plain() {
        return new Print(UnaryOperator.identity(), false);
    }

    /** The text laid out where it is JSON, else as it is. */
    String of(String text) {
        try (var reader = Json.createReader(new StringReader(text))) {
            return lines(reader.readValue(), "");
        } catch (JsonException e) {
            return words.apply(text);
        }
    }

    private String lines(JsonValue value, String indent) {
        List<String> parts = new ArrayList<>();
        String open;
        String close;
        switch (value) {
            case JsonObject object -> {
                object.forEach(
                        (name, member) -> parts.add("\"" + words.apply(name) + "\": " + lines(member, indent + "  ")));
                open = "{";
                close = "}";
            }
            case JsonArray list -> {
                list.stream().limit(shortened ? 2 : list.size()).forEach(one -> parts.add(lines(one, indent + "  ")));
                if (parts.size() < list.size()) {
                    parts.add("<" + (list.size() - parts.size()) + " more>");
                }
                open = "[";
                close = "]";
            }
            case JsonString text -> {
                return Json.createValue(words.apply(text.getString())).toString();
            }
            default -> {
                return value.toString();
            }
        }
        String line = open + String.join(", ", parts) + close;
        if (line.length() + indent.length() <= WIDTH && !line.contains("\n")) {
            return line;
        }
        return open + "\n" + indent + "  " + String.join(",\n" + indent + "  ", parts) + "\n" + indent + close;
    }
}
