package eaveside.web.security;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.bastiaanjansen.otp.HMACAlgorithm;
import com.bastiaanjansen.otp.TOTPGenerator;
import com.google.gson.JsonObject;
import com.microsoft.playwright.APIResponse;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.CDPSession;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Route;
import eaveside.web.testing.Browser;
import eaveside.web.testing.Server;
import eaveside.web.testing.Visitor;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Passkeys in a real browser, whose authenticator is Chromium's virtual one (Web Authentication Level 3, section 11). */
class PasskeysBrowserIT {
    private static Browser browser;

    @BeforeAll
    static void start() {
        browser = new Browser();
    }

    @AfterAll
    static void stop() {
        browser.close();
    }

    /** By name: passkeys are made for names, and a browser takes this one for safe. */
    private static String at(String path) {
        return Server.shared().at(path).toString().replace("127.0.0.1", "localhost");
    }

    private static String withAuthenticator(BrowserContext context, Page page) {
        CDPSession session = context.newCDPSession(page);
        JsonObject none = new JsonObject();
        session.send("WebAuthn.enable", none);
        JsonObject options = new JsonObject();
        options.addProperty("protocol", "ctap2");
        options.addProperty("transport", "internal");
        options.addProperty("hasResidentKey", true);
        options.addProperty("hasUserVerification", true);
        options.addProperty("isUserVerified", true);
        options.addProperty("automaticPresenceSimulation", true);
        JsonObject asked = new JsonObject();
        asked.add("options", options);
        return session.send("WebAuthn.addVirtualAuthenticator", asked)
                .get("authenticatorId")
                .getAsString();
    }

    private static String hire(String username, String name) {
        var form = Visitor.owner().form("settings/users/new", "/settings/users");
        form.put("name", name);
        form.put("username", username);
        form.put("role", "OFFICE");
        String given = Visitor.secret(Visitor.owner().post("settings/users", form));
        Visitor.owner().choosing(username, given);
        return Server.chosen(given);
    }

    private static void signIn(Page page, String username, String password) {
        page.navigate(at("sign-in"));
        page.fill("#username", username);
        page.fill("#password", password);
        page.click("form[action='/sign-in'] button");
    }

    @Test
    void a_passkey_is_added_signs_in_alone_and_stands_beside_the_password() {
        String password = hire("passkey.user", "Passkey User");
        try (BrowserContext context = browser.desk()) {
            Page page = context.newPage();
            withAuthenticator(context, page);
            signIn(page, "passkey.user", password);
            page.waitForURL(at("worklist"));
            page.navigate(at("account"));
            assertEquals(List.of(), Browser.faults(page));
            page.fill("form[data-passkey=make] [name=label]", "Office laptop");
            page.fill("#password-passkey", "not the password");
            page.click("form[data-passkey=make] button");
            page.locator("form[data-passkey=make] [data-flaw]:has-text('wrong')")
                    .waitFor();
            page.fill("#password-passkey", password);
            page.click("form[data-passkey=make] button");
            page.waitForURL(url -> url.contains("settings.passkeys.added"));
            assertTrue(page.textContent("main").contains("Office laptop"));
            assertEquals(List.of(), Browser.faults(page));
            page.fill("form[data-passkey=make] [name=label]", "The same once more");
            page.fill("#password-passkey", password);
            page.click("form[data-passkey=make] button");
            page.locator("form[data-passkey=make] [data-flaw]:has-text('already')")
                    .waitFor();
            page.navigate(at("worklist"));
            assertEquals(at("worklist"), page.url(), "the session goes on: the passkey was shown just now");

            page.click("form[action='/sign-out'] button");
            page.waitForURL(at("sign-in"));
            page.click("form[data-passkey=get] button");
            page.waitForURL(at("worklist"));
            page.click("form[action='/sign-out'] button");
            page.waitForURL(at("sign-in"));

            signIn(page, "passkey.user", password);
            page.waitForURL(url -> url.contains("/sign-in/second"));
            assertEquals(List.of(), Browser.faults(page));
            page.navigate(at("customers"));
            assertTrue(page.url().contains("/sign-in/second?to="), "half signed in, nothing is open: " + page.url());
            page.navigate(at("account"));
            assertTrue(page.url().contains("/sign-in/second?to="), "least of all what makes ways in: " + page.url());
            page.navigate(at("customers?q=a"));
            page.click("form[data-passkey=get] button");
            page.waitForURL(at("customers?q=a"));

            page.navigate(at("account"));
            String remove = "form[action*='/remove']:has-text('Office laptop')";
            page.fill(remove + " [name=password]", password);
            page.click(remove + " button");
            page.waitForURL(url -> url.contains("settings.passkeys.removed"));
            page.click("form[action='/sign-out'] button");
            page.waitForURL(at("sign-in"));
            page.click("form[data-passkey=get] button");
            page.waitForURL(url -> url.endsWith("/sign-in/passkey"));
            assertTrue(page.textContent("[role=alert]").contains("not good here"), "what was removed lets nobody in");
        }
    }

    /** The host is the same, and a browser shows it there: what runs at that port passes on what it was shown, and says its own host. */
    @Test
    void a_passkey_that_is_shown_at_another_port_lets_nobody_in() {
        String password = hire("passkey.port", "Passkey Port");
        String elsewhere = "http://localhost:" + Server.freePort() + "/";
        try (BrowserContext context = browser.desk()) {
            Page page = context.newPage();
            withAuthenticator(context, page);
            signIn(page, "passkey.port", password);
            page.waitForURL(at("worklist"));
            page.navigate(at("account"));
            page.fill("form[data-passkey=make] [name=label]", "Phone");
            page.fill("#password-passkey", password);
            page.click("form[data-passkey=make] button");
            page.waitForURL(url -> url.contains("settings.passkeys.added"));
            context.clearCookies();
            List<String> passedOn = new ArrayList<>();
            context.route(elsewhere + "**", route -> {
                Map<String, String> headers = new HashMap<>(route.request().allHeaders());
                headers.put("host", URI.create(elsewhere).getAuthority());
                APIResponse answer = route.fetch(new Route.FetchOptions()
                        .setUrl(at(route.request().url().substring(elsewhere.length())))
                        .setHeaders(headers)
                        .setMaxRedirects(0));
                passedOn.add(answer.status() + " " + route.request().url().substring(elsewhere.length()));
                route.fulfill(new Route.FulfillOptions().setResponse(answer));
            });
            page.navigate(elsewhere + "sign-in");
            page.click("form[data-passkey=get] button");
            page.waitForURL(url -> url.endsWith("/sign-in/passkey"));
            assertTrue(page.textContent("[role=alert]").contains("not good here"), page.textContent("main"));
            assertTrue(passedOn.contains("422 sign-in/passkey"), passedOn.toString());
            page.navigate(at("sign-in"));
            page.click("form[data-passkey=get] button");
            page.waitForURL(at("worklist"));
        }
    }

    @Test
    void a_passkey_of_another_person_is_no_second_step() {
        String password = hire("passkey.owner", "Passkey Owner");
        String other = hire("passkey.thief", "Passkey Thief");
        try (BrowserContext context = browser.desk()) {
            Page page = context.newPage();
            withAuthenticator(context, page);
            for (String[] person : new String[][] {{"passkey.owner", password}, {"passkey.thief", other}}) {
                signIn(page, person[0], person[1]);
                page.waitForURL(at("worklist"));
                page.navigate(at("account"));
                page.fill("form[data-passkey=make] [name=label]", "Of " + person[0]);
                page.fill("#password-passkey", person[1]);
                page.click("form[data-passkey=make] button");
                page.waitForURL(url -> url.contains("settings.passkeys.added"));
                page.click("form[action='/sign-out'] button");
                page.waitForURL(at("sign-in"));
            }
            signIn(page, "passkey.owner", password);
            page.waitForURL(url -> url.contains("/sign-in/second"));
            // A question that was asked of nobody in particular, answered by whichever passkey the browser picks.
            page.evaluate("document.querySelector('form[data-passkey]').dataset.question = '/sign-in/passkey/begin'");
            page.click("form[data-passkey=get] button");
            page.waitForURL(url -> url.endsWith("/sign-in/second/passkey"));
            page.navigate(at("customers"));
            assertTrue(page.url().contains("/sign-in/second"), page.url());
        }
    }

    @Test
    void the_code_of_an_app_is_set_up_and_asked_for() {
        String password = hire("app.user", "App User");
        try (BrowserContext context = browser.phone()) {
            Page page = context.newPage();
            signIn(page, "app.user", password);
            page.waitForURL(at("worklist"));
            page.navigate(at("account"));
            assertEquals(List.of(), Browser.faults(page));
            page.fill("form[action='/account/app'] [name=password]", "not the password");
            page.click("form[action='/account/app'] button");
            page.click("main [role=alert] a:has-text('Current password is wrong')");
            assertEquals(List.of(), Browser.faults(page));
            assertEquals(
                    "true",
                    page.locator("form[action='/account/app'] input:focus").getAttribute("aria-invalid"));
            assertEquals(
                    1,
                    page.locator("[aria-invalid=true]").count(),
                    "of the forms that ask for it, the one that was sent");
            page.fill("form[action='/account/app'] [name=password]", password);
            page.click("form[action='/account/app'] button");
            page.waitForURL(at("account/app"));
            assertEquals(List.of(), Browser.faults(page));
            Browser.picture(page, Path.of("target/app-set-up.png"));
            assertTrue(page.locator("svg.qr path").getAttribute("d").length() > 1000);
            page.fill("[name=code]", "123456");
            page.click("main form button");
            page.waitForURL(url -> url.endsWith("/account/app/code"));
            assertFalse(page.textContent("main").contains("123456"));
            String secret = page.textContent("code").replace(" ", "");
            page.fill("[name=code]", code(secret));
            page.click("main form button");
            page.waitForURL(url -> url.contains("settings.app.set-up"));
            page.navigate(at("worklist"));
            assertEquals(at("worklist"), page.url());
            page.click("form[action='/sign-out'] button");
            page.waitForURL(at("sign-in"));
            signIn(page, "app.user", password);
            page.waitForURL(url -> url.contains("/sign-in/second"));
            assertEquals(List.of(), Browser.faults(page));
            Browser.picture(page, Path.of("target/second-step.png"));
            page.fill("#code", "000000");
            page.click("main form button");
            page.waitForSelector("[role=alert]");
            // The code at hand was taken when the app was set up: the next one is half a minute away.
            String used = code(secret);
            page.waitForTimeout(30_500);
            assertFalse(used.equals(code(secret)));
            List<String> half = sessions(context);
            page.fill("#code", code(secret));
            page.click("main form button");
            page.waitForURL(at("worklist"));
            assertEquals(1, half.size());
            assertFalse(half.equals(sessions(context)), "another session than half of a sign-in had");
        }
    }

    private static List<String> sessions(BrowserContext context) {
        return context.cookies().stream()
                .filter(cookie -> cookie.name.endsWith("eaveside"))
                .map(cookie -> cookie.value)
                .toList();
    }

    private static String code(String secret) {
        return new TOTPGenerator.Builder(secret.getBytes(StandardCharsets.US_ASCII))
                .withHOTPGenerator(hotp -> hotp.withPasswordLength(6).withAlgorithm(HMACAlgorithm.SHA1))
                .withPeriod(Duration.ofSeconds(30))
                .build()
                .now();
    }
}
