package eaveside.web.security;

import eaveside.web.Page;
import jakarta.ws.rs.core.UriBuilder;
import java.net.URI;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * A form that was sent when its sender was not signed in any more. It was not stored, and is not lost either: the page holds what was typed, to
 * be sent again by whoever has signed in meanwhile.
 *
 * @param action where it goes, of ours
 * @param fields by name, in their order; none where what was sent is kept nowhere, since it holds passwords or files
 * @param first where its sender signs in, or does the rest of it
 */
public record KeptFormPage(String action, List<Map.Entry<String, String>> fields, String first) implements Page {
    /** Reads the form as it was sent; refuses with {@link IllegalArgumentException} what is none. */
    static KeptFormPage of(String action, byte[] body, String first) {
        List<Map.Entry<String, String>> fields = new ArrayList<>();
        for (String field : new String(body, StandardCharsets.UTF_8).split("&")) {
            String[] parts = field.split("=", 2);
            fields.add(Map.entry(decoded(parts[0]), parts.length == 1 ? "" : decoded(parts[1])));
        }
        return new KeptFormPage(action, List.copyOf(fields), first);
    }

    /** @param back the page that it was sent from */
    static KeptFormPage lost(String back) {
        return new KeptFormPage(back, List.of(), "/sign-in");
    }

    public boolean isLost() {
        return fields.isEmpty();
    }

    /** Whether its sender has begun to sign in. */
    public boolean isBegun() {
        return !first.equals("/sign-in");
    }

    public URI signIn() {
        return UriBuilder.fromPath("/sign-in").queryParam("to", "{to}").build(action);
    }

    private static String decoded(String text) {
        return URLDecoder.decode(text, StandardCharsets.UTF_8);
    }
}
