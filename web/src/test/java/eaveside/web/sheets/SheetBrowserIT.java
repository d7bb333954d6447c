package eaveside.web.sheets;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Dialog;
import com.microsoft.playwright.Download;
import com.microsoft.playwright.FileChooser;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Route;
import com.microsoft.playwright.options.FilePayload;
import eaveside.web.testing.Browser;
import eaveside.web.testing.Server;
import eaveside.web.testing.Visitor;
import eaveside.web.visits.CrewAtWork;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * The sheet on a phone whose browser says nothing of use about the signal: it always holds itself online and tells of no
 * change, as after a reload without network, or with a bar of signal and no data behind it.
 */
class SheetBrowserIT {
    private static final Path PICTURES = Path.of("target", "sheets");
    private static final String DEAF = """
            Object.defineProperty(Navigator.prototype, 'onLine', { get: () => true });
            for (const name of ['online', 'offline']) {
              window.addEventListener(name, event => event.stopImmediatePropagation(), true);
            }
            """;

    private static Browser browser;

    private final CrewAtWork at = CrewAtWork.shared();
    private final List<String> sent = new ArrayList<>();
    private BrowserContext context;
    private Page page;

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

    private String open() {
        String visit = at.visit();
        open(visit);
        return visit;
    }

    private void open(String visit) {
        page.navigate(address("sheets/" + visit));
    }

    private static String address(String path) {
        return Server.shared().at(path).toString();
    }

    private void fill() {
        page.locator("[data-all]").first().click();
        page.fill("#onSiteMinutes", "120");
        page.fill("#drivingMinutes", "40");
        page.fill("#loadingMinutes", "0");
        page.fill("#distance", "12");
    }

    private void takePhoto() {
        takePhoto("image/png", picture());
    }

    private void takePhoto(String type, byte[] content) {
        unfold("#findings");
        page.locator("#finding-0-type").selectOption("RUST");
        page.locator("#finding-0-severity").selectOption("NOTE");
        FileChooser chooser = page.waitForFileChooser(
                () -> page.locator("#findings .camera").first().click());
        chooser.setFiles(new FilePayload("rust.png", type, content));
    }

    private void unfold(String section) {
        if (page.locator(section).getAttribute("open") == null) {
            page.locator(section + " > summary").click();
        }
    }

    private static byte[] picture() {
        var out = new ByteArrayOutputStream();
        try {
            ImageIO.write(new BufferedImage(320, 240, BufferedImage.TYPE_INT_RGB), "png", out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }

    /** Until the phone could open the page without network. */
    private void awaitKeptPage() {
        page.waitForCondition(() -> Boolean.TRUE.equals(page.evaluate(
                "async () => !!navigator.serviceWorker.controller && !!(await caches.match(location.pathname))")));
    }

    private void thumbSays(String words) {
        page.locator("[data-thumb]")
                .filter(new Locator.FilterOptions().setHasText(words))
                .waitFor();
    }

    private void look(String what) {
        page.screenshot(new Page.ScreenshotOptions()
                .setFullPage(!what.startsWith("waiting"))
                .setPath(PICTURES.resolve(what + ".png")));
        assertEquals(List.of(), Browser.faults(page), what);
    }

    private static int sheetsOf(String visit) {
        return Integer.parseInt(Visitor.value("select count(*)::text from job_sheet where visit_id = ?::uuid", visit));
    }

    private long answered(String path) {
        return sent.stream().filter(("200 " + path)::equals).count();
    }

    @Test
    void a_kept_sheet_goes_by_itself_once_there_is_signal_again() {
        String visit = open();
        awaitKeptPage();
        fill();
        context.setOffline(true);
        takePhoto();
        page.locator("#findings .shot img").first().waitFor();
        page.click(".bottom button");
        thumbSays("Saved on this phone at ");
        thumbSays("waiting for signal");
        look("waiting-for-signal");
        page.navigate(address("sheets/" + visit));
        thumbSays("waiting for signal");
        context.setOffline(false);

        page.waitForURL(url -> url.contains("done=sheets.signed"), new Page.WaitForURLOptions().setTimeout(60_000));

        assertTrue(
                page.locator("main").innerText().contains("The job sheet was signed off."),
                page.locator("main").innerText());
        look("sent");
        assertEquals(1, sheetsOf(visit));
        assertEquals(1, answered(visit), sent.toString());
        assertEquals("1", photosOf(visit));
        assertEquals(
                1,
                sent.stream()
                        .filter(s -> s.startsWith("200 " + visit + "/photos/"))
                        .count(),
                sent.toString());
    }

    @Test
    void it_goes_from_the_list_of_the_day_too_and_from_two_pages_at_once_only_once() {
        String visit = open();
        fill();
        Page list = context.newPage();
        list.navigate(address("sheets"));
        List<String> fromList = new ArrayList<>();
        list.onResponse(answer -> {
            if (answer.request().method().equals("POST")) {
                fromList.add(answer.status() + " " + answer.url());
            }
        });
        context.setOffline(true);
        page.click(".bottom button");
        thumbSays("waiting for signal");
        page.close();
        context.setOffline(false);
        list.waitForCondition(() -> sheetsOf(visit) == 1, new Page.WaitForConditionOptions().setTimeout(60_000));
        list.locator("#unsent")
                .filter(new Locator.FilterOptions().setHasText("Sent"))
                .waitFor();
        assertEquals(1, fromList.size(), fromList.toString());
    }

    @Test
    void a_server_that_is_down_is_tried_again_too() {
        String visit = open();
        awaitKeptPage();
        fill();
        int[] tries = {0};
        context.route("**/sheets/" + visit, route -> {
            if (route.request().method().equals("POST") && ++tries[0] <= 2) {
                route.fulfill(new Route.FulfillOptions().setStatus(503));
            } else {
                route.resume();
            }
        });
        page.click(".bottom button");
        page.waitForURL(url -> url.contains("done=sheets.signed"), new Page.WaitForURLOptions().setTimeout(60_000));
        assertEquals(3, tries[0]);
        assertEquals(1, sheetsOf(visit));
    }

    /** What the server refuses is nowhere else: it stays on the phone, past the sheet that goes without it. */
    @Test
    void a_photo_that_is_refused_stays_until_its_technician_discards_it() {
        String visit = open();
        fill();
        takePhoto("image/png", "no picture at all".getBytes(StandardCharsets.UTF_8));
        Locator refused = page.locator("[data-refused] > li");
        refused.waitFor();
        assertTrue(refused.innerText().contains("only JPEG and PNG pictures are taken"), refused.innerText());
        assertEquals(0, page.locator("#findings .shot").count(), "the sheet goes without it");
        look("refused-photo");
        page.reload();
        refused.waitFor();
        Download saved = page.waitForDownload(() -> refused.locator("a").click());
        assertEquals("no picture at all", contentOf(saved));

        page.click(".bottom button");
        page.waitForURL(url -> url.contains("done=sheets.signed"));
        refused.waitFor();
        look("refused-photo-after-sign-off");
        page.onDialog(Dialog::accept);
        refused.locator("[data-discard]").click();
        page.waitForCondition(() -> refused.count() == 0);
        assertFalse(page.locator("#unsent").isVisible());
        assertEquals(1, sheetsOf(visit));
    }

    @Test
    void a_refused_photo_is_sent_again_on_request() {
        String visit = open();
        awaitKeptPage();
        fill();
        boolean[] refuses = {true};
        context.route("**/photos/*", route -> {
            if (refuses[0] && route.request().method().equals("POST")) {
                route.fulfill(new Route.FulfillOptions().setStatus(422).setBody("{\"title\": \"Not today\"}"));
            } else {
                route.resume();
            }
        });
        takePhoto();
        Locator refused = page.locator("[data-refused] > li");
        refused.waitFor();
        assertTrue(refused.innerText().contains("Not today"), refused.innerText());
        page.click(".bottom button");
        page.waitForURL(url -> url.contains("done=sheets.signed"));
        assertEquals("0", photosOf(visit));

        refuses[0] = false;
        page.locator("[data-again]").click();
        page.waitForCondition(() -> photosOf(visit).equals("1"));
        page.waitForCondition(() -> refused.count() == 0);
    }

    private static String photosOf(String visit) {
        return Visitor.value("select count(*)::text from photo where visit_id = ?::uuid", visit);
    }

    private static String contentOf(Download download) {
        try {
            return Files.readString(download.path());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The pauses grow from two seconds (common practice, no source); no event of the browser's network is among these. */
    @Test
    void it_is_tried_after_growing_pauses_and_at_once_on_every_chance() {
        page.clock().install();
        String visit = open();
        awaitKeptPage();
        fill();
        int[] tries = {0};
        boolean[] down = {true};
        context.route("**/sheets/" + visit, route -> {
            if (route.request().method().equals("POST") && down[0]) {
                tries[0]++;
                route.fulfill(new Route.FulfillOptions().setStatus(503));
            } else {
                route.resume();
            }
        });
        page.clock().pauseAt(((Number) page.evaluate("Date.now()")).longValue() + 1_000);
        page.click(".bottom button");
        tried(1, tries);
        page.clock().runFor(1_900);
        tried(1, tries);
        page.clock().runFor(700);
        tried(2, tries);
        page.clock().runFor(3_900);
        tried(2, tries);
        page.clock().runFor(1_200);
        tried(3, tries);

        page.evaluate("() => window.dispatchEvent(new Event('focus'))");
        tried(4, tries);
        page.clock().runFor(2_600);
        tried(5, tries);
        page.evaluate("() => document.dispatchEvent(new Event('visibilitychange'))");
        tried(6, tries);
        down[0] = false;
        page.evaluate(
                "() => document.dispatchEvent(new CustomEvent('htmx:afterRequest', {detail: {successful: true}}))");
        page.waitForURL(url -> url.contains("done=sheets.signed"));
        assertEquals(1, sheetsOf(visit));
    }

    private void tried(int times, int[] tries) {
        page.waitForCondition(() -> tries[0] >= times);
        page.locator("[data-say]")
                .filter(new Locator.FilterOptions().setHasText("It is sent again"))
                .waitFor();
        page.waitForTimeout(300);
        assertEquals(times, tries[0]);
    }

    @Test
    void all_done_takes_back_what_was_skipped_and_why() {
        open();
        page.fill("#line-0-done", "46");
        page.locator("#line-0-done").press("Tab");
        page.locator("#line-0-skip-0-quantity").waitFor();
        page.locator("#line-0-skip-0-reason").selectOption("WEATHER");
        page.fill("#line-0-skip-0-note", "Rain");
        page.locator("[data-all]").first().click();
        assertEquals("48", page.inputValue("#line-0-done"));
        assertEquals("", page.inputValue("#line-0-skip-0-quantity"));
        assertEquals("", page.inputValue("#line-0-skip-0-reason"));
        assertEquals("", page.inputValue("#line-0-skip-0-note"));
    }

    @Test
    void a_consumable_without_its_amount_is_asked_for_where_there_is_no_signal_too() {
        open();
        fill();
        unfold("#soap");
        page.locator("#mix-0-mix").selectOption(CrewAtWork.MIX);
        context.setOffline(true);
        page.click(".bottom button");
        page.locator("#mix-0-volume-error").waitFor();
        assertFalse(page.locator("[data-thumb]").isVisible());
    }

    @Test
    void signing_out_asks_while_something_is_unsent_and_takes_nothing_away() {
        String visit = open();
        awaitKeptPage();
        fill();
        List<String> asked = new ArrayList<>();
        boolean[] answer = {false};
        page.onDialog(dialog -> {
            asked.add(dialog.message());
            if (answer[0]) {
                dialog.accept();
            } else {
                dialog.dismiss();
            }
        });
        page.locator("form.who button").click();
        page.waitForCondition(() -> asked.size() == 1);
        assertTrue(asked.getFirst().contains("not been sent"), asked.toString());
        assertTrue(page.url().endsWith("/sheets/" + visit), page.url());
        answer[0] = true;
        page.locator("form.who button").click();
        page.waitForURL("**/sign-in");
        assertEquals(Boolean.TRUE, page.evaluate("async path => !!(await caches.match(path))", "/sheets/" + visit));
        page.fill("#username", "quotes.technician");
        page.fill("#password", Server.OWNER_PASSWORD);
        page.click("main button");
        page.waitForURL(url -> !url.contains("/sign-in"));
        open(visit);
        assertEquals("120", page.inputValue("#onSiteMinutes"));
        page.click(".bottom button");
        page.waitForURL(url -> url.contains("done=sheets.signed"));
        page.locator("form.who button").click();
        page.waitForURL("**/sign-in");
        assertEquals(2, asked.size(), "nothing is unsent any more");
        assertEquals(Boolean.FALSE, page.evaluate("caches.has('eaveside-sheets')"));
    }

    @Test
    void a_sheet_that_another_of_the_crew_has_signed_off_meanwhile_is_handed_to_the_office() {
        String visit = open();
        fill();
        page.fill("#note", "Gutter hangs loose");
        signedByTheOffice(visit);
        open(visit);
        page.locator("[data-hand]").click();
        page.waitForURL(url -> url.contains("done=sheets.recorded"));
        look("recorded");
        assertFalse(page.locator("#unsent").isVisible());
        assertEquals(
                "1",
                Visitor.value(
                        "select count(*)::text from sent_sheet s join sent_sheet_field f on f.sent_sheet_id = s.id"
                                + " where s.visit_id = ?::uuid and f.name = 'note' and f.value = 'Gutter hangs loose'",
                        visit));
    }

    @Test
    void the_office_reads_what_was_sent_and_says_so() {
        String visit = open();
        fill();
        takePhoto();
        page.locator("#finding-0-severity").selectOption("URGENT");
        page.fill("#finding-0-note", "Bare wire under the third panel");
        page.fill("#line-0-done", "46");
        page.locator("#line-0-done").press("Tab");
        page.locator("#line-0-skip-0-reason").selectOption("WEATHER");
        signedByTheOffice(visit);
        page.click(".bottom button");
        page.waitForURL(url -> url.contains("done=sheets.recorded"));

        try (BrowserContext desk = browser.desk()) {
            page = Browser.signIn(desk, Server.shared(), "quotes.office", Server.OWNER_PASSWORD);
            page.navigate(address("worklist?type=sheet"));
            look("worklist");
            page.locator("a.button[href^=\"/visits/" + visit + "/sent/\"]").click();
            page.locator("h1")
                    .filter(new Locator.FilterOptions().setHasText("Job sheet for"))
                    .waitFor();
            look("sent-sheet");
            page.fill("#note", "Called the electrician");
            page.locator("form[action$=\"/acknowledge\"] button").click();
            page.waitForURL(url -> url.contains("done=sheets.read"));
            look("visit-with-sent-sheet");
        }
    }

    private void signedByTheOffice(String visit) {
        Map<String, String> form = at.office().form("sheets/" + visit, "/sheets/" + visit);
        form.put("line-0-done", "48");
        form.put("onSiteMinutes", "60");
        form.put("drivingMinutes", "0");
        form.put("loadingMinutes", "0");
        form.put("distance", "0");
        assertEquals(303, at.office().post("sheets/" + visit, form).statusCode());
    }

    /** The page may change its names while a phone keeps a sheet that is not signed off yet. */
    @Test
    void a_draft_that_an_older_page_has_kept_is_opened_with_all_that_was_typed() {
        String visit = open();
        fill();
        page.fill("#note", "Gate was left open");
        page.evaluate("""
                () => {
                  const key = Object.keys(localStorage).find(k => k.startsWith('eaveside.sheet.'));
                  const kept = JSON.parse(localStorage.getItem(key));
                  kept.fields = kept.fields
                    .filter(([name]) => !/-(type|tapWater|pureWater|volume)$/.test(name))
                    .map(([name, value]) => [name.replace(/^completedOn$/, 'doneOn').replace(/^location$/, 'place'), value])
                    .concat([['finding-0-kind', 'RUST'], ['reading-0-feed', '310'], ['reading-0-product', '4'], ['reading-0-volume', '20']]);
                  localStorage.setItem(key, JSON.stringify(kept));
                }""");
        open(visit);
        page.locator("#reading-0-tapWater").waitFor();
        assertEquals("310", page.inputValue("#reading-0-tapWater"));
        assertEquals("4", page.inputValue("#reading-0-pureWater"));
        assertEquals("RUST", page.inputValue("#finding-0-type"));
        assertEquals("Gate was left open", page.inputValue("#note"));
        page.locator("#finding-0-severity").selectOption("NOTE");
        look("draft-of-an-older-page");
        page.click(".bottom button");
        page.waitForURL(url -> url.contains("done=sheets.signed"));
        assertEquals("1", Visitor.value("select count(*)::text from finding where visit_id = ?::uuid", visit));
    }

    /** A field that takes numbers alone drops the comma of "12,5" before anybody sees it. */
    @Test
    void a_number_that_could_be_two_is_refused_at_the_thumb_and_stays_as_it_was_typed() {
        String visit = open();
        fill();
        page.fill("#distance", "");
        page.locator("#distance").pressSequentially("12,5");
        page.click(".bottom button");
        page.locator("#distance-error").waitFor();
        assertEquals("12,5", page.inputValue("#distance"));
        assertTrue(
                page.locator("#distance-error").innerText().contains("must be a number, such as 12.5"),
                page.locator("#distance-error").innerText());
        assertEquals("0", Visitor.value("select count(*)::text from job_sheet where visit_id = ?::uuid", visit));

        page.fill("#distance", "1,012.5");
        page.locator("[data-step][data-for=distance]").last().click();
        assertEquals("1013.5", page.inputValue("#distance"), "the button adds to what the number is");
        page.fill("#distance", "12.5");
        page.click(".bottom button");
        page.waitForURL(url -> url.contains("done=sheets.signed"));
        assertEquals(
                "12.5", Visitor.value("select distance::float::text from job_sheet where visit_id = ?::uuid", visit));
    }

    @Test
    void what_is_missing_is_said_in_whole_sentences_where_there_is_no_signal_too() {
        open();
        fill();
        page.fill("#onSiteMinutes", "");
        context.setOffline(true);
        page.click(".bottom button");
        page.locator("#onSiteMinutes-error").waitFor();
        assertEquals("On site is required", page.locator("#onSiteMinutes-error").innerText());
        look("missing");
    }
}
