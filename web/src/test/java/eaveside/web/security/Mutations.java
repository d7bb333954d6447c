package eaveside.web.security;

import jakarta.json.Json;
import jakarta.json.JsonArray;
import jakarta.json.JsonArrayBuilder;
import jakarta.json.JsonObject;
import jakarta.json.JsonObjectBuilder;
import jakarta.json.JsonValue;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.random.RandomGenerator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Turns what is sent well into what nobody would send, by a seed. */
final class Mutations {
    /** What has broken programs before: bounds, signs, other scripts, other syntaxes, and what stands for nothing. */
    private static final List<String> NASTY = List.of(
            "",
            " ",
            "\u0000",
            "a\u0000b",
            "null",
            "undefined",
            "-1",
            "0",
            "-0",
            "00",
            "1e999999999",
            "1E400",
            "NaN",
            "Infinity",
            "9".repeat(40),
            "9".repeat(3_000),
            "0.".concat("0".repeat(60)).concat("1"),
            "-999999999999999",
            "999999999999999",
            "2147483648",
            "-9223372036854775809",
            "1,000.00",
            "1.000,00",
            "\u0661\u0662\u0663",
            "10000-01-01",
            "+999999999-12-31",
            "-0001-01-01",
            "2026-02-30",
            "0000-00-00",
            "99999-13",
            "24:60",
            "2026-01-01T00:00:00Z",
            "00000000-0000-0000-0000-000000000000",
            "ffffffff-ffff-ffff-ffff-ffffffffffff",
            "../../etc/passwd",
            "%00",
            "%2e%2e%2f",
            "'; drop table invoice; --",
            "\" or \"\"=\"",
            "<script>alert(1)</script>",
            "${7*7}#{7*7}{{7*7}}",
            "\\u0000\\",
            "\ud800",
            "\uffff",
            "\u202e\u200b\ufeff",
            "e\u0301".repeat(50),
            "\ud83e\ude9f".repeat(200),
            "a".repeat(30_000),
            "=1+1",
            "\r\nX-Injected: 1",
            "on",
            "true",
            "DRAFT",
            "USD",
            "zz");

    private static final Pattern ROW = Pattern.compile("([a-zA-Z]+)-(\\d{1,6})-.+");

    private final RandomGenerator random;

    Mutations(RandomGenerator random) {
        this.random = random;
    }

    String nasty() {
        return NASTY.get(random.nextInt(NASTY.size()));
    }

    /** True once in so many. */
    boolean oneOf(int many) {
        return random.nextInt(many) == 0;
    }

    <T> T any(List<T> all) {
        return all.get(random.nextInt(all.size()));
    }

    /** Some fields changed, left out, said twice or made up. */
    List<Map.Entry<String, String>> form(List<Map.Entry<String, String>> well) {
        List<Map.Entry<String, String>> fields = new ArrayList<>(well);
        if (random.nextInt(20) == 0) {
            addRows(fields);
        }
        for (int i = random.nextInt(1, 4); i > 0; i--) {
            int at = fields.isEmpty() ? 0 : random.nextInt(fields.size());
            switch (random.nextInt(fields.isEmpty() ? 1 : 6)) {
                case 0 -> fields.add(Map.entry(nasty(), nasty()));
                case 1 -> fields.remove(at);
                case 2 -> fields.add(Map.entry(fields.get(at).getKey(), nasty()));
                default -> fields.set(at, Map.entry(fields.get(at).getKey(), nasty()));
            }
        }
        return fields;
    }

    /** As many rows like one of the form's as it may have, each with the same wrong value in it. */
    private void addRows(List<Map.Entry<String, String>> fields) {
        List<Matcher> rows = fields.stream()
                .map(field -> ROW.matcher(field.getKey()))
                .filter(Matcher::matches)
                .toList();
        if (rows.isEmpty()) {
            return;
        }
        Matcher chosen = any(rows);
        String before = chosen.group(1) + "-" + chosen.group(2) + "-";
        List<Map.Entry<String, String>> row = fields.stream()
                .filter(field -> field.getKey().startsWith(before))
                .toList();
        String wrong = nasty();
        for (int i = 0; i < 400 && fields.size() < 9_900; i++) {
            String prefix = chosen.group(1) + "-" + (1_000 + i) + "-";
            for (Map.Entry<String, String> field : row) {
                String name = prefix + field.getKey().substring(before.length());
                fields.add(Map.entry(name, field.getKey().equals(chosen.group()) ? wrong : field.getValue()));
            }
        }
    }

    /** One value somewhere in it replaced by another of whatever type. */
    JsonValue json(JsonValue well) {
        if (well instanceof JsonObject object && !object.isEmpty() && random.nextInt(6) > 0) {
            String chosen = any(List.copyOf(object.keySet()));
            JsonObjectBuilder copy = Json.createObjectBuilder();
            object.forEach((name, value) -> {
                if (!name.equals(chosen)) {
                    copy.add(name, value);
                } else if (random.nextInt(8) > 0) {
                    copy.add(name, json(value));
                }
            });
            return random.nextInt(12) == 0 ? copy.add(nasty(), nasty()).build() : copy.build();
        }
        if (well instanceof JsonArray array && !array.isEmpty() && random.nextInt(6) > 0) {
            int chosen = random.nextInt(array.size());
            JsonArrayBuilder copy = Json.createArrayBuilder();
            for (int i = 0; i < array.size(); i++) {
                copy.add(i == chosen ? json(array.get(i)) : array.get(i));
            }
            for (int i = random.nextInt(24) == 0 ? 450 : random.nextInt(12) == 0 ? 1 : 0; i > 0; i--) {
                copy.add(array.get(chosen));
            }
            return copy.build();
        }
        return switch (random.nextInt(10)) {
            case 0 -> JsonValue.NULL;
            case 1 -> JsonValue.TRUE;
            case 2 -> Json.createValue(random.nextLong());
            case 3 -> Json.createValue(new java.math.BigDecimal("1e" + random.nextInt(-50, 50)));
            case 4 -> JsonValue.EMPTY_JSON_OBJECT;
            case 5 ->
                Json.createArrayBuilder().add(nasty()).add(random.nextInt()).build();
            default -> Json.createValue(nasty());
        };
    }

    /** The text of a body, now and then broken off, followed by more, or of one name twice. */
    String text(String json) {
        return switch (random.nextInt(30)) {
            case 0 -> json.substring(0, random.nextInt(json.length() + 1));
            case 1 -> json + json;
            case 2 -> json.replaceFirst("\\{", "{\"x\":[");
            case 3 -> json.replaceFirst("\\{", "{\"id\":1,\"id\":2,");
            case 4 -> "[".repeat(random.nextInt(1, 50_000));
            case 5 -> json.replaceFirst(":\"?[^,\"}]*\"?", ":" + "9".repeat(random.nextInt(1, 100_000)));
            default -> json;
        };
    }
}
