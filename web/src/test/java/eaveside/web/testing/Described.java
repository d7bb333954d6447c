package eaveside.web.testing;

import jakarta.json.Json;
import jakarta.json.JsonArray;
import jakarta.json.JsonException;
import jakarta.json.JsonNumber;
import jakarta.json.JsonObject;
import jakarta.json.JsonObjectBuilder;
import jakarta.json.JsonString;
import jakarta.json.JsonStructure;
import jakarta.json.JsonValue;
import java.io.StringReader;
import java.net.URLDecoder;
import java.net.http.HttpRequest;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Holds real exchanges against the description of the interface for scripts. It knows the part of JSON Schema that the
 * description uses and ends at any other, and it is stricter than JSON Schema: a member that is not described is wrong
 * wherever it stands.
 */
public final class Described {
    private static final Set<String> KEYWORDS = Set.of(
            "$ref",
            "type",
            "format",
            "pattern",
            "enum",
            "default",
            "items",
            "required",
            "properties",
            "anyOf",
            "additionalProperties");

    private final JsonObject api;

    private Described(JsonObject api) {
        this.api = api;
    }

    /** Of a description in JSON. */
    public static Described of(String openapi) {
        return new Described((JsonObject) parsed(openapi));
    }

    /** Of what the shared server says of itself. */
    public static Described ofServer() {
        Server server = Server.shared();
        var answer = server.send(
                server.stranger(),
                HttpRequest.newBuilder(server.at("openapi"))
                        .header("Accept", "application/json")
                        .build());
        if (answer.statusCode() != 200) {
            throw new IllegalStateException(answer.body());
        }
        return of(answer.body());
    }

    private static JsonValue parsed(String text) {
        try (var reader = Json.createReader(new StringReader(text))) {
            return reader.readValue();
        }
    }

    /** The whole description. */
    public JsonObject api() {
        return api;
    }

    /** Each as its method and its address with braces. */
    public Set<String> operations() {
        Set<String> operations = new TreeSet<>();
        api.getJsonObject("paths")
                .forEach((path, item) -> item.asJsonObject().keySet().stream()
                        .filter(key ->
                                Set.of("get", "put", "post", "delete", "patch").contains(key))
                        .forEach(verb -> operations.add(verb.toUpperCase(Locale.ROOT) + " " + path)));
        return operations;
    }

    /** Of the method and the address with braces. */
    public JsonObject operation(String methodAndPath) {
        String[] parts = methodAndPath.split(" ");
        return api.getJsonObject("paths").getJsonObject(parts[1]).getJsonObject(parts[0].toLowerCase(Locale.ROOT));
    }

    /**
     * What is wrong with an exchange; nothing where it went as described. What was sent is looked at only where it was
     * taken, since a refused body may be anything.
     *
     * @param  path        as asked, with its query
     * @param  requestBody null where none was sent
     */
    public List<String> check(String method, String path, int status, String requestBody, String answerBody) {
        String[] asked = path.replaceFirst("^/*", "/").split("\\?", 2);
        List<String> templates = operations().stream()
                .map(operation -> operation.split(" ")[1])
                .distinct()
                .filter(template -> matches(template, asked[0]))
                .toList();
        if (templates.isEmpty()) {
            return status == 404 ? List.of() : List.of("no such address is described: " + asked[0]);
        }
        // What is written out is meant before what only fits.
        String template = templates.stream()
                .min((a, b) -> Long.compare(braces(a), braces(b)))
                .orElseThrow();
        String name = method + " " + template;
        if (!operations().contains(name)) {
            return status == 405 ? List.of() : List.of("no such operation is described: " + name);
        }
        JsonObject operation = operation(name);
        List<String> wrong = new ArrayList<>();
        if (status < 300) {
            parameters(operation, template, asked, wrong);
            request(operation, requestBody, wrong);
        }
        answer(operation, status, answerBody, wrong);
        return wrong.stream().map(what -> name + " " + status + ": " + what).toList();
    }

    private static long braces(String template) {
        return template.chars().filter(c -> c == '{').count();
    }

    private static boolean matches(String template, String path) {
        return path.matches(Pattern.compile("\\{\\w+}")
                .splitAsStream(template + "\0")
                .map(part -> Pattern.quote(part.replace("\0", "")))
                .collect(Collectors.joining("[^/]+")));
    }

    private void parameters(JsonObject operation, String template, String[] asked, List<String> wrong) {
        List<JsonObject> described = operation.containsKey("parameters")
                ? operation.getJsonArray("parameters").getValuesAs(JsonObject.class)
                : List.of();
        String[] names = template.split("/");
        String[] values = asked[0].split("/");
        for (int i = 0; i < names.length; i++) {
            if (names[i].matches("\\{\\w+}")) {
                parameter(described, "path", names[i].replaceAll("[{}]", ""), values[i], wrong);
            }
        }
        for (String pair : asked.length == 1 || asked[1].isEmpty() ? new String[0] : asked[1].split("&")) {
            String[] said = pair.split("=", 2);
            if (said.length == 2 && !said[1].isEmpty()) {
                parameter(described, "query", said[0], said[1], wrong);
            }
        }
    }

    private void parameter(List<JsonObject> described, String in, String name, String value, List<String> wrong) {
        String text = URLDecoder.decode(value, StandardCharsets.UTF_8);
        described.stream()
                .filter(one ->
                        one.getString("in").equals(in) && one.getString("name").equals(name))
                .findFirst()
                .ifPresentOrElse(
                        one -> {
                            JsonObject schema = one.getJsonObject("schema");
                            check(
                                    "parameter " + name,
                                    schema,
                                    Set.of("boolean", "integer").contains(schema.getString("type", ""))
                                            ? readable(text)
                                            : Json.createValue(text),
                                    wrong);
                        },
                        () -> wrong.add("parameter " + name + " is not described"));
    }

    /** A flag or a number of an address; a text where it is none. */
    private static JsonValue readable(String text) {
        try {
            return parsed(text);
        } catch (JsonException e) {
            return Json.createValue(text);
        }
    }

    private void request(JsonObject operation, String body, List<String> wrong) {
        if (!operation.containsKey("requestBody")) {
            if (body != null && !body.isEmpty()) {
                wrong.add("a body was taken that is not described");
            }
            return;
        }
        JsonObject content = operation.getJsonObject("requestBody").getJsonObject("content");
        if (!content.containsKey("application/json")) {
            return; // a file
        }
        if (body == null) {
            wrong.add("no body was sent");
            return;
        }
        // A member that is null counts as left out.
        check("body", schema(content, "application/json"), withoutNulls(parsed(body)), wrong);
    }

    private static JsonValue withoutNulls(JsonValue value) {
        return switch (value) {
            case JsonObject object -> {
                JsonObjectBuilder left = Json.createObjectBuilder();
                object.forEach((name, member) -> {
                    if (member != JsonValue.NULL) {
                        left.add(name, withoutNulls(member));
                    }
                });
                yield left.build();
            }
            case JsonArray list -> {
                var left = Json.createArrayBuilder();
                list.forEach(one -> left.add(withoutNulls(one)));
                yield left.build();
            }
            default -> value;
        };
    }

    private static JsonObject schema(JsonObject content, String type) {
        return content.getJsonObject(type).getJsonObject("schema");
    }

    private void answer(JsonObject operation, int status, String body, List<String> wrong) {
        JsonObject described = operation.getJsonObject("responses").getJsonObject(String.valueOf(status));
        if (described == null) {
            wrong.add("the status is not described");
            return;
        }
        String text = body == null ? "" : body;
        if (!described.containsKey("content")) {
            if (!text.isEmpty()) {
                wrong.add("a body is answered where none is described");
            }
            return;
        }
        JsonObject content = described.getJsonObject("content");
        String type = content.keySet().iterator().next();
        try {
            check("answer", schema(content, type), parsed(text), wrong);
        } catch (JsonException e) {
            wrong.add("the answer is not JSON: " + text);
        }
    }

    private void check(String at, JsonObject schema, JsonValue value, List<String> wrong) {
        for (String keyword : schema.keySet()) {
            if (!KEYWORDS.contains(keyword)) {
                throw new IllegalStateException(at + ": no keyword that is checked here: " + keyword);
            }
        }
        if (schema.containsKey("$ref")) {
            check(at, referred(schema.getString("$ref")), value, wrong);
            return;
        }
        if (schema.containsKey("anyOf")) {
            either(at, schema.getJsonArray("anyOf").getValuesAs(JsonObject.class), value, wrong);
            return;
        }
        if (!schema.containsKey("type")) {
            return; // whatever it is
        }
        String type = schema.getString("type");
        if (!is(type, value)) {
            wrong.add(at + " is not of type " + type + ": " + shortened(value));
            return;
        }
        if (schema.containsKey("enum") && !schema.getJsonArray("enum").contains(value)) {
            wrong.add(at + " is none of " + schema.get("enum") + ": " + shortened(value));
        }
        switch (value) {
            case JsonString text -> text(at, schema, text.getString(), wrong);
            case JsonArray list -> {
                for (int i = 0; i < list.size(); i++) {
                    check(at + "[" + i + "]", schema.getJsonObject("items"), list.get(i), wrong);
                }
            }
            case JsonObject object -> object(at, schema, object, wrong);
            default -> {}
        }
    }

    private JsonObject referred(String reference) {
        JsonValue found = api;
        for (String step : reference.replaceFirst("^#/", "").split("/")) {
            found = found.asJsonObject().get(step);
            if (found == null) {
                throw new IllegalStateException("nothing is at " + reference);
            }
        }
        return found.asJsonObject();
    }

    private void either(String at, List<JsonObject> schemas, JsonValue value, List<String> wrong) {
        List<String> nearest = null;
        for (JsonObject schema : schemas) {
            List<String> here = new ArrayList<>();
            check(at, schema, value, here);
            if (nearest == null || here.size() < nearest.size()) {
                nearest = here;
            }
        }
        wrong.addAll(nearest == null ? List.of(at + " fits nothing") : nearest);
    }

    private static boolean is(String type, JsonValue value) {
        return switch (type) {
            case "string" -> value instanceof JsonString;
            case "integer" -> value instanceof JsonNumber number && number.isIntegral();
            case "number" -> value instanceof JsonNumber;
            case "boolean" -> value == JsonValue.TRUE || value == JsonValue.FALSE;
            case "array" -> value instanceof JsonArray;
            case "object" -> value instanceof JsonObject;
            default -> throw new IllegalStateException("no type: " + type);
        };
    }

    private static void text(String at, JsonObject schema, String text, List<String> wrong) {
        if (schema.containsKey("pattern")
                && !Pattern.compile(schema.getString("pattern")).matcher(text).find()) {
            wrong.add(at + " is not like " + schema.getString("pattern") + ": " + text);
        }
        try {
            switch (schema.getString("format", "")) {
                case "date" -> LocalDate.parse(text);
                case "date-time" -> Instant.parse(text);
                case "uuid" -> UUID.fromString(text);
                default -> {}
            }
        } catch (DateTimeException | IllegalArgumentException e) {
            wrong.add(at + " is no " + schema.getString("format") + ": " + text);
        }
    }

    private void object(String at, JsonObject schema, JsonObject object, List<String> wrong) {
        JsonObject properties =
                schema.containsKey("properties") ? schema.getJsonObject("properties") : JsonValue.EMPTY_JSON_OBJECT;
        if (schema.containsKey("required")) {
            for (JsonString name : schema.getJsonArray("required").getValuesAs(JsonString.class)) {
                if (!object.containsKey(name.getString())) {
                    wrong.add(at + "." + name.getString() + " is missing");
                }
            }
        }
        object.forEach((name, value) -> {
            if (properties.containsKey(name)) {
                check(at + "." + name, properties.getJsonObject(name), value, wrong);
            } else if (schema.get("additionalProperties") instanceof JsonObject others) {
                check(at + "." + name, others, value, wrong);
            } else {
                wrong.add(at + "." + name + " is not described");
            }
        });
    }

    private static String shortened(JsonValue value) {
        String text = value instanceof JsonStructure ? value.getValueType().name() : value.toString();
        return text.length() > 80 ? text.substring(0, 80) + "…" : text;
    }
}
