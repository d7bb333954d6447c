package eaveside.web.security;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.testing.RawHttp;
import eaveside.web.testing.Server;
import eaveside.web.testing.Visitor;
import java.net.URI;
import java.time.Duration;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

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
        var form = Visitor.owner().form("settings/users/new", "/settings/users");
        form.put("name", "Guessed At");
        form.put("username", "guessed.at");
        form.put("role", "OFFICE");
        String password = Visitor.secret(Visitor.owner().post("settings/users", form));
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
