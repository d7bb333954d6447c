package eaveside.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.testing.Server;
import jakarta.json.Json;
import jakarta.json.JsonObject;
import java.io.ByteArrayInputStream;
import java.io.StringReader;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What holds for every answer of the real server, whatever the page. */
class ServerIT {
    private final Server server = Server.shared();

    @Test
    void pages_are_private_and_take_nothing_from_elsewhere() {
        var page = server.get(server.stranger(), "sign-in");

        assertEquals(200, page.statusCode());
        assertEquals(List.of("no-store"), page.headers().allValues("cache-control"));
        assertEquals(List.of("nosniff"), page.headers().allValues("x-content-type-options"));
        var policy = page.headers().firstValue("content-security-policy").orElse("");
        assertTrue(policy.contains("frame-ancestors 'none'"), policy);
        assertFalse(policy.contains("unsafe"), policy);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"sign-in", "no/such/page", "api/no-such-thing", "assets/0/nothing.css", "%2e%2e/WEB-INF/web.xml"
            })
    void noAnswerNamesTheServerSoftware(String path) {
        var answer = server.get(server.stranger(), path);

        assertTrue(answer.statusCode() < 500, () -> "status " + answer.statusCode());
        assertQuiet(answer);
    }

    @Test
    void an_unknown_address_is_not_found() {
        assertEquals(404, server.get(server.stranger(), "no/such/page").statusCode());
    }

    @Test
    void a_form_from_another_site_is_refused() {
        var request = HttpRequest.newBuilder(server.at("sign-in"))
                .header("Content-Type", "application/x-www-form-urlencoded")
                .header("Origin", "https://elsewhere.example")
                .POST(BodyPublishers.ofString("username=x&password=y"))
                .build();

        var answer = server.send(server.stranger(), request);

        assertEquals(403, answer.statusCode());
        assertQuiet(answer);
    }

    @Test
    void the_owner_signs_in() {
        var answer = server.get(server.signedIn(Server.OWNER, Server.OWNER_PASSWORD), "");

        assertEquals(303, answer.statusCode());
        assertEquals(
                "/worklist", answer.headers().firstValue("location").orElse("").replaceFirst("^https?://[^/]+", ""));
    }

    @Test
    void a_body_of_twenty_megabytes_is_too_large() {
        var request = HttpRequest.newBuilder(server.at("sign-in"))
                .header("Content-Type", "application/x-www-form-urlencoded")
                .header("Origin", server.base().toString().replaceAll("/$", ""))
                .expectContinue(true)
                .POST(BodyPublishers.ofByteArray(new byte[20_000_000]))
                .build();

        var answer = server.send(server.stranger(), request);

        assertEquals(413, answer.statusCode());
        assertQuiet(answer);
    }

    @Test
    void it_says_that_it_is_ready() {
        assertEquals(200, server.get(server.stranger(), "health/ready").statusCode());
        var described = server.send(
                server.stranger(),
                HttpRequest.newBuilder(server.at("openapi"))
                        .header("Accept", "application/json")
                        .build());
        assertEquals(200, described.statusCode());
        JsonObject api;
        try (var reader = Json.createReader(new StringReader(described.body()))) {
            api = reader.readObject();
        }
        assertEquals("Eaveside", api.getJsonObject("info").getString("title"));
        var paths = api.getJsonObject("paths").keySet();
        assertTrue(paths.contains("/api/invoices/preview") && paths.size() > 60, paths.toString());
        assertTrue(paths.stream().allMatch(path -> path.startsWith("/api/")), paths.toString());
        assertEquals(
                "bearer",
                api.getJsonObject("components")
                        .getJsonObject("securitySchemes")
                        .getJsonObject("token")
                        .getString("scheme"));
    }

    @Test
    void files_of_pages_are_small_on_the_way() throws Exception {
        var server = Server.shared();
        var page = server.get(server.stranger(), "sign-in").body();
        var style = page.replaceFirst("(?s).*href=\"/(assets/[^\"]*\\.css)\".*", "$1");
        var asked = HttpRequest.newBuilder(server.at(style)).header("Accept-Encoding", "br, gzip;q=0.8");
        var small = server.stranger().send(asked.build(), HttpResponse.BodyHandlers.ofByteArray());
        assertEquals("gzip", small.headers().firstValue("content-encoding").orElse(""));
        assertTrue(small.headers().allValues("vary").toString().contains("Accept-Encoding"));
        assertTrue(small.body().length < 15_000, small.body().length + " bytes of style");
        String unpacked;
        try (var in = new GZIPInputStream(new ByteArrayInputStream(small.body()))) {
            unpacked = new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
        var plain = server.send(
                server.stranger(), HttpRequest.newBuilder(server.at(style)).build());
        assertTrue(plain.headers().firstValue("content-encoding").isEmpty());
        assertEquals(plain.body(), unpacked);
    }

    private static void assertQuiet(HttpResponse<String> answer) {
        assertTrue(answer.headers().firstValue("server").isEmpty(), "a Server header");
        assertTrue(answer.headers().firstValue("x-powered-by").isEmpty(), "an X-Powered-By header");
        var body = answer.body();
        for (var telling : List.of("Payara", "GlassFish", "Grizzly", "\tat ", "Exception")) {
            assertFalse(body.contains(telling), () -> "the answer says " + telling + ":\n" + body);
        }
    }
}
