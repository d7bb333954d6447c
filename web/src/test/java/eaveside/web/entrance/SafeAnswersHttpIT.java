package eaveside.web.entrance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.security.Addresses;
import eaveside.web.testing.LooksAtDemo;
import eaveside.web.testing.RawHttp;
import eaveside.web.testing.Server;
import eaveside.web.testing.Visitor;
import java.net.CookieManager;
import java.net.HttpCookie;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What every answer of every address tells the browser, be it a page, a file, a paper, data or a refusal. */
@LooksAtDemo
class SafeAnswersHttpIT {
    private static final Map<String, String> TOLD = Map.of(
            "X-Content-Type-Options", "nosniff",
            "Referrer-Policy", "same-origin",
            "Cross-Origin-Opener-Policy", "same-origin",
            "Cross-Origin-Resource-Policy", "same-origin");

    private static Server demo;
    private static HttpClient edda;
    private static List<String> secrets;

    @BeforeAll
    static void signIn() {
        demo = Server.demo();
        edda = demo.signedIn("edda", demo.passwordOf("edda"));
        secrets = ((CookieManager) edda.cookieHandler().orElseThrow())
                .getCookieStore().getCookies().stream()
                        .map(HttpCookie::getValue)
                        .toList();
        assertFalse(secrets.isEmpty());
    }

    @Test
    void every_answer_of_every_address_is_safe_to_show() throws SQLException {
        List<String> addresses = new ArrayList<>();
        Addresses.all(demo.database().asOwner()).values().forEach(addresses::addAll);
        assertTrue(addresses.size() > 120, addresses.size() + " addresses");
        addresses.addAll(List.of("/nothing-here", "/api/nothing-here", "/sign-in", "/customers/no-id"));
        List<String> wrong = new ArrayList<>();
        HttpClient stranger = demo.stranger();
        for (String address : addresses) {
            wrong.addAll(faults(address, "*/*", edda));
            wrong.addAll(faults(address, "text/html", stranger));
            if (address.matches(".*\\.(pdf|csv)(\\?.*)?")) {
                wrong.addAll(faults(address, "text/html", edda));
            }
        }
        String refused = RawHttp.ask(demo.base(), "GET /a%zz HTTP/1.1\r\nHost: a\r\n\r\n");
        assertTrue(refused.startsWith("HTTP/1.1 400 "), refused);
        TOLD.forEach((name, value) -> assertTrue(refused.contains(name + ": " + value + "\r\n"), name));
        assertTrue(refused.contains("frame-ancestors 'none'") && refused.contains("no-store"), refused);
        assertEquals(List.of(), wrong);
    }

    /** Whatever can be asked for without a form: a link, a picture of another page, what a browser fetches in advance. */
    @Test
    void reading_changes_nothing() throws SQLException {
        List<String> addresses = new ArrayList<>();
        Addresses.all(demo.database().asOwner()).values().forEach(addresses::addAll);
        Map<String, String> before = kept();
        addresses.forEach(address -> demo.get(edda, address.substring(1)));
        assertEquals(before, kept());
        assertTrue(before.size() > 60, before.keySet() + "");
    }

    /** What each table holds, but for what signing in leaves, which tests beside this one do. */
    private static Map<String, String> kept() throws SQLException {
        Map<String, String> kept = new TreeMap<>();
        try (var connection = demo.database().asOwner().getConnection();
                var statement = connection.createStatement()) {
            List<String> tables = new ArrayList<>();
            try (var found =
                    statement.executeQuery("select tablename from pg_tables where schemaname = current_schema()"
                            + " and tablename not in ('user_session', 'known_browser', 'sign_in_failure')")) {
                while (found.next()) {
                    tables.add(found.getString(1));
                }
            }
            for (String table : tables) {
                try (var sum = statement.executeQuery(
                        "select count(*) || ' rows ' || coalesce(sum(hashtext(t::text)), 0) from " + table + " t"
                                + (table.equals("audit_event") ? " where t.action not like 'sign-%'" : ""))) {
                    sum.next();
                    kept.put(table, sum.getString(1));
                }
            }
        }
        return kept;
    }

    private List<String> faults(String address, String accepted, HttpClient client) {
        HttpResponse<String> answer = demo.send(
                client,
                HttpRequest.newBuilder(demo.at(address.substring(1)))
                        .header("Accept", accepted)
                        .header("Origin", "https://other.example.com")
                        .build());
        List<String> faults = new ArrayList<>();
        TOLD.forEach((name, value) -> {
            if (!answer.headers().allValues(name).equals(List.of(value))) {
                faults.add(address + ": " + name + " is " + answer.headers().allValues(name));
            }
        });
        String policy = answer.headers().firstValue("Content-Security-Policy").orElse("");
        if (!policy.startsWith("default-src 'none'; script-src 'self'; style-src 'self';")
                || !policy.contains("base-uri 'none'")
                || !policy.contains("connect-src 'self'")
                || !policy.contains("frame-ancestors 'none'")) {
            faults.add(address + ": the policy is " + policy);
        }
        if (!answer.headers().firstValue("Cache-Control").orElse("").contains("no-store")) {
            faults.add(address + ": may be kept, " + answer.headers().allValues("Cache-Control"));
        }
        if (answer.headers().map().keySet().stream().anyMatch(name -> name.startsWith("access-control-"))) {
            faults.add(address + ": others may read it");
        }
        String type = answer.headers().firstValue("Content-Type").orElse("");
        if (answer.statusCode() == 200
                && type.startsWith("text/html")
                && answer.body().contains("<html")
                && !address.equals("/sign-in")
                && !answer.body().contains("action=\"/sign-out\"")) {
            faults.add(address + ": nobody can sign out there");
        }
        if (secrets.stream().anyMatch(answer.body()::contains)) {
            faults.add(address + ": tells the secret of a session");
        }
        String name = answer.headers().firstValue("Content-Disposition").orElse("");
        if (type.matches("(text/csv|application/pdf).*")
                && !name.matches("(attachment|inline); filename=\"[a-z0-9-]+\\.(csv|pdf)\"")) {
            faults.add(address + ": named " + name);
        }
        boolean text = type.startsWith("text/") || type.contains("json") || type.contains("xml");
        if (type.startsWith("text/html") && answer.body().contains("<h1>common.")) {
            faults.add(address + ": shows the name of a text");
        }
        if (!answer.body().isEmpty() && (type.isEmpty() || (type.startsWith("text/") && !type.contains("UTF-8")))) {
            faults.add(address + ": of type " + type);
        }
        if (text
                && answer.body()
                        .matches("(?s).*(\\tat [a-z]+\\.|Exception|org\\.hibernate|(?<![</])select \\w+ .* from ).*")) {
            faults.add(address + ": tells of the program's inside");
        }
        return faults;
    }

    @ParameterizedTest
    @ValueSource(strings = {"TRACE", "TRACK", "CONNECT", "PATCH", "DEBUG", "PROPFIND", "get"})
    void refusesMethodsThatItHasNoUseFor(String method) {
        String answer = RawHttp.ask(demo.base(), method + " /sign-in HTTP/1.1\r\nHost: a\r\nCookie: seen=here\r\n\r\n");
        assertTrue(answer.matches("(?s)HTTP/1.1 (400|405|501) .*"), answer);
        assertFalse(answer.contains("seen=here"), answer);
    }

    @Test
    void asksForPasswordsSoThatTheyAreMaskedAndProgramsThatKeepThemCanFillThemIn() {
        for (HttpClient client : List.of(edda, demo.stranger())) {
            String address = client == edda ? "account" : "sign-in";
            var fields = Visitor.page(demo.get(client, address)).select("input[autocomplete*=password]");
            assertFalse(fields.isEmpty(), address);
            for (var field : fields) {
                assertEquals("password", field.attr("type"), address);
                assertTrue(List.of("current-password", "new-password").contains(field.attr("autocomplete")), address);
                assertFalse(field.hasAttr("onpaste") || field.hasAttr("maxlength"), address);
            }
        }
    }

    @Test
    void keepsCookiesFromScriptsAndFromOtherSites() {
        String form = "username=linus&password=" + demo.passwordOf("linus");
        String answer = RawHttp.ask(
                demo.base(),
                "POST /sign-in HTTP/1.1\r\nHost: " + demo.base().getAuthority() + "\r\nOrigin: http://"
                        + demo.base().getAuthority()
                        + "\r\nContent-Type: application/x-www-form-urlencoded\r\nContent-Length: " + form.length()
                        + "\r\nConnection: close\r\n\r\n" + form);
        List<String> cookies = answer.lines()
                .filter(line -> line.toLowerCase(Locale.ROOT).startsWith("set-cookie:"))
                .toList();
        assertEquals(2, cookies.size(), answer);
        for (String cookie : cookies) {
            assertTrue(cookie.contains("; HttpOnly") && cookie.contains("; SameSite=Lax"), cookie);
        }
    }

    @Test
    void showsNoFilesOfItsOwn() {
        for (String path : List.of(
                "WEB-INF/web.xml", "META-INF/MANIFEST.MF", ".git/config", "assets/", "WEB-INF/classes/", "pom.xml")) {
            HttpResponse<String> answer =
                    demo.send(edda, HttpRequest.newBuilder(demo.at(path)).build());
            assertEquals(404, answer.statusCode(), path);
        }
    }
}
