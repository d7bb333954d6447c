package eaveside.web.api;

import eaveside.web.api.World.Caller;
import jakarta.json.Json;
import jakarta.json.JsonException;
import jakarta.json.JsonObject;
import jakarta.json.JsonString;
import jakarta.json.JsonValue;
import java.io.StringReader;
import java.net.URI;
import java.net.http.HttpResponse;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * One area of the interface: sends its requests one after the other and writes down each with its answer, part by part.
 * Who sends, as {@link #as} says, holds for the next request only.
 */
final class Area {
    private static final String JSON = "application/json";

    /** A request as it was written, with what it was answered. */
    private record Sent(Caller by, String method, String path, String type, String body, HttpResponse<String> answer) {}

    private final World world;
    private final String name;
    private final Caller usual;
    private final Map<String, StringBuilder> parts = new LinkedHashMap<>();
    private StringBuilder text = new StringBuilder();
    private Caller by;
    private boolean shortened;
    private boolean quiet;
    private List<String> before = List.of();
    private @Nullable Sent last;

    Area(World world, String name, Caller usual) {
        this.world = world;
        this.name = name;
        this.usual = usual;
        this.by = usual;
        world.begin();
    }

    /** What was sent and answered, by the name of the part. */
    Map<String, String> parts() {
        Map<String, String> texts = new LinkedHashMap<>();
        parts.forEach((part, written) -> texts.put(part, written.toString()));
        return texts;
    }

    /** Begins a part, which is held in a file of its own. */
    Area part(String part) {
        text = parts.computeIfAbsent(name + "-" + part, key -> new StringBuilder());
        before = List.of();
        return this;
    }

    /** Goes on with the same in another file, before the one gets long. */
    Area next(String part) {
        text = parts.computeIfAbsent(name + "-" + part, key -> new StringBuilder());
        return this;
    }

    Area as(Caller caller) {
        by = caller;
        return this;
    }

    /** Leaves the long body of the next request out of the file. */
    Area quiet() {
        quiet = true;
        return this;
    }

    /** Writes only the first of a long list. */
    Area shortened() {
        shortened = true;
        return this;
    }

    Area get(String title, String path) {
        return send(title, "GET", path, "", "");
    }

    Area delete(String title, String path) {
        return send(title, "DELETE", path, "", "");
    }

    Area post(String title, String path) {
        return send(title, "POST", path, "", "");
    }

    Area post(String title, String path, String body) {
        return send(title, "POST", path, JSON, World.spelled(body));
    }

    Area put(String title, String path, String body) {
        return send(title, "PUT", path, JSON, World.spelled(body));
    }

    Area csv(String title, String path, String body) {
        return send(title, "POST", path, "text/csv", body);
    }

    /** The last request once more: says only that the answer is the same, or else what it is. */
    Area again() {
        Sent sent = last();
        HttpResponse<String> answer = answered(sent.by, sent.method, sent.path, sent.type, sent.body);
        boolean same =
                answer.statusCode() == sent.answer.statusCode() && answer.body().equals(sent.answer.body());
        text.append("### the same again\n").append(same ? "the same answer\n\n" : shown(answer));
        return this;
    }

    private Area send(String title, String method, String path, String type, String body) {
        Runnable whenTaken = type.equals(JSON) && !quiet && !(path + body).contains("<unused")
                ? world.spoil(by, method, world.filledAddress(path), world.filled(body))
                : () -> {};
        HttpResponse<String> answer = answered(by, method, path, type, body);
        if (answer.statusCode() < 300) {
            whenTaken.run();
        }
        last = new Sent(by, method, path, type, body, answer);
        if (!method.equals("GET") && (path + body).contains("<unused") && answer.statusCode() < 300) {
            world.surprises().add(method + " " + path + " was to be refused: " + title);
        }
        text.append("### ").append(title).append('\n');
        text.append(method).append(" /").append(path).append("  [");
        text.append(by.name().toLowerCase(Locale.ROOT).replace('_', ' ')).append("]\n");
        if (quiet) {
            text.append("(a body of ").append(body.lines().count()).append(" lines)\n");
        } else if (!body.isEmpty()) {
            writeBody(body);
        }
        text.append(shown(answer));
        by = usual;
        shortened = false;
        quiet = false;
        return this;
    }

    /** In full, or only what differs from the body before it, so that what a refusal is about is seen at once. */
    private void writeBody(String body) {
        List<String> now = Print.plain()
                .of(body.replaceAll("(?<=: )(<[^>]*>)", "\"$1\"").strip())
                .lines()
                .toList();
        List<String> changed = new ArrayList<>(now);
        before.forEach(changed::remove);
        if (changed.size() * 2 < now.size()) {
            changed.forEach(line -> text.append("~ ").append(line.strip()).append('\n'));
        } else {
            now.forEach(line -> text.append(line).append('\n'));
        }
        before = now;
    }

    private HttpResponse<String> answered(Caller caller, String method, String path, String type, String body) {
        return world.send(caller, method, world.filledAddress(path), type, world.filled(body));
    }

    private String shown(HttpResponse<String> answer) {
        String type = answer.headers().firstValue("content-type").orElse("");
        String location = answer.headers()
                .firstValue("location")
                .map(to -> "Location: " + world.named(URI.create(to).getPath()) + "\n")
                .orElse("");
        Print print = new Print(world::named, shortened);
        String body = answer.body().isEmpty() ? "" : print.of(answer.body()) + "\n";
        return ("> " + answer.statusCode() + " " + type).strip() + "\n" + location + body + "\n";
    }

    private Sent last() {
        return Objects.requireNonNull(last, "nothing was sent yet");
    }

    /** Notes where the last answer was another: what follows would say nothing. */
    Area expect(int status) {
        Sent sent = last();
        if (sent.answer.statusCode() != status) {
            world.surprises()
                    .add(sent.method + " " + sent.path + " was answered " + sent.answer.statusCode() + ": "
                            + sent.answer.body());
        }
        return this;
    }

    /** Names a value of the last answer, such as {@code /lines/0/id}. */
    Area naming(String name, String pointer) {
        if (last().answer.statusCode() < 300) {
            JsonValue value = Json.createPointer(pointer).getValue(json());
            world.name(name, value instanceof JsonString string ? string.getString() : value.toString());
        }
        return this;
    }

    World world() {
        return world;
    }

    JsonObject json() {
        Sent sent = last();
        try (var reader = Json.createReader(new StringReader(sent.answer.body()))) {
            return reader.readObject();
        } catch (JsonException e) {
            throw new IllegalStateException(
                    sent.method + " " + sent.path + " was answered " + sent.answer.statusCode() + ": "
                            + sent.answer.body(),
                    e);
        }
    }
}
