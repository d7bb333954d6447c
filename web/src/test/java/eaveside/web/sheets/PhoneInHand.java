package eaveside.web.sheets;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.FileChooser;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.FilePayload;
import eaveside.web.testing.Browser;
import eaveside.web.testing.Server;
import eaveside.web.testing.Visitor;
import eaveside.web.visits.CrewAtWork;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;

/**
 * A phone whose browser says nothing of use about the signal: it always holds itself online and tells of no change, as
 * after a reload without network, or with a bar of signal and no data behind it.
 */
abstract class PhoneInHand {
    private static final Path PICTURES = Path.of("target", "sheets");
    private static final String DEAF = """
            Object.defineProperty(Navigator.prototype, 'onLine', { get: () => true });
            for (const name of ['online', 'offline']) {
              window.addEventListener(name, event => event.stopImmediatePropagation(), true);
            }
            """;

    static Browser browser;

    final CrewAtWork at = CrewAtWork.shared();
    final List<String> sent = new ArrayList<>();
    BrowserContext context;
    Page page;

    @BeforeAll
    static void arrive() {
        browser = new Browser();
    }

    @AfterAll
    static void leave() {
        browser.close();
    }

    @BeforeEach
    void pick_up_the_phone() {
        context = browser.phone();
        context.addInitScript(DEAF);
        context.setDefaultTimeout(15_000);
        page = Browser.signIn(context, Server.shared(), "quotes.technician", Server.OWNER_PASSWORD);
        page.onResponse(answer -> {
            if (answer.request().method().equals("POST") && answer.url().contains("/sheets/")) {
                sent.add(answer.status() + " " + answer.url().replaceFirst(".*/sheets/", ""));
            }
        });
    }

    @AfterEach
    void put_it_away() {
        context.close();
    }

    String open() {
        String visit = at.visit();
        open(visit);
        return visit;
    }

    void open(String visit) {
        page.navigate(address("sheets/" + visit));
    }

    static String address(String path) {
        return Server.shared().at(path).toString();
    }

    void fill() {
        page.locator("[data-all]").first().click();
        page.fill("#onSiteMinutes", "120");
        page.fill("#drivingMinutes", "40");
        page.fill("#loadingMinutes", "0");
        page.fill("#distance", "12");
    }

    void takePhoto() {
        takePhoto("image/png", picture());
    }

    void takePhoto(String type, byte[] content) {
        unfold("#findings");
        page.locator("#finding-0-type").selectOption("RUST");
        page.locator("#finding-0-severity").selectOption("NOTE");
        FileChooser chooser = page.waitForFileChooser(
                () -> page.locator("#findings .camera").first().click());
        chooser.setFiles(new FilePayload("rust.png", type, content));
    }

    void unfold(String section) {
        if (page.locator(section).getAttribute("open") == null) {
            page.locator(section + " > summary").click();
        }
    }

    static byte[] picture() {
        return png(new BufferedImage(320, 240, BufferedImage.TYPE_INT_RGB));
    }

    /** As large as photos are, since nothing of it can be packed. */
    static byte[] noise() {
        var picture = new BufferedImage(320, 240, BufferedImage.TYPE_INT_RGB);
        var random = new Random(1);
        for (int i = 0; i < 320 * 240; i++) {
            picture.setRGB(i % 320, i / 320, random.nextInt());
        }
        return png(picture);
    }

    private static byte[] png(BufferedImage picture) {
        var out = new ByteArrayOutputStream();
        try {
            ImageIO.write(picture, "png", out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }

    /** Until the phone could open the page without network. */
    void awaitKeptPage() {
        page.waitForCondition(() -> Boolean.TRUE.equals(page.evaluate(
                "async () => !!navigator.serviceWorker.controller && !!(await caches.match(location.pathname))")));
    }

    void thumbSays(String words) {
        page.locator("[data-thumb]")
                .filter(new Locator.FilterOptions().setHasText(words))
                .waitFor();
    }

    void look(String what) {
        page.screenshot(new Page.ScreenshotOptions()
                .setFullPage(!what.startsWith("waiting"))
                .setPath(PICTURES.resolve(what + ".png")));
        assertEquals(List.of(), Browser.faults(page), what);
    }

    static int sheetsOf(String visit) {
        return Integer.parseInt(Visitor.value("select count(*)::text from job_sheet where visit_id = ?::uuid", visit));
    }

    long answered(String path) {
        return sent.stream().filter(("200 " + path)::equals).count();
    }

    static String photosOf(String visit) {
        return Visitor.value("select count(*)::text from photo where visit_id = ?::uuid", visit);
    }
}
