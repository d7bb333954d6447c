package eaveside.web.entrance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.APIResponse;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.Cookie;
import com.microsoft.playwright.options.FormData;
import com.microsoft.playwright.options.RequestOptions;
import com.microsoft.playwright.options.SameSiteAttribute;
import eaveside.web.testing.Browser;
import eaveside.web.testing.RawHttp;
import eaveside.web.testing.Server;
import eaveside.web.testing.TlsProxy;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.sql.SQLException;
import java.time.Duration;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** People come through a TLS proxy: nginx, as deploy/proxy tells how to set it up. */
class ProxyBrowserIT {
    private static TlsProxy proxy;
    private static Browser browser;

    @BeforeAll
    static void start() {
        proxy = TlsProxy.before(Server.shared().base());
        browser = new Browser();
    }

    @AfterAll
    static void stop() {
        browser.close();
        proxy.close();
    }

    private static String at(String path) {
        return proxy.base().resolve(path).toString();
    }

    @Test
    void people_sign_in_work_and_sign_out_through_the_proxy() {
        try (BrowserContext context = browser.trusting()) {
            Page page = context.newPage();
            page.navigate(at("customers?q=a"));
            assertTrue(page.url().startsWith(at("sign-in?to=")), page.url());
            page.fill("#username", Server.OWNER);
            page.fill("#password", Server.OWNER_PASSWORD);
            page.click("main button");
            page.waitForURL(at("customers?q=a"));
            List<Cookie> cookies = context.cookies();
            Cookie session = cookies.stream()
                    .filter(cookie -> cookie.name.equals("__Host-eaveside"))
                    .findFirst()
                    .orElseThrow();
            assertTrue(session.secure && session.httpOnly, "never without TLS, never for scripts");
            assertEquals(SameSiteAttribute.LAX, session.sameSite);
            assertTrue(cookies.stream().allMatch(cookie -> cookie.secure && cookie.name.startsWith("__Host-")));

            page.navigate(at("vehicles/new"));
            page.fill("[name=name]", "Behind the proxy");
            page.click("main form button");
            page.waitForURL(url -> url.contains("done="));
            page.navigate(at("vehicles"));
            assertTrue(page.content().contains("Behind the proxy"), "forms are taken");

            page.navigate(at("account"));
            assertTrue(page.locator("tr", new Page.LocatorOptions().setHasText("This browser"))
                    .textContent()
                    .contains("127.0.0.1"));
            APIResponse answer = context.request().get(at("worklist"));
            assertEquals("max-age=31536000; includeSubDomains", answer.headers().get("strict-transport-security"));
            page.locator("form[action='/sign-out'] button").first().click();
            page.waitForURL(at("sign-in"));
            assertTrue(context.cookies().stream().noneMatch(cookie -> cookie.name.equals("__Host-eaveside")));
        }
    }

    /** A form of another site that a browser sends with our cookie. */
    @Test
    void what_comes_from_elsewhere_is_refused_behind_the_proxy_too() {
        try (BrowserContext context = browser.trusting()) {
            for (String origin : List.of(
                    "https://other.example.com",
                    "http://localhost:" + proxy.base().getPort())) {
                APIResponse answer = context.request()
                        .post(
                                at("sign-in"),
                                RequestOptions.create()
                                        .setHeader("Origin", origin)
                                        .setForm(FormData.create().set("username", "x")));
                assertEquals(403, answer.status(), origin);
            }
        }
    }

    /** nginx writes at the end whom it heard from: what the caller says before that is nobody's word. */
    @Test
    void only_the_proxy_is_believed() {
        try (BrowserContext context = browser.trusting()) {
            RequestOptions attempt = RequestOptions.create()
                    .setHeader("Origin", at("").replaceAll("/$", ""))
                    .setHeader("X-Forwarded-For", "203.0.113.9")
                    .setForm(FormData.create()
                            .set("username", "through.the.proxy")
                            .set("password", "x"));
            assertEquals(401, context.request().post(at("sign-in"), attempt).status());
            assertEquals("127.0.0.1", addressOfLastAttempt());
        }
        String head = " HTTP/1.1\r\nHost: a\r\nConnection: close\r\nX-Forwarded-For: 203.0.113.10\r\n"
                + "X-Forwarded-Proto: https\r\n";
        URI server = Server.shared().base();
        assertFalse(RawHttp.ask(server, "GET /sign-in" + head + "\r\n").contains("Strict-Transport-Security"));
        assertTrue(RawHttp.from(Server.PROXY, server)
                .send("GET /sign-in" + head + "\r\n")
                .answer(Duration.ofSeconds(10))
                .contains("Strict-Transport-Security"));
        String form = "POST /sign-in" + head + "Origin: http://a\r\nContent-Type: application/x-www-form-urlencoded\r\n"
                + "Content-Length: 21\r\n\r\nusername=x&password=y";
        assertTrue(RawHttp.ask(server, form).startsWith("HTTP/1.1 401 "));
        assertEquals("127.0.0.1", addressOfLastAttempt());
        RawHttp.from(Server.PROXY, server)
                .send(form.replace("Origin: http:", "Origin: https:"))
                .answer(Duration.ofSeconds(10));
        assertEquals("203.0.113.10", addressOfLastAttempt());
        // And the host that a form says it comes from, which is another than the server's own here.
        String other = form.replace("Origin: http://a", "X-Forwarded-Host: b\r\nOrigin: https://b")
                .replace("username=x", "username=z");
        assertTrue(RawHttp.ask(server, other).startsWith("HTTP/1.1 403 "));
        String believed = RawHttp.from(Server.PROXY, server).send(other).answer(Duration.ofSeconds(10));
        assertTrue(believed.startsWith("HTTP/1.1 401 "), believed);
    }

    /**
     * What a client of an older version says first; RFC 8446, appendix D, has where each of them says so. The proxy's answer is a
     * record of type 21, an alert, or one of type 22, a handshake.
     */
    @Test
    void the_proxy_speaks_tls_of_today_alone() throws IOException {
        assertEquals(22, answerTo(3), "TLS 1.2, so that what follows is refused for its version alone");
        for (int version : List.of(2, 1, 0)) {
            assertEquals(21, answerTo(version), "TLS 1." + (version - 1));
        }
    }

    private static int answerTo(int version) throws IOException {
        HexFormat hex = HexFormat.of();
        String extensions = "000a00040002" + "0017" // the curve secp256r1
                + "000b00020100" // points as they are
                + "000d000400020403"; // signed with ECDSA and SHA-256
        String said = "030" + version + "00".repeat(32) + "00" // random, and no session to go on with
                + "0004" + "c02bc009" // suites for ECDSA, of 1.2 and from before
                + "0100" // not compressed
                + hex.toHexDigits((short) (extensions.length() / 2)) + extensions;
        String hello = "0100" + hex.toHexDigits((short) (said.length() / 2)) + said;
        String record = "160301" + hex.toHexDigits((short) (hello.length() / 2)) + hello;
        try (var socket =
                new Socket(InetAddress.getLoopbackAddress(), proxy.base().getPort())) {
            socket.setSoTimeout(10_000);
            socket.getOutputStream().write(hex.parseHex(record));
            return socket.getInputStream().read();
        }
    }

    /** The server listens once it can answer: until then the proxy does. */
    @Test
    void the_proxy_tells_people_to_try_again_while_the_server_starts() {
        try (TlsProxy alone = TlsProxy.before(URI.create("http://127.0.0.1:" + Server.freePort() + "/"));
                BrowserContext context = browser.trusting()) {
            APIResponse answer =
                    context.request().get(alone.base().resolve("sign-in").toString());
            assertEquals(503, answer.status());
            assertEquals("5", answer.headers().get("retry-after"));
            assertTrue(answer.text().contains("Try again in a few seconds"), answer.text());
            APIResponse script =
                    context.request().get(alone.base().resolve("api/customers").toString());
            assertEquals(503, script.status());
            assertEquals("5", script.headers().get("retry-after"));
            assertEquals("application/problem+json", script.headers().get("content-type"));
        }
    }

    @Test
    void the_proxy_says_that_something_is_too_large_for_people_and_for_scripts() throws Exception {
        try (var client = proxy.client()) {
            for (var told : Map.of("sign-in", "<h1>Too large.</h1>", "api/customers/import", "urn:eaveside:too-large")
                    .entrySet()) {
                var answer = client.send(
                        HttpRequest.newBuilder(proxy.base().resolve(told.getKey()))
                                .header("Content-Type", "text/csv")
                                .POST(HttpRequest.BodyPublishers.ofByteArray(new byte[14_000_000]))
                                .build(),
                        HttpResponse.BodyHandlers.ofString());
                assertEquals(413, answer.statusCode());
                assertTrue(answer.body().contains(told.getValue()), answer.body());
                assertEquals(List.of("nosniff"), answer.headers().allValues("X-Content-Type-Options"));
            }
        }
    }

    /** RFC 6797, 7.1: one of them, on whatever comes through TLS, also on what was refused before anybody looked at it. */
    @Test
    void every_answer_says_that_it_comes_through_tls_alone() throws Exception {
        try (var client = proxy.client()) {
            for (String path : List.of(
                    "sign-in",
                    "worklist",
                    "api/customers",
                    "nothing-here",
                    "customers/x:y",
                    "a%2eb",
                    "%zz",
                    "health",
                    "sign-in?q=" + "a".repeat(9_000))) {
                var answer = client.send(
                        HttpRequest.newBuilder(URI.create(proxy.base() + path.replace("%zz", "%25zz")))
                                .build(),
                        HttpResponse.BodyHandlers.ofString());
                assertEquals(
                        List.of("max-age=31536000; includeSubDomains"),
                        answer.headers().allValues("Strict-Transport-Security"),
                        path + ": " + answer.statusCode());
            }
        }
    }

    /** A script that does not know how much it will send: the server answers 411 to that, the proxy finds it out. */
    @Test
    void the_proxy_tells_the_length_of_a_body_that_comes_without() throws Exception {
        try (var script = proxy.client()) {
            byte[] form = "username=of.no.told.length&password=x".getBytes(StandardCharsets.US_ASCII);
            var answer = script.send(
                    HttpRequest.newBuilder(proxy.base().resolve("sign-in"))
                            .header("Origin", at("").replaceAll("/$", ""))
                            .header("Content-Type", "application/x-www-form-urlencoded")
                            .POST(HttpRequest.BodyPublishers.ofInputStream(() -> new ByteArrayInputStream(form)))
                            .build(),
                    HttpResponse.BodyHandlers.ofString());
            assertEquals(401, answer.statusCode(), answer.body());
            assertTrue(answer.body().contains("of.no.told.length"), "the form has arrived");
        }
    }

    private static String addressOfLastAttempt() {
        try (var connection = Server.shared().database().asOwner().getConnection();
                var statement = connection.createStatement();
                var row = statement.executeQuery("select address from audit_event where action = 'sign-in'"
                        + " and outcome = 'REFUSED' order by at desc, id desc limit 1")) {
            row.next();
            return row.getString(1);
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }
}
