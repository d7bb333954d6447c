package eaveside.web.security;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.schema.BooksProof;
import eaveside.web.testing.OnItsOwnCompany;
import eaveside.web.testing.Server;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.sql.SQLException;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Every form of every page four times at the same moment, as a button that is tapped again while nothing seems to happen: nothing
 * breaks, and all four are told the same, so that the work is done once.
 */
@Tag("long")
@OnItsOwnCompany
class FormsAtOnceHttpIT {
    private static final int TIMES = 4;

    /** What only the first can do: the others are told so. */
    private static final Set<String> ONLY_ONCE = Set.of();

    /** They end the session that they come with, or guess at a password. */
    private static final List<String> LEFT_OUT = List.of("/sign-out", "/account", "/sign-in");

    private static Server server;
    private static HttpClient owner;

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
    void a_form_that_comes_four_times_at_once_is_one() throws SQLException {
        List<String> wrong = new ArrayList<>();
        int done = 0;
        for (PageForms form : PageForms.all(server, owner)) {
            if (form.isMultipart() || LEFT_OUT.stream().anyMatch(form.action()::startsWith)) {
                continue;
            }
            HttpRequest request = request(form);
            List<HttpResponse<String>> answers = Stream.generate(
                            () -> owner.sendAsync(request, HttpResponse.BodyHandlers.ofString()))
                    .limit(TIMES)
                    .toList()
                    .stream()
                    .map(CompletableFuture::join)
                    .toList();
            List<String> told =
                    answers.stream().map(FormsAtOnceHttpIT::told).distinct().toList();
            if (told.stream().anyMatch(one -> one.startsWith("5"))
                    || told.size() > 1 && !ONLY_ONCE.contains(kind(form.action()))) {
                wrong.add(kind(form.action()) + " -> " + told);
            }
            done += told.getFirst().startsWith("303") ? 1 : 0;
        }
        System.out.println("Forms that were taken: " + done);
        assertEquals(List.of(), wrong);
        assertTrue(done > 20, "taken: " + done);
        try (var connection = server.database().asOwner().getConnection()) {
            for (BooksProof.Result proof : BooksProof.run(connection)) {
                assertTrue(proof.holds(), proof.toString());
            }
        }
    }

    private static String kind(String action) {
        return action.replaceAll("[0-9a-f-]{36}", "*");
    }

    private static String told(HttpResponse<String> answer) {
        return answer.statusCode() + " "
                + answer.headers().firstValue("Location").orElse("");
    }

    private static HttpRequest request(PageForms form) {
        String body = form.fields().stream().map(FormsAtOnceHttpIT::encoded).collect(Collectors.joining("&"));
        return HttpRequest.newBuilder(URI.create(server.base() + form.action().substring(1)))
                .header("Accept", "text/html")
                .header("Sec-Fetch-Site", "same-origin")
                .header("Content-Type", "application/x-www-form-urlencoded")
                .POST(HttpRequest.BodyPublishers.ofString(body))
                .build();
    }

    private static String encoded(Map.Entry<String, String> field) {
        return URLEncoder.encode(field.getKey(), StandardCharsets.UTF_8) + "="
                + URLEncoder.encode(field.getValue(), StandardCharsets.UTF_8);
    }
}
