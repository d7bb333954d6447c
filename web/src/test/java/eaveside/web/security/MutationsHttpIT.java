package eaveside.web.security;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.schema.BooksProof;
import eaveside.web.testing.OnItsOwnCompany;
import eaveside.web.testing.Server;
import eaveside.web.testing.Visitor;
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
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
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
    private static final String FORM = "application/x-www-form-urlencoded";
    private static final String MULTIPART = "multipart/form-data; boundary=b";

    /** What could end the session that it comes with: somebody else sends it, and signs in again when it has come to that. */
    private static final List<String> OF_ONE_S_OWN = List.of("/sign-out", "/account", "/sign-in");

    /** People under these are the one who may be changed, never the one who sends. */
    private static final Pattern PERSON = Pattern.compile("^/(?:settings|api)/users/[0-9a-f-]{36}");

    private static final String ANOTHER = "mutated.owner";

    private static final String CHANGED = "changed.owner";

    /** What no caller says twice the same way. */
    private static final List<String> HEADERS = List.of(
            "Accept",
            "Accept-Encoding",
            "Accept-Language",
            "Authorization",
            "Content-Encoding",
            "Content-Type",
            "Cookie",
            "Forwarded",
            "HX-Request",
            "HX-Target",
            "If-Modified-Since",
            "If-None-Match",
            "Origin",
            "Range",
            "Referer",
            "Sec-Fetch-Site",
            "X-Forwarded-For",
            "X-Forwarded-Host",
            "X-HTTP-Method-Override");

    /** What stands for the braces of an address that is not only read, by as much of it as says which; in the order of the braces. */
    private static final Map<String, String> REAL = Map.ofEntries(
            Map.entry("{month}/close", "select to_char(first_day, 'YYYY-MM') from period"),
            Map.entry("documents/{original}/reversal", "select id from document order by random() limit 60"),
            Map.entry("documents/{original}/reverse", "select id from document order by random() limit 60"),
            Map.entry("{customer}/contacts/{id}", "select customer_id, id from contact limit 60"),
            Map.entry("{customer}/sites/{id}", "select customer_id, id from site limit 60"),
            Map.entry(
                    "{customer}/sites/{site}/surfaces/{id}",
                    "select s.customer_id, s.id, f.id from surface f join site s on s.id = f.site_id limit 60"),
            Map.entry("{customer}/contacts", "select id from customer limit 60"),
            Map.entry("{customer}/sites", "select id from customer limit 60"),
            Map.entry("{customer}/refund", "select id from customer limit 60"),
            Map.entry("{from}/merge", "select id from customer limit 60"),
            Map.entry("{site}/surfaces", "select id from site limit 60"),
            Map.entry("findings/{finding}", "select id from finding limit 60"),
            Map.entry("from-visit/{visit}", "select id from visit limit 60"),
            Map.entry("invoices/{id}", "select id from invoice_draft union all (select id from invoice limit 20)"),
            Map.entry(
                    "{invoice}/applications/{original}/reversal",
                    "select i.id, p.id from invoice i join payment p on p.customer_id = i.customer_id limit 60"),
            Map.entry("invoices/{invoice}", "select id from invoice limit 60"),
            Map.entry("invoices/{original}/credit", "select id from invoice limit 60"),
            Map.entry("payments/{original}", "select id from payment limit 60"),
            Map.entry("quotes/{id}", "select id from quote limit 60"),
            Map.entry(
                    "{location}/reorder-points/{item}",
                    "select l.id, i.id from location l cross join stock_item i limit 60"),
            Map.entry("{visit}/scope-changes/{scopeChange}", "select visit_id, id from scope_change limit 60"),
            Map.entry("{visit}/sheet/{original}/reversal", "select visit_id, document_id from job_sheet limit 60"),
            Map.entry("{visit}/sent/{sheet}", "select visit_id, id from sent_sheet limit 60"),
            Map.entry("{visit}/photos/{photo}", "select v.id, p.id from visit v cross join photo p limit 60"),
            Map.entry("visits/{visit}", "select id from visit order by random() limit 60"),
            Map.entry("sheets/{visit}", "select id from visit where status = 'SCHEDULED' limit 60"),
            Map.entry("passkeys/{passkey}/remove", "select gen_random_uuid()"),
            Map.entry("{user}/tokens/{token}/revoke", "select user_id, id from api_token limit 60"),
            Map.entry("users/{user}/tokens", "select id from app_user where username = 'changed.owner'"),
            Map.entry("users/{id}", "select id from app_user where username = 'changed.owner'"),
            Map.entry(
                    "sessions/{session}/end",
                    "select s.id from user_session s join app_user u on u.id = s.user_id where u.username = 'changed.owner'"
                            + " union all select gen_random_uuid()"));

    /** Fields of forms that stand on no page of the demo, since they come behind another or wait for what it has not. */
    private static final List<Map.Entry<String, String>> ANY_FIELDS = List.of(
            Map.entry("id", "01a222a6-7f5a-70cb-9e37-d107d9e27e92"),
            Map.entry("version", "1"),
            Map.entry("replaces", "1"),
            Map.entry("reason", "Mutated"),
            Map.entry("note", "Mutated"),
            Map.entry("date", "2026-11-02"),
            Map.entry("amount", "12.50"),
            Map.entry("password", "not the password"),
            Map.entry("username", "mutated"),
            Map.entry("code", "123456"),
            Map.entry("to", "/worklist"),
            Map.entry("question", "x"),
            Map.entry("credential", "{}"),
            Map.entry("file", "H4sIAAAAAAAA_w"));

    private static final Map<String, List<List<String>>> IDS = new LinkedHashMap<>();
    private static Server server;
    private static HttpClient owner;
    private static HttpClient another;
    private static String password;
    private static String person;

    private record Sendable(
            String method, String path, String type, List<Map.Entry<String, String>> form, JsonValue json) {}

    @BeforeAll
    static void start() {
        server = Server.demoAt(Clock.systemUTC().instant());
        owner = server.signedIn("edda", server.passwordOf("edda"));
        String given =
                Visitor.signedIn(server, "edda", server.passwordOf("edda")).add("Mutated Owner", ANOTHER, "OWNER");
        another = server.choosing(ANOTHER, given);
        password = Server.chosen(given);
        Visitor.signedIn(server, "edda", server.passwordOf("edda")).add("Changed Owner", CHANGED, "OWNER");
        person = Visitor.value(server, "select id from app_user where username = ?", CHANGED);
    }

    private static boolean isOfOneSOwn(String path) {
        return OF_ONE_S_OWN.stream().anyMatch(path::startsWith);
    }

    /** Where it cannot sign in, since its password was reset or guessed at too often, it goes on as a stranger. */
    private static void signInAgain(HttpResponse<String> answer) {
        if (answer.statusCode() == 401
                || answer.headers().firstValue("Location").orElse("").startsWith("/sign-in")) {
            try {
                another = server.signedIn(ANOTHER, password);
            } catch (IllegalStateException e) {
                another = server.stranger();
            }
        }
    }

    @AfterAll
    static void stop() {
        server.stop();
    }

    @Test
    void no_input_breaks_the_program() throws SQLException, IOException {
        Mutations mutations = new Mutations(new SplittableRandom(SEED));
        List<Sendable> all = new ArrayList<>(forms());
        int ofPages = all.size();
        all.addAll(otherForms(all));
        System.out.println("On no page: "
                + all.subList(ofPages, all.size()).stream().map(Sendable::path).toList());
        int forms = all.size();
        all.addAll(operations());
        assertTrue(
                ofPages > 55 && all.size() - forms > 90, ofPages + " forms, " + (all.size() - forms) + " operations");
        assertEquals(List.of(), unsent(all), "every door is knocked at");
        List<String> broken = new ArrayList<>();
        Map<Integer, Integer> statuses = new LinkedHashMap<>();
        for (int i = 0; i < REQUESTS; i++) {
            HttpRequest request = request(all.get(i % all.size()), mutations);
            long begun = System.nanoTime();
            HttpResponse<String> answer;
            boolean own = isOfOneSOwn(request.uri().getPath());
            try {
                answer = server.send(own ? another : owner, request);
            } catch (UncheckedIOException e) {
                broken.add("request " + i + " of seed " + SEED + ": " + request.method() + " "
                        + shortened(request.uri()) + " -> " + e);
                continue;
            }
            Duration took = Duration.ofNanos(System.nanoTime() - begun);
            statuses.merge(answer.statusCode(), 1, Integer::sum);
            if (own) {
                signInAgain(answer);
            }
            if (answer.statusCode() >= 500 || took.compareTo(LONGEST) > 0) {
                broken.add("request " + i + " of seed " + SEED + ": " + request.method() + " "
                        + shortened(request.uri()) + " -> " + answer.statusCode() + " after " + took.toMillis()
                        + " ms, "
                        + answer.body().replaceAll("\\s+", " ").transform(MutationsHttpIT::shortened));
            }
        }
        System.out.println("Answered: " + statuses);
        assertEquals(List.of(), broken);
        for (int status : List.of(200, 303, 400, 404, 422)) {
            assertTrue(statuses.getOrDefault(status, 0) > REQUESTS / 200, "too few of " + status + ": " + statuses);
        }
        try (var connection = server.database().asOwner().getConnection()) {
            for (BooksProof.Result proof : BooksProof.run(connection)) {
                assertTrue(proof.holds(), proof.toString());
            }
        }
    }

    private static List<Sendable> forms() throws SQLException {
        return PageForm.all(server, owner).stream()
                .map(form -> new Sendable(
                        "POST",
                        ofThePerson(form.action()),
                        form.isMultipart() ? MULTIPART : FORM,
                        form.fields(),
                        JsonValue.NULL))
                .toList();
    }

    /** A form for every door that takes one and that no page of the demo led to. */
    private static List<Sendable> otherForms(List<Sendable> found) {
        return Door.all().stream()
                .filter(door -> door.method().equals("POST") && !door.path().startsWith("/api/"))
                .filter(door -> found.stream().noneMatch(sendable -> isAt(sendable, door)))
                .map(door -> new Sendable(
                        "POST",
                        door.path(),
                        door.takes().startsWith("multipart") ? MULTIPART : FORM,
                        ANY_FIELDS,
                        JsonValue.NULL))
                .toList();
    }

    private static List<String> unsent(List<Sendable> all) {
        return Door.all().stream()
                .filter(door -> !door.method().equals("GET"))
                .filter(door -> all.stream().noneMatch(sendable -> isAt(sendable, door)))
                .map(Door::line)
                .toList();
    }

    private static boolean isAt(Sendable sendable, Door door) {
        return sendable.method().equals(door.method())
                && (sendable.path().equals(door.path())
                        || sendable.path().matches(door.path().replaceAll("\\{\\w+\\}", "[^/]*")));
    }

    /** An address of something that is there; at times of nothing that could be. */
    private static String real(String template, Mutations mutations) {
        List<List<String>> ids = IDS.computeIfAbsent(template, MutationsHttpIT::ids);
        if (mutations.oneOf(5) || ids.isEmpty()) {
            return template.replaceAll(
                    "\\{\\w+\\}", inAddress(mutations).replace("$", "").replace("\\", ""));
        }
        String path = template;
        for (String id : mutations.any(ids)) {
            path = path.replaceFirst("\\{\\w+\\}", id);
        }
        return path;
    }

    private static List<List<String>> ids(String template) {
        String sql = REAL.entrySet().stream()
                .filter(known -> template.contains(known.getKey()))
                .max(Comparator.comparing(known -> known.getKey().length()))
                .map(Map.Entry::getValue)
                .orElseGet(() -> Addresses.sample(template));
        try {
            return Addresses.rows(sql, server.database().asOwner());
        } catch (SQLException e) {
            throw new IllegalStateException(template, e);
        }
    }

    private static String ofThePerson(String path) {
        Matcher known = PERSON.matcher(path);
        return known.find() ? known.group().replaceFirst("[^/]+$", person) + path.substring(known.end()) : path;
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
        Map<String, List<String>> read =
                Addresses.under("/api/", server.database().asOwner());
        List<Sendable> operations = new ArrayList<>();
        description
                .getJsonObject("paths")
                .forEach((path, methods) -> methods.asJsonObject().forEach((method, told) -> {
                    if (told.getValueType() != JsonValue.ValueType.OBJECT) {
                        return;
                    }
                    JsonObject body = told.asJsonObject().getJsonObject("requestBody");
                    JsonObject content = body == null ? null : body.getJsonObject("content");
                    String type =
                            content == null ? "" : content.keySet().iterator().next();
                    JsonValue example = content == null || !type.equals("application/json")
                            ? JsonValue.NULL
                            : example(content.getJsonObject(type).getJsonObject("schema"), description, 0);
                    operations.add(new Sendable(
                            method.toUpperCase(java.util.Locale.ROOT),
                            method.equals("get")
                                            && !read.getOrDefault(path, List.of())
                                                    .isEmpty()
                                    ? ofThePerson(read.get(path).getFirst())
                                    : path,
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
            path = real(path, mutations);
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
            case FORM ->
                mutations.form(sendable.form()).stream()
                        .map(field -> encoded(field.getKey()) + "=" + encoded(field.getValue()))
                        .collect(Collectors.joining("&"));
            case MULTIPART -> multipart(mutations, mutations.form(sendable.form()));
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
                        reads || mutations.oneOf(20)
                                ? HttpRequest.BodyPublishers.noBody()
                                : HttpRequest.BodyPublishers.ofString(body));
        if (!reads && !sendable.type().isEmpty() && !mutations.oneOf(20)) {
            request.header("Content-Type", mutations.oneOf(20) ? type(sendable.type(), mutations) : sendable.type());
        }
        if (mutations.oneOf(8)) {
            request.setHeader(mutations.any(HEADERS), inHeader(mutations));
        }
        return request.build();
    }

    /** Another than the body is of, or the same in other words. */
    private static String type(String type, Mutations mutations) {
        return mutations.any(List.of(
                type + "; charset=nonsense",
                type + "; charset=utf-16",
                type + "; charset=\"",
                type + "; a=b; charset=UTF-8",
                "application/json",
                FORM,
                MULTIPART,
                "text/plain",
                "x",
                "/",
                inHeader(mutations)));
    }

    /** What a form with a file looks like, and at times does not. */
    private static String multipart(Mutations mutations, List<Map.Entry<String, String>> fields) {
        String border = mutations.any(List.of("--b", "--b", "--b", "--b", "--c", "b", "--b--"));
        return fields.stream()
                .map(field -> border + "\r\nContent-Disposition: form-data; name=\"" + field.getKey() + "\""
                        + mutations.any(
                                List.of("", "", "; filename=\"a.csv\"", "; filename=\"" + mutations.nasty() + "\""))
                        + mutations.any(
                                List.of("", "", "\r\nContent-Type: text/csv", "\r\nContent-Type: " + mutations.nasty()))
                        + "\r\n\r\n" + field.getValue() + "\r\n")
                .collect(Collectors.joining("", "", mutations.any(List.of("--b--\r\n", "--b--\r\n", "", "--b"))));
    }

    /** The client itself sends nothing but visible signs and blanks there. */
    private static String inHeader(Mutations mutations) {
        String signs = mutations.nasty().replaceAll("[^ -~]", "");
        return signs.substring(0, Math.min(signs.length(), 1_000)).strip();
    }

    private static String shortened(URI address) {
        return shortened(address.toString());
    }

    private static String shortened(String text) {
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
