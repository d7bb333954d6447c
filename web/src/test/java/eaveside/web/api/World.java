package eaveside.web.api;

import eaveside.web.testing.Server;
import jakarta.json.Json;
import jakarta.json.JsonArray;
import jakarta.json.JsonException;
import jakarta.json.JsonString;
import java.io.StringReader;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublisher;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * What the snapshots speak with: a server of their own, on which it is always the same day, who calls it, and the names
 * that stand for ids. Everything sent is written with such names ({@code <customer>}), and what is answered is read back
 * into them.
 */
public final class World {
    /** Who sends a request. */
    enum Caller {
        OWNER,
        OFFICE,
        TECHNICIAN,
        OTHER_TECHNICIAN,
        NOBODY
    }

    /**
     * One request with its answer.
     *
     * @param operation such as {@code PUT /api/customers/{id}}
     * @param request   the body that was sent, empty where there was none
     * @param type      of the answer's body
     */
    public record Exchange(String operation, int status, String request, String type, String answer) {}

    static final String PASSWORD = "eleven green ladders by the barn";

    /** The day on which everything happens; the books begin with its month. */
    static final String TODAY = "2027-06-16";

    private static final Instant START = Instant.parse(TODAY + "T15:00:00Z");
    private static final String PREFIX = "0190aaaa-0000-7000-8000-";

    private static final Pattern NAME = Pattern.compile("<([a-z][a-z-]*(?: [a-z-]+)*)>");
    private static final Pattern VARYING =
            Pattern.compile("[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}"
                    + "|\\d{4}-\\d{2}-\\d{2}T\\d{2}:\\d{2}(:\\d{2}(\\.\\d+)?)?Z");
    private static final Pattern PRICE = Pattern.compile("\\$([-\\w.,]+) per (\\S+) (\\w+)\\$");
    private static final Pattern MONEY = Pattern.compile("\\$([-\\w.,]+)\\$");
    private static final Pattern QUANTITY = Pattern.compile("#([-\\w.,]+) (\\w+)#");

    private final Server server = Server.foundedAt(START);
    private final Map<String, String> byName = new HashMap<>();
    private final Map<String, String> byValue = new LinkedHashMap<>();
    private final Map<Caller, HttpClient> clients = new HashMap<>();
    private final List<Exchange> exchanges = new ArrayList<>();
    private final Map<String, String> unnamed = new HashMap<>();
    private final List<String> surprises = new ArrayList<>();
    private final Set<String> spoiled = new TreeSet<>();
    private final List<String> untold = new ArrayList<>();
    private final List<String> unlike = new ArrayList<>();
    private final int atOnce;
    private int ids;

    /** @param  atOnce how many of each change are sent at the same time, all alike */
    World(int atOnce) {
        this.atOnce = atOnce;
        clients.put(Caller.NOBODY, server.stranger());
        clients.put(Caller.OWNER, server.signedIn(Server.OWNER, Server.OWNER_PASSWORD));
    }

    /** Signs somebody in whom the owner has added with {@link #PASSWORD}. */
    void signIn(Caller caller, String username) {
        clients.put(caller, server.choosing(username, PASSWORD));
    }

    Server server() {
        return server;
    }

    /** All that was sent to an operation, in order. */
    public List<Exchange> exchanges() {
        return List.copyOf(exchanges);
    }

    /** What was answered with another status than the way through the company's work needs. */
    List<String> surprises() {
        return surprises;
    }

    /** From now on the value is written as that name, and the name sent as the value. */
    String name(String name, String value) {
        byName.put(name, value);
        byValue.put(value, "<" + name + ">");
        return value;
    }

    /** What was answered otherwise than the same that was sent at the same time. */
    List<String> unlike() {
        return unlike;
    }

    /** Every wrong value that was sent in an otherwise good body: the operation with the field and what was wrong. */
    public Set<String> spoiled() {
        return spoiled;
    }

    /** Those whose refusal did not name their field, or that were taken. */
    List<String> untold() {
        return untold;
    }

    /**
     * Sends a body with each of its values made wrong, just before the body itself: nothing may come of any. What was told
     * counts once the body itself is taken; that of a body which is refused anyway may be about something else.
     */
    Runnable spoil(Caller caller, String method, String path, String body) {
        Map<String, String> told = new LinkedHashMap<>();
        Operations.of(method, path)
                .filter(operation -> atOnce == 1)
                .ifPresent(operation -> WrongValues.of(operation.name(), body).forEach(wrong -> {
                    String name = operation.name() + ": " + wrong.kind();
                    if (!spoiled.contains(name) && !told.containsKey(name)) {
                        HttpResponse<String> answer = request(caller, method, path, "application/json", wrong.body());
                        boolean right = answer.statusCode() / 100 == 4 && wrong.isTold(fields(answer.body()));
                        told.put(name, right ? "" : answer.statusCode() + " " + answer.body());
                        if (answer.statusCode() / 100 == 2) {
                            untold.add(name + " was taken"); // then the body itself may be refused as a second one
                        }
                    }
                }));
        return () -> told.forEach((name, problem) -> {
            spoiled.add(name);
            if (!problem.isEmpty()) {
                untold.add(name + " was answered " + problem);
            }
        });
    }

    private static List<String> fields(String problem) {
        try (var reader = Json.createReader(new StringReader(problem))) {
            JsonArray fields = reader.readObject().getJsonArray("fields");
            return fields == null ? List.of() : fields.getValuesAs(JsonString::getString);
        } catch (JsonException e) {
            return List.of();
        }
    }

    /** Begins a part whose ids that the server makes are counted from one again. */
    void begin() {
        unnamed.clear();
    }

    /** The address with what its names stand for. */
    String filledAddress(String path) {
        return NAME.matcher(path).replaceAll(name -> URLEncoder.encode(value(name), StandardCharsets.UTF_8));
    }

    /** The text with what its names stand for; a name that was never given means a new id. */
    String filled(String text) {
        return NAME.matcher(text).replaceAll(name -> Matcher.quoteReplacement(value(name)));
    }

    private String value(MatchResult name) {
        String known = byName.get(name.group(1));
        return known != null ? known : name(name.group(1), PREFIX + String.format("%012x", ++ids));
    }

    /** A body in full: {@code $9.50$} is money, {@code $0.70 per 1 SMI$} a unit price and {@code #4 H87#} a quantity. */
    static String spelled(String body) {
        String text = PRICE.matcher(body)
                .replaceAll(
                        "{\"amount\": \"$1\", \"currency\": \"USD\", \"per\": {\"value\": \"$2\", \"unit\": \"$3\"}}");
        text = MONEY.matcher(text).replaceAll("{\"amount\": \"$1\", \"currency\": \"USD\"}");
        return QUANTITY.matcher(text).replaceAll("{\"value\": \"$1\", \"unit\": \"$2\"}");
    }

    /** The text with names where it says what differs from run to run. */
    String named(String text) {
        return VARYING.matcher(text).replaceAll(found -> Matcher.quoteReplacement(nameOf(found.group())));
    }

    private String nameOf(String found) {
        String known = byValue.get(found);
        if (known != null) {
            return known;
        }
        return found.endsWith("Z")
                ? "<time>"
                : unnamed.computeIfAbsent(found, id -> "<id-" + (unnamed.size() + 1) + ">");
    }

    /** Sends it and keeps under which operation it was answered how. */
    HttpResponse<String> send(Caller caller, String method, String path, String type, String body) {
        HttpResponse<String> answer = atOnce == 1 || method.equals("GET")
                ? request(caller, method, path, type, body)
                : atOnce(caller, method, path, type, body);
        Operations.of(method, path)
                .ifPresent(operation -> exchanges.add(new Exchange(
                        operation.name(),
                        answer.statusCode(),
                        body,
                        answer.headers().firstValue("content-type").orElse(""),
                        answer.body())));
        return answer;
    }

    /** The same from several at once; the answer that is the best, which the others should be like. */
    private HttpResponse<String> atOnce(Caller caller, String method, String path, String type, String body) {
        List<HttpResponse<String>> answers = new ArrayList<>();
        try (var senders = Executors.newFixedThreadPool(atOnce)) {
            Callable<HttpResponse<String>> one = () -> request(caller, method, path, type, body);
            for (Future<HttpResponse<String>> answer : senders.invokeAll(Collections.nCopies(atOnce, one))) {
                answers.add(answer.get());
            }
        } catch (InterruptedException | ExecutionException e) {
            throw new IllegalStateException(e);
        }
        answers.sort(Comparator.comparingInt(HttpResponse::statusCode));
        HttpResponse<String> best = answers.getFirst();
        for (HttpResponse<String> answer : answers) {
            if (answer.statusCode() != best.statusCode() || !unrepeated(answer).equals(unrepeated(best))) {
                unlike.add(method + " " + path.replaceAll("[0-9a-f-]{36}", "*") + ": " + best.statusCode() + " "
                        + best.body() + " beside " + answer.statusCode() + " " + answer.body());
            }
        }
        return best;
    }

    /** Whoever sends a file again is told that it had been sent, which is nothing else that came of it. */
    private static String unrepeated(HttpResponse<String> answer) {
        return answer.body().replaceFirst("\"importedBefore\":\"[^\"]*\",", "");
    }

    private HttpResponse<String> request(Caller caller, String method, String path, String type, String body) {
        HttpRequest.Builder request = HttpRequest.newBuilder(server.at(path))
                .header("Accept", "application/json")
                .header("Origin", origin());
        if (!body.isEmpty() || !type.isEmpty()) {
            request.header("Content-Type", type);
        }
        BodyPublisher content = body.isEmpty() ? BodyPublishers.noBody() : BodyPublishers.ofString(body);
        return server.send(clients.get(caller), request.method(method, content).build());
    }

    private String origin() {
        return server.base().toString().replaceAll("/$", "");
    }

    /** Sends a form of a page, as a browser does. */
    HttpResponse<String> form(Caller caller, String path, String form) {
        return server.send(
                clients.get(caller),
                HttpRequest.newBuilder(server.at(path))
                        .header("Content-Type", "application/x-www-form-urlencoded")
                        .header("Origin", origin())
                        .POST(BodyPublishers.ofString(form))
                        .build());
    }

    /** Sends a change that says where it comes from, or does not. */
    HttpResponse<String> change(Caller caller, String path, @Nullable String origin) {
        HttpRequest.Builder request = HttpRequest.newBuilder(server.at(path))
                .header("Accept", "application/json")
                .header("Content-Type", "application/json")
                .POST(BodyPublishers.ofString("{}"));
        if (origin != null) {
            request.header("Origin", origin);
        }
        return server.send(clients.get(caller), request.build());
    }

    /** Sends a request as it is, with nobody signed in. */
    HttpResponse<String> send(HttpRequest request) {
        return server.send(server.stranger(), request);
    }

    /**
     * Lets the books begin a month earlier, so that there is a month to close. Nothing but founding says when they begin,
     * and the company was founded this month.
     */
    void openBooksAMonthEarlier() {
        try (var connection = server.database().asOwner().getConnection();
                var statement = connection.createStatement()) {
            statement.execute("""
                    begin;
                    alter table company disable trigger company_keeps_currency;
                    update company set books_from = (books_from - interval '1 month')::date;
                    alter table company enable trigger company_keeps_currency;
                    commit""");
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }
}
