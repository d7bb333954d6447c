package eaveside.web.security;

import eaveside.access.PasskeyQuestion;
import jakarta.json.Json;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.io.StringReader;

/** Gives a page's script what to ask the browser's authenticators. */
public final class PasskeyAnswers {
    private PasskeyAnswers() {}

    public static Response answer(PasskeyQuestion question) {
        try (var options = Json.createReader(new StringReader(question.options()))) {
            String body = Json.createObjectBuilder()
                    .add("question", question.name())
                    .add("options", options.readObject())
                    .build()
                    .toString();
            return Response.ok(body, MediaType.APPLICATION_JSON_TYPE).build();
        }
    }
}
