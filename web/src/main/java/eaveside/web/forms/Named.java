package eaveside.web.forms;

import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Refusal;
import jakarta.json.JsonArray;
import jakarta.json.JsonObject;
import jakarta.json.JsonString;
import jakarta.json.JsonValue;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.ws.rs.core.UriInfo;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Which field of a request named what is not there. A use case looks things up by their ids and does not know where an id
 * came from. What the path names is not found; what the query or the body names is an error of that field.
 */
public final class Named {
    private static final String BODY = Named.class.getName();

    private static final int UUID_LENGTH = 36;

    private Named() {}

    /** Keeps the body for a refusal that may come of it. */
    static void keep(HttpServletRequest request, JsonObject body) {
        request.setAttribute(BODY, body);
    }

    /** The body that was sent with the request; empty where there was none, or it was no object. */
    public static Optional<JsonObject> sent(HttpServletRequest request) {
        return Optional.ofNullable((JsonObject) request.getAttribute(BODY));
    }

    /** The refusal with the field that named what is not there; as it is, where that was the path. */
    public static Refusal in(HttpServletRequest request, UriInfo uri, Refusal refusal) {
        if (!(refusal instanceof KernelRefusal.NotFound missing)
                || !missing.fields().isEmpty()
                || named(uri.getPathParameters(), missing.id()).findAny().isPresent()) {
            return refusal;
        }
        Stream<String> inQuery = named(uri.getQueryParameters(), missing.id());
        Stream<String> inBody = request.getAttribute(BODY) instanceof JsonObject body
                ? members(body).flatMap(member -> fields(member.getKey(), member.getValue(), missing.id()))
                : Stream.empty();
        List<String> fields = Stream.concat(inQuery, inBody).toList();
        // A short code may by chance stand in another field, too; an id may be named twice, and the first one is as
        // wrong.
        boolean certain =
                fields.size() == 1 || !fields.isEmpty() && missing.id().length() == UUID_LENGTH;
        return certain ? missing.namedBy(fields.getFirst()) : refusal;
    }

    /** The parameters that say the id. */
    private static Stream<String> named(Map<String, List<String>> parameters, String id) {
        return parameters.entrySet().stream()
                .filter(parameter -> parameter.getValue().stream().anyMatch(id::equalsIgnoreCase))
                .map(Map.Entry::getKey);
    }

    private static Stream<Map.Entry<String, JsonValue>> members(JsonObject object) {
        return object.entrySet().stream();
    }

    private static Stream<String> fields(String path, JsonValue value, String id) {
        return switch (value) {
            case JsonString text -> text.getString().equalsIgnoreCase(id) ? Stream.of(path) : Stream.empty();
            case JsonObject object ->
                members(object).flatMap(member -> fields(path + "." + member.getKey(), member.getValue(), id));
            case JsonArray list ->
                IntStream.range(0, list.size()).boxed().flatMap(i -> fields(path + "[" + i + "]", list.get(i), id));
            default -> Stream.empty();
        };
    }
}
