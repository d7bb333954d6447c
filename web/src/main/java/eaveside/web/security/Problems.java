package eaveside.web.security;

import eaveside.kernel.Refusal;
import eaveside.web.forms.JsonWriting;
import jakarta.json.Json;
import jakarta.json.JsonArrayBuilder;
import jakarta.json.JsonObjectBuilder;
import jakarta.ws.rs.core.Response;
import java.util.TreeMap;

/** A refusal as problem details (RFC 9457). */
final class Problems {
    private Problems() {}

    static Response response(Refusal refusal, int status) {
        JsonArrayBuilder fields = Json.createArrayBuilder();
        refusal.fields().forEach(fields::add);
        JsonObjectBuilder body = Json.createObjectBuilder()
                .add("type", "urn:eaveside:refusal:" + refusal.code())
                .add("title", refusal.text())
                .add("status", status)
                .add("fields", fields);
        // By name: the order of what a refusal keeps may change with every start of the program.
        new TreeMap<>(refusal.details()).forEach((name, value) -> body.add(name, JsonWriting.of(value)));
        return Response.status(status)
                .type("application/problem+json")
                .entity(body.build().toString())
                .build();
    }

    /** What went wrong inside stays inside: only the id under which the log has it goes out. */
    static Response fault(String correlationId) {
        return Response.status(500)
                .type("application/problem+json")
                .entity(Json.createObjectBuilder()
                        .add("type", "urn:eaveside:fault")
                        .add("title", "Something went wrong here")
                        .add("status", 500)
                        .add("correlationId", correlationId)
                        .build()
                        .toString())
                .build();
    }
}
