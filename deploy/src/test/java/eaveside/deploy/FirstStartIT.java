package eaveside.deploy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.CookieManager;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Somebody answers the questions of the first start. */
@Tag("long")
class FirstStartIT {
    @TempDir
    Path folder;

    @Test
    void a_company_is_made_of_the_answers_that_are_typed() throws Exception {
        Path data = folder.resolve("data");
        try (Launched eaveside = Launched.company(
                data,
                "Typed Cleaning",
                "Atlantis",
                "US",
                "Dollars",
                "USD",
                "Atlantis/Center",
                "UTC",
                "Typed Owner",
                "typed",
                "too short",
                "several words that are typed",
                "several words that are typed")) {
            assertEquals(200, eaveside.status("sign-in"));
            assertTrue(eaveside.said().contains("Name of the company"));
            for (String told :
                    List.of("Atlantis is not known", "Dollars is not known", "Center is not known", "too short")) {
                assertTrue(eaveside.said().contains(told), "asked again at once: " + told);
            }
            Path console = data.resolve("log/console.log");
            String before = Files.readString(console);
            assertFalse(before.isBlank(), "the server's own start is there");
            a_fault_is_told_by_its_number_and_nothing_secret(eaveside, data);
            Process one = eaveside.begin("recover", "--username", "typed");
            Process other = eaveside.begin("recover", "--username", "typed");
            assertEquals(List.of(0, 0), List.of(one.waitFor(), other.waitFor()), "one after the other");
            assertEquals(0, eaveside.run("verify"), "the books hold");
            assertTrue(Files.readString(console).startsWith(before), "what the server said is still there");
        }
    }

    /** The database loses a table, which no input can do: the page has a number, and the log has it with what happened. */
    private static void a_fault_is_told_by_its_number_and_nothing_secret(Launched eaveside, Path data)
            throws Exception {
        String password = "several words that are typed";
        CookieManager cookies = new CookieManager();
        HttpClient owner = HttpClient.newBuilder().cookieHandler(cookies).build();
        String origin = eaveside.at("").toString().replaceAll("/$", "");
        var signedIn = owner.send(
                HttpRequest.newBuilder(eaveside.at("sign-in"))
                        .header("Content-Type", "application/x-www-form-urlencoded")
                        .header("Origin", origin)
                        .POST(HttpRequest.BodyPublishers.ofString(
                                "username=typed&password=" + password.replace(" ", "%20")))
                        .build(),
                HttpResponse.BodyHandlers.ofString());
        assertEquals(303, signedIn.statusCode());
        String port =
                Files.readAllLines(data.resolve("postgres/postmaster.pid")).get(3);
        String secret = Files.readString(data.resolve("secrets/eaveside_owner")).strip();
        try (var database = DriverManager.getConnection(
                        "jdbc:postgresql://127.0.0.1:" + port + "/eaveside", "eaveside_owner", secret);
                var statement = database.createStatement()) {
            statement.execute("alter table vehicle rename to vehicle_away");
            for (String accepted : List.of("text/html", "*/*")) {
                var fault = owner.send(
                        HttpRequest.newBuilder(eaveside.at("vehicles"))
                                .header("Accept", accepted)
                                .build(),
                        HttpResponse.BodyHandlers.ofString());
                assertEquals(500, fault.statusCode());
                assertFalse(
                        fault.body().matches("(?s).*(vehicle_away|relation .vehicle|Exception|at eaveside).*"),
                        fault.body());
                assertEquals(List.of("nosniff"), fault.headers().allValues("X-Content-Type-Options"), fault.body());
                Matcher number = Pattern.compile("[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[0-9a-f]{4}-[0-9a-f]{12}")
                        .matcher(fault.body());
                String log = Files.readString(data.resolve("log/server.0.log"));
                List<String> numbers =
                        number.results().map(found -> "Fault " + found.group()).toList();
                assertFalse(numbers.isEmpty(), fault.body());
                // The same again within a minute is counted, not told.
                assertTrue(
                        numbers.stream().anyMatch(log::contains) || !accepted.equals("text/html"),
                        "the log has none of " + numbers);
            }
            statement.execute("alter table vehicle_away rename to vehicle");
        }
        for (String line : Files.readAllLines(data.resolve("log/server.0.log"))) {
            assertTrue(
                    line.matches("\\d{4}-\\d\\d-\\d\\dT[\\d:.]+[+-]\\d\\d:\\d\\d [A-Z]+ .*|    \\| .*"),
                    "a time with its offset, or what was thrown: " + line);
        }
        List<String> secrets = new ArrayList<>(List.of(password, secret));
        cookies.getCookieStore().getCookies().forEach(cookie -> secrets.add(cookie.getValue()));
        assertEquals(4, secrets.size());
        try (var logs = Files.list(data.resolve("log"))) {
            for (Path log : logs.toList()) {
                String said = Files.readString(log);
                assertTrue(secrets.stream().noneMatch(said::contains), log + " tells a secret");
            }
        }
    }
}
