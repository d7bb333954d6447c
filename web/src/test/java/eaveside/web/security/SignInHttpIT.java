package eaveside.web.security;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.testing.RawHttp;
import eaveside.web.testing.Server;
import eaveside.web.testing.Visitor;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpRequest;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Signing in on the real server. Guesses come through the proxy from an address of their own, which other tests do not share. */
class SignInHttpIT {
    private static final URI SERVER = Server.shared().base();
    private static final Pattern BROWSER = Pattern.compile("Set-Cookie: (eaveside-browser=[^;]+)");

    private static String signIn(String caller, String cookie, String form) {
        String body = form.replace(" ", "+");
        return RawHttp.from(Server.PROXY, SERVER)
                .send("POST /sign-in HTTP/1.1\r\nHost: a\r\nOrigin: http://a\r\nConnection: close\r\nX-Forwarded-For: "
                        + caller
                        + "\r\n" + cookie + "Content-Type: application/x-www-form-urlencoded\r\nContent-Length: "
                        + body.length() + "\r\n\r\n" + body)
                .answer(Duration.ofSeconds(30));
    }

    @Test
    void whoever_guesses_waits_and_a_browser_that_has_signed_in_does_not() {
        String password = Visitor.owner().add("Guessed At", "guessed.at", "OFFICE");
        String right = "username=guessed.at&password=" + password;
        String first = signIn("203.0.113.50", "", right);
        assertTrue(first.startsWith("HTTP/1.1 303 "), first);
        Matcher cookie = BROWSER.matcher(first);
        assertTrue(cookie.find(), first);
        String answer = "";
        for (int i = 0; i < 12 && !answer.startsWith("HTTP/1.1 429 "); i++) {
            answer = signIn("203.0.113.51", "", "username=guessed.at&password=guess");
        }
        assertTrue(answer.startsWith("HTTP/1.1 429 "), answer);
        Matcher wait = Pattern.compile("Retry-After: (\\d+)").matcher(answer);
        assertTrue(wait.find() && Integer.parseInt(wait.group(1)) >= 2, answer);
        assertTrue(signIn("203.0.113.50", "", right).startsWith("HTTP/1.1 429 "), "a browser that nobody knows waits");
        String known = signIn("203.0.113.51", "Cookie: " + cookie.group(1) + "\r\n", right);
        assertTrue(known.startsWith("HTTP/1.1 303 "), known);
    }

    @Test
    void another_sign_in_ends_the_session_before_it() {
        Server server = Server.shared();
        String first = signedIn("");
        assertEquals(200, worklist(server, first));
        String second = signedIn("Cookie: " + first + "\r\n");
        assertEquals(200, worklist(server, second));
        assertEquals(303, worklist(server, first), "what the browser had before is worth nothing");
    }

    @Test
    void signing_out_ends_the_session_on_the_server() {
        Server server = Server.shared();
        String cookie = signedIn("");
        assertEquals(200, worklist(server, cookie));
        var out = server.send(
                server.stranger(),
                HttpRequest.newBuilder(server.at("sign-out"))
                        .header("Sec-Fetch-Site", "same-origin")
                        .header("Cookie", cookie)
                        .header("Content-Type", "application/x-www-form-urlencoded")
                        .POST(HttpRequest.BodyPublishers.noBody())
                        .build());
        assertEquals(303, out.statusCode());
        assertEquals(303, worklist(server, cookie), "whoever has copied it comes in no more");
    }

    @Test
    void an_address_lets_nobody_in() {
        Server server = Server.shared();
        String cookie = signedIn("");
        assertEquals(200, worklist(server, cookie));
        String secret = cookie.replace("eaveside=", "");
        for (String address :
                List.of("worklist?" + cookie, "worklist?jsessionid=" + secret, "worklist?eaveside&" + cookie)) {
            assertEquals(303, server.get(server.stranger(), address).statusCode(), address);
        }
        for (String name : List.of("JSESSIONID", "JSESSIONIDSSO", "EAVESIDE", "__Host-eaveside")) {
            assertEquals(303, worklist(server, name + "=" + secret), name);
        }
        String form = "username=in.the.body&password=y&" + cookie;
        assertTrue(signIn("203.0.113.61", "", form).startsWith("HTTP/1.1 401 "));
    }

    /** Read, and refused with the wrong password: shown again as text. */
    @ParameterizedTest
    @ValueSource(strings = {"/{x}", "/\"x", "/'><b>", "/%zz", "/\0", "//x", "/\ud800"})
    void what_the_address_leads_to_breaks_no_page(String to) {
        Server server = Server.shared();
        String encoded = URLEncoder.encode(to, StandardCharsets.UTF_8);
        var shown = server.get(server.stranger(), "sign-in?to=" + encoded);
        assertTrue(List.of(200, 400).contains(shown.statusCode()), to + ": " + shown.statusCode());
        assertFalse(shown.body().contains("<b>"), shown.body());
        String refused = signIn("203.0.113.62", "", "username=leads.nowhere&password=x&to=" + encoded);
        assertTrue(refused.matches("(?s)HTTP/1.1 (400|401|429) .*"), refused);
        assertFalse(refused.contains("<b>"), refused);
    }

    private static String signedIn(String cookie) {
        String answer =
                signIn("203.0.113.60", cookie, "username=" + Server.OWNER + "&password=" + Server.OWNER_PASSWORD);
        Matcher session = Pattern.compile("Set-Cookie: (eaveside=[^;]+)").matcher(answer);
        assertTrue(session.find(), answer);
        return session.group(1);
    }

    private static int worklist(Server server, String cookie) {
        return server.send(
                        server.stranger(),
                        HttpRequest.newBuilder(server.at("worklist"))
                                .header("Accept", "text/html")
                                .header("Cookie", cookie)
                                .build())
                .statusCode();
    }

    /** What somebody typed for half an hour while their session ended is not thrown away. */
    @Test
    void a_form_that_comes_too_late_is_kept_in_the_page_and_stored_once_it_is_sent_again() {
        String given = Visitor.owner().add("Late Sender", "late.sender", "OFFICE");
        Visitor late = Visitor.owner().choosing("late.sender", given);
        var form = late.form("customers/new", "/customers/save");
        form.put("name", "Kept & Typed \"Ltd\"");
        form.put("phone", "555-0131");
        form.put("email", "kept@example.com");
        form.put("street", "1 Ladder Lane");
        form.put("city", "Larkford");
        Visitor.value(
                "update user_session set ended_at = now() where ended_at is null and user_id = (select id from app_user where username ="
                        + " 'late.sender') returning 'ended'");
        var answer = late.post("customers/save", form);
        assertEquals(401, answer.statusCode());
        var kept = Visitor.form(answer, "/customers/save");
        assertEquals(form, kept);
        Visitor again = Visitor.signedIn("late.sender", Server.chosen(given));
        assertEquals(303, again.post("customers/save", kept).statusCode());
    }

    /** Signing in on another page stops half-way; the form waits for the rest of it. */
    @Test
    void a_form_of_somebody_half_signed_in_is_kept_too() {
        String given = Visitor.owner().add("Half Sender", "half.sender", "OFFICE");
        Visitor half = Visitor.signedIn("half.sender", given);
        Map<String, String> form = new LinkedHashMap<>(Visitor.office().form("customers/new", "/customers/save"));
        form.put("name", "Kept by Half");
        var answer = half.post("customers/save", form);
        assertEquals(401, answer.statusCode());
        assertEquals(form, Visitor.form(answer, "/customers/save"));
        assertEquals(
                "/account?to=/account%3Fdone=access.kept.next",
                Visitor.page(answer).select("ol a").attr("href"));
        half.post("account", Map.of("old", given, "wanted", "larks over the eaves", "again", "larks over the eaves"));
        assertEquals(303, half.post("customers/save", form).statusCode());
        assertEquals("1", Visitor.value("select count(*) from customer where name = 'Kept by Half'"));
    }

    /** Passwords and files are kept nowhere: people are told so in a page, with the way on. */
    @Test
    void what_is_kept_nowhere_is_told_to_be_lost() {
        Server server = Server.shared();
        for (String path : List.of("account", "settings/users", "sign-in/second", "customers/import")) {
            var request = HttpRequest.newBuilder(server.at(path))
                    .header("Accept", "text/html,*/*;q=0.8")
                    .header("Sec-Fetch-Site", "same-origin")
                    .header("Referer", server.at("settings/users/new?a=b").toString())
                    .header(
                            "Content-Type",
                            path.endsWith("import")
                                    ? "multipart/form-data; boundary=b"
                                    : "application/x-www-form-urlencoded")
                    .POST(HttpRequest.BodyPublishers.ofString(
                            path.endsWith("import")
                                    ? "--b\r\nContent-Disposition: form-data; name=\"file\"; filename=\"a.csv\"\r\n\r\nsecret\r\n--b--\r\n"
                                    : "wanted=secret"))
                    .build();
            var answer = server.send(server.stranger(), request);
            assertEquals(401, answer.statusCode(), path);
            var page = Visitor.page(answer);
            assertEquals("Sign in and do it again", page.select("main h1").text(), path + ": " + answer.body());
            assertFalse(answer.body().contains("secret"), path);
            assertEquals(
                    "/sign-in?to=%2Fsettings%2Fusers%2Fnew%3Fa%3Db",
                    page.select("main a.button").attr("href"));
        }
    }

    @Test
    void what_another_site_sends_is_kept_nowhere() {
        Server server = Server.shared();
        for (String site : List.of("cross-site", "same-site")) {
            var answer = server.send(
                    server.stranger(),
                    HttpRequest.newBuilder(server.at("customers/save"))
                            .header("Accept", "text/html")
                            .header("Sec-Fetch-Site", site)
                            .header("Content-Type", "application/x-www-form-urlencoded")
                            .POST(HttpRequest.BodyPublishers.ofString("name=planted"))
                            .build());
            assertEquals(401, answer.statusCode());
            assertFalse(answer.body().contains("planted"), answer.body());
        }
    }

    /** Where the form says to go afterwards: a path of ours, or the start page. */
    @ParameterizedTest
    @CsvSource({
        "/quotes, /quotes",
        "/quotes?q=a%20b&after=x, /quotes?q=a%20b&after=x",
        "/{x}, /",
        "/\"x, /",
        "/a b, /",
        "//other.example.com, /",
        "/\\other.example.com, /",
        "https://other.example.com, /",
        "javascript:alert(1), /",
        "/%zz, /",
        "/\u00fc, /",
        "quotes, /",
    })
    void it_leads_to_a_path_of_ours(String to, String leads) {
        String form = "username=" + Server.OWNER + "&password=" + Server.OWNER_PASSWORD + "&to="
                + java.net.URLEncoder.encode(to, java.nio.charset.StandardCharsets.UTF_8);
        String answer = signIn("203.0.113.52", "", form);
        Matcher location = Pattern.compile("Location: (.*)\r\n").matcher(answer);
        assertTrue(location.find(), answer);
        assertEquals(leads, location.group(1));
    }
}
