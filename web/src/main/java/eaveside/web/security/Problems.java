package eaveside.web.security;

import eaveside.kernel.Refusal;
import eaveside.web.forms.JsonWriting;
import jakarta.json.Json;
import jakarta.json.JsonObjectBuilder;
import jakarta.ws.rs.core.Response;
import java.util.TreeMap;

/** A refusal as problem details (RFC 9457). */
final class Problems {
    private Problems() {}

    static Response response(Refusal refusal, int status) {
        JsonObjectBuilder body = body("refusal:" + refusal.code(), refusal.text(), status)
                .add("fields", Json.createArrayBuilder(refusal.fields()));
        // By name: the order of what a refusal keeps may change with every start of the program.
        new TreeMap<>(refusal.details()).forEach((name, value) -> body.add(name, JsonWriting.of(value)));
        return answer(status, body);
    }

    /** What went wrong inside stays inside: only the id under which the log has it goes out. */
    static Response fault(String correlationId) {
        return answer(500, body("fault", "Something went wrong here", 500).add("correlationId", correlationId));
    }

    private static JsonObjectBuilder body(String type, String title, int status) {
        return Json.createObjectBuilder()
                .add("type", "urn:eaveside:" + type)
                .add("title", title)
                .add("status", status);
    }

    private static Response answer(int status, JsonObjectBuilder body) {
        return Response.status(status)
                .type("application/problem+json")
                .entity(body.build().toString())
                .build();
    }
}
