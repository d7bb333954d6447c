package eaveside.web.security;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.schema.BooksProof;
import eaveside.web.testing.OnItsOwnCompany;
import eaveside.web.testing.Server;
import eaveside.web.testing.Visitor;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CompletableFuture;
import java.util.regex.Pattern;
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

    /** They end the session that they come with, or guess at a password, where three at once are as many as may be. */
    private static final Pattern LEFT_OUT =
            Pattern.compile("/sign-out|/account.*|/sign-in.*|/settings/users/[^/]+/tokens");

    private static final List<String> TEXTS = List.of(
            "name", "reason", "note", "summary", "description", "label", "title", "street", "city", "manufacturer");

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
        String person = Visitor.value(server, "select id from app_user where username = 'linus'");
        for (PageForm form : PageForm.all(server, owner)) {
            if (form.isMultipart() || LEFT_OUT.matcher(form.action()).matches()) {
                continue;
            }
            HttpRequest request = request(form, person);
            int before = repeated();
            List<HttpResponse<String>> answers = Stream.generate(
                            () -> owner.sendAsync(request, HttpResponse.BodyHandlers.ofString()))
                    .limit(TIMES)
                    .toList()
                    .stream()
                    .map(CompletableFuture::join)
                    .toList();
            List<String> told =
                    answers.stream().map(FormsAtOnceHttpIT::told).distinct().toList();
            if (told.stream().anyMatch(one -> one.startsWith("5")) || told.size() > 1) {
                wrong.add(kind(form.action()) + " -> " + told);
            }
            if (repeated() > before) {
                wrong.add(kind(form.action()) + " was done " + (repeated() - before) + " times too often");
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

    /** How many lines of the audit log say the same of the same deed by the same hand. */
    private static int repeated() {
        return Integer.parseInt(
                Visitor.value(
                        server,
                        "select count(*) - count(distinct (action, user_id, subject, detail)) from audit_event where outcome = 'DONE'"));
    }

    private static String kind(String action) {
        return action.replaceAll("[0-9a-f-]{36}", "*");
    }

    private static String told(HttpResponse<String> answer) {
        return answer.statusCode() + " "
                + answer.headers().firstValue("Location").orElse("");
    }

    /** Of people, the one who may be changed: never the one who sends. */
    private static HttpRequest request(PageForm form, String person) {
        String body = form.fields().stream()
                .map(field -> encoded(field.getKey()) + "="
                        + encoded(
                                field.getValue().isBlank()
                                        ? something(form.action(), field.getKey())
                                        : field.getValue()))
                .collect(Collectors.joining("&"));
        String action = form.action().replaceFirst("^/settings/users/[0-9a-f-]{36}", "/settings/users/" + person);
        return HttpRequest.newBuilder(URI.create(server.base() + action.substring(1)))
                .header("Accept", "text/html")
                .header("Sec-Fetch-Site", "same-origin")
                .header("Content-Type", "application/x-www-form-urlencoded")
                .timeout(Duration.ofMinutes(1))
                .POST(HttpRequest.BodyPublishers.ofString(body))
                .build();
    }

    /** What somebody could type into a field that is blank. */
    private static String something(String action, String field) {
        String name = field.replaceFirst(".*-", "").toLowerCase(Locale.ROOT);
        if (name.endsWith("email")) {
            return "at.once@example.com";
        }
        if (name.contains("date") || name.equals("from") || name.equals("to") || name.contains("until")) {
            return LocalDate.now(ZoneOffset.UTC).toString();
        }
        if (name.endsWith("password")) {
            return "four plain words at once";
        }
        if (name.contains("username")) {
            return "at.once";
        }
        if (name.contains("code")) {
            return action.startsWith("/books") ? "5990" : "ATONCE";
        }
        return TEXTS.stream().anyMatch(name::contains) ? "Sent at once" : "1";
    }

    private static String encoded(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }
}
