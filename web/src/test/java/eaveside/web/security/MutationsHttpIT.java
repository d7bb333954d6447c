package eaveside.web.security;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.schema.BooksProof;
import eaveside.web.testing.OnItsOwnCompany;
import eaveside.web.testing.Server;
import jakarta.json.Json;
import jakarta.json.JsonArray;
import jakarta.json.JsonObject;
import jakarta.json.JsonObjectBuilder;
import jakarta.json.JsonString;
import jakarta.json.JsonValue;
import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.stream.Collectors;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Ten thousand requests that nobody would send, over every form of every page and every operation of the interface's description, by a
 * seed: none is answered with 5xx, none takes long, and the books are true afterwards.
 */
@Tag("long")
@OnItsOwnCompany
class MutationsHttpIT {
    private static final int REQUESTS = Integer.getInteger("eaveside.mutations", 10_000);
    private static final long SEED = Long.getLong("eaveside.seed", 20_261_128L);
    private static final Duration LONGEST = Duration.ofSeconds(10);

    /** What would end the run itself, not the program. */
    private static final List<String> LEFT_OUT =
            List.of("/sign-out", "/account", "/settings/users", "/api/users", "/sign-in");

    private static Server server;
    private static HttpClient owner;

    private record Sendable(
            String method, String path, String type, List<Map.Entry<String, String>> form, JsonValue json) {}

    @BeforeAll
    static void start() {
        server = Server.demoAt(Clock.systemUTC().instant());
        owner = server.signedIn("edda", server.passwordOf("edda"));
    }

    @AfterAll
    static void stop() {
        server.stop();
    }

    @Test
    void no_input_breaks_the_program() throws SQLException, IOException {
        Mutations mutations = new Mutations(new SplittableRandom(SEED));
        List<Sendable> all = new ArrayList<>(forms());
        int forms = all.size();
        all.addAll(operations());
        assertTrue(forms > 30 && all.size() - forms > 90, forms + " forms, " + (all.size() - forms) + " operations");
        List<String> broken = new ArrayList<>();
        Map<Integer, Integer> statuses = new LinkedHashMap<>();
        for (int i = 0; i < REQUESTS; i++) {
            HttpRequest request = request(all.get(i % all.size()), mutations);
            long begun = System.nanoTime();
            HttpResponse<String> answer;
            try {
                answer = server.send(owner, request);
            } catch (UncheckedIOException e) {
                broken.add("request " + i + " of seed " + SEED + ": " + request.method() + " "
                        + shortened(request.uri()) + " -> " + e);
                continue;
            }
            Duration took = Duration.ofNanos(System.nanoTime() - begun);
            statuses.merge(answer.statusCode(), 1, Integer::sum);
            if (answer.statusCode() >= 500 || took.compareTo(LONGEST) > 0) {
                broken.add("request " + i + " of seed " + SEED + ": " + request.method() + " "
                        + shortened(request.uri()) + " -> " + answer.statusCode() + " after " + took.toMillis()
                        + " ms, "
                        + answer.body()
                                .replaceAll("\\s+", " ")
                                .substring(0, Math.min(200, answer.body().length())));
            }
        }
        System.out.println("Answered: " + statuses);
        assertEquals(List.of(), broken);
        try (var connection = server.database().asOwner().getConnection()) {
            for (BooksProof.Result proof : BooksProof.run(connection)) {
                assertTrue(proof.holds(), proof.toString());
            }
        }
    }

    /** The forms of every page that can be read, as they are filled in. */
    private static List<Sendable> forms() throws SQLException {
        Map<String, Sendable> found = new LinkedHashMap<>();
        for (List<String> addresses : Addresses.all(server.database().asOwner()).values()) {
            for (String address : addresses) {
                HttpResponse<String> page = server.get(owner, address.substring(1));
                if (page.statusCode() != 200
                        || !page.headers().firstValue("Content-Type").orElse("").contains("html")) {
                    continue;
                }
                for (Element form : Jsoup.parse(page.body()).select("form[method=post]")) {
                    String action = form.attr("action");
                    if (LEFT_OUT.stream().noneMatch(action::startsWith)
                            && !form.attr("enctype").startsWith("multipart")) {
                        found.putIfAbsent(
                                action.replaceAll("[0-9a-f-]{36}", "*"),
                                new Sendable(
                                        "POST",
                                        action,
                                        "application/x-www-form-urlencoded",
                                        filledIn(form),
                                        JsonValue.NULL));
                    }
                }
            }
        }
        return List.copyOf(found.values());
    }

    private static List<Map.Entry<String, String>> filledIn(Element form) {
        List<Map.Entry<String, String>> fields = new ArrayList<>();
        for (Element field : form.select("input[name], select[name], textarea[name]")) {
            boolean off =
                    (field.attr("type").equals("checkbox") || field.attr("type").equals("radio"))
                            && !field.hasAttr("checked");
            if (!off) {
                String value = field.is("select")
                        ? field.select("option[selected], option").stream()
                                .map(option -> option.attr("value"))
                                .reduce("", (first, last) -> first.isEmpty() ? last : first)
                        : field.is("textarea") ? field.text() : field.attr("value");
                fields.add(Map.entry(field.attr("name"), value));
            }
        }
        return fields;
    }

    /** Every operation of the description, with a body made from its schema. */
    private static List<Sendable> operations() throws SQLException {
        JsonObject description;
        try (var reader = Json.createReader(new StringReader(server.send(
                        server.stranger(),
                        HttpRequest.newBuilder(server.at("openapi"))
                                .header("Accept", "application/json")
                                .build())
                .body()))) {
            description = reader.readObject();
        }
        Map<String, List<String>> known =
                Addresses.under("/api/", server.database().asOwner());
        List<Sendable> operations = new ArrayList<>();
        description
                .getJsonObject("paths")
                .forEach((path, methods) -> methods.asJsonObject().forEach((method, told) -> {
                    if (told.getValueType() != JsonValue.ValueType.OBJECT
                            || LEFT_OUT.stream().anyMatch(path::startsWith)) {
                        return;
                    }
                    JsonObject body = told.asJsonObject().getJsonObject("requestBody");
                    JsonObject content = body == null ? null : body.getJsonObject("content");
                    String type =
                            content == null ? "" : content.keySet().iterator().next();
                    JsonValue example = content == null || !type.equals("application/json")
                            ? JsonValue.NULL
                            : example(content.getJsonObject(type).getJsonObject("schema"), description, 0);
                    List<String> real = known.getOrDefault(path, List.of());
                    operations.add(new Sendable(
                            method.toUpperCase(java.util.Locale.ROOT),
                            real.isEmpty() ? path : real.getFirst(),
                            type,
                            List.of(),
                            example));
                }));
        return operations;
    }

    private static JsonValue example(JsonObject schema, JsonObject description, int depth) {
        if (schema.containsKey("$ref")) {
            String name = schema.getString("$ref").replaceAll(".*/", "");
            return depth > 6
                    ? JsonValue.EMPTY_JSON_OBJECT
                    : example(
                            description
                                    .getJsonObject("components")
                                    .getJsonObject("schemas")
                                    .getJsonObject(name),
                            description,
                            depth + 1);
        }
        if (schema.containsKey("enum")) {
            return schema.getJsonArray("enum").getFirst();
        }
        if (schema.containsKey("example")) {
            return schema.get("example");
        }
        JsonValue type = schema.get("type");
        String said = type instanceof JsonString text
                ? text.getString()
                : type instanceof JsonArray list ? list.getString(0) : "object";
        return switch (said) {
            case "array" ->
                Json.createArrayBuilder()
                        .add(example(schema.getJsonObject("items"), description, depth + 1))
                        .build();
            case "string" ->
                Json.createValue(
                        switch (schema.getString("format", "")) {
                            case "date" -> "2026-11-02";
                            case "uuid" -> "01a222a6-7f5a-70cb-9e37-d107d9e27e92";
                            default -> "12.50";
                        });
            case "integer", "number" -> Json.createValue(1);
            case "boolean" -> JsonValue.TRUE;
            default -> {
                JsonObjectBuilder object = Json.createObjectBuilder();
                JsonObject members = schema.getJsonObject("properties");
                if (members != null) {
                    members.forEach(
                            (name, member) -> object.add(name, example(member.asJsonObject(), description, depth + 1)));
                }
                yield object.build();
            }
        };
    }

    private static HttpRequest request(Sendable sendable, Mutations mutations) {
        String path = sendable.path();
        if (path.contains("{")) {
            path = path.replaceAll(
                    "\\{\\w+\\}", inAddress(mutations).replace("$", "").replace("\\", ""));
        }
        if (sendable.method().equals("GET") || mutations.any(List.of(1, 2, 3, 4, 5)) == 1) {
            path += (path.contains("?") ? "&" : "?")
                    + mutations.any(List.of("q", "after", "from", "to", "date", "status", "line", "month", "customer"))
                    + "=" + inAddress(mutations);
        }
        boolean api = path.startsWith("/api/");
        String body = switch (sendable.type()) {
            case "application/json" ->
                mutations.text(mutations.json(sendable.json()).toString());
            case "application/x-www-form-urlencoded" ->
                mutations.form(sendable.form()).stream()
                        .map(field -> encoded(field.getKey()) + "=" + encoded(field.getValue()))
                        .collect(Collectors.joining("&"));
            default -> mutations.nasty();
        };
        boolean reads = sendable.method().equals("GET");
        var request = HttpRequest.newBuilder(
                        URI.create(server.base() + path.substring(1).replace(" ", "%20")))
                .timeout(Duration.ofMinutes(3))
                .header("Accept", api ? "application/json" : "text/html")
                .header("Sec-Fetch-Site", "same-origin")
                .method(
                        sendable.method(),
                        reads ? HttpRequest.BodyPublishers.noBody() : HttpRequest.BodyPublishers.ofString(body));
        return (reads || sendable.type().isEmpty() ? request : request.header("Content-Type", sendable.type())).build();
    }

    private static String shortened(URI address) {
        String text = address.toString();
        return text.length() > 150 ? text.substring(0, 150) + "..." : text;
    }

    /** A head of more than eight kilobytes is ended by the server before it is read. */
    private static String inAddress(Mutations mutations) {
        String nasty = mutations.nasty();
        return encoded(nasty.substring(0, Math.min(nasty.length(), 1_000)));
    }

    private static String encoded(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8).replace("+", "%20");
    }
}
