package eaveside.web.walkthrough;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.microsoft.playwright.APIResponse;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Response;
import eaveside.web.testing.Browser;
import eaveside.web.testing.Server;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.atomic.AtomicInteger;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;

/** Somebody of the demo company at a browser: goes to pages, looks at them and keeps what was seen. */
class Person {
    private static final Path KEPT = Path.of("target", "walkthrough");
    private static final AtomicInteger PICTURES = new AtomicInteger();

    /** What was wrong with the pages that were looked at; told at the end, so that one page does not hide the next. */
    static final List<String> FAULTS = new CopyOnWriteArrayList<>();

    final BrowserContext context;
    final Page page;
    private final Server server;
    private final String username;
    private final String password;

    /** Somebody of the demo company. */
    Person(BrowserContext context, Server server, String username) {
        this(context, server, username, server.passwordOf(username));
    }

    Person(BrowserContext context, Server server, String username, String password) {
        this.context = context;
        this.server = server;
        this.username = username;
        this.password = password;
        context.setDefaultTimeout(15_000);
        page = Browser.signIn(context, server, username, password);
    }

    /** Where pictures and papers stay: those of another day have a folder of their own. */
    static Path kept(Server server) {
        Duration ahead =
                Duration.between(Clock.systemUTC().instant(), server.clock().instant());
        return ahead.abs().toHours() == 0
                ? KEPT
                : Path.of(KEPT + "-" + LocalDate.ofInstant(server.clock().instant(), ZoneOffset.UTC));
    }

    void go(String path) {
        Response response = page.navigate(address(path));
        assertEquals(200, response.status(), path);
    }

    String address(String path) {
        return server.at(path).toString();
    }

    /** Signs in where the page is, as after the session has ended. */
    void signInAgain() {
        page.fill("#username", username);
        page.fill("#password", password);
        page.click("main button");
        page.waitForURL(url -> !url.contains("/sign-in"));
    }

    /** Keeps a picture of the whole page and holds it to the rules of accessibility. */
    void look(String what) {
        Browser.picture(page, kept(server).resolve("%02d-%s.png".formatted(PICTURES.incrementAndGet(), what)));
        Browser.faults(page).forEach(fault -> FAULTS.add(what + ": " + fault));
    }

    /** Clicks what leads to another page, and waits for it. */
    void follow(String selector) {
        page.waitForNavigation(
                () -> page.locator(selector).locator("visible=true").first().click());
    }

    /** Opens a part of the page that is folded. */
    void unfold(String selector) {
        Locator part = page.locator(selector);
        if (part.getAttribute("open") == null) {
            part.locator("> summary").click();
        }
    }

    String text(String selector) {
        return page.locator(selector)
                .first()
                .innerText()
                .replaceAll("[\\s\\u00a0]+", " ")
                .strip();
    }

    String main() {
        return text("main");
    }

    /** The last part of the address: the id of what is shown. */
    String shown() {
        return page.url().replaceFirst("[?#].*", "").replaceFirst(".*/", "");
    }

    String fetchText(String path) {
        return fetch(path).text();
    }

    byte[] download(String path, String kept) {
        byte[] body = fetch(path).body();
        try {
            Files.write(Files.createDirectories(kept(server)).resolve(kept), body);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return body;
    }

    /** Keeps the PDF and tells what is printed on it. */
    String paper(String path, String kept) {
        try (PDDocument paper = Loader.loadPDF(download(path, kept))) {
            return new PDFTextStripper().getText(paper).replaceAll("[\\s\\u00a0]+", " ");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private APIResponse fetch(String path) {
        APIResponse response = context.request().get(address(path));
        assertEquals(200, response.status(), path);
        return response;
    }
}
