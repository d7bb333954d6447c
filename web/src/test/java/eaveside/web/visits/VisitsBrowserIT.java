package eaveside.web.visits;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import eaveside.web.quotes.SiteToQuote;
import eaveside.web.testing.Browser;
import eaveside.web.testing.Server;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The office's pages of visits in a real browser, at a desk and on a phone. */
class VisitsBrowserIT {
    private static final Path PICTURES = Path.of("target", "visits");

    private static Browser browser;

    @BeforeAll
    static void start() {
        browser = new Browser();
        CrewAtWork.shared().site().published("Prices of visits in a browser");
    }

    @AfterAll
    static void stop() {
        browser.close();
    }

    private static void go(Page page, String path) {
        page.navigate(Server.shared().at(path).toString());
    }

    private static void look(Page page, String name) {
        assertEquals(List.of(), Browser.faults(page), name);
        page.screenshot(new Page.ScreenshotOptions()
                .setPath(PICTURES.resolve(name + ".png"))
                .setFullPage(true));
    }

    @Test
    void at_a_desk() {
        try (var desk = browser.desk()) {
            works(desk, "desk");
        }
    }

    @Test
    void on_a_phone() {
        try (var phone = browser.phone()) {
            works(phone, "phone");
        }
    }

    private static void works(BrowserContext context, String size) {
        CrewAtWork at = CrewAtWork.shared();
        Page page = Browser.signIn(context, Server.shared(), "quotes.office", Server.OWNER_PASSWORD);
        String visit = scheduled(page, size);
        listed(page, visit, size);
        rescheduled(page, at, visit, size);
        decided(page, at, size);
    }

    private static String scheduled(Page page, String size) {
        go(page, "visits/new?site=" + SiteToQuote.SITE);
        look(page, size + "-scheduling");
        page.selectOption("#line-0-serviceItem", SiteToQuote.PANEL);
        page.fill("#line-0-quantity", "many");
        page.click("main form[action='/visits/new'] .actions button");
        page.waitForSelector(".errors a[href='#line-0-quantity']");
        look(page, size + "-scheduling-refused");
        page.fill("#line-0-quantity", "40");
        page.check("#crew input[value='" + CrewAtWork.TECHNICIAN + "']");
        page.click("main form[action='/visits/new'] .actions button");
        page.waitForURL("**/visits/*?done=visits.scheduled");
        look(page, size + "-scheduled");
        return page.url().replaceFirst(".*/visits/([0-9a-f-]{36}).*", "$1");
    }

    /** The list follows what is typed and chosen, without a button. */
    private static void listed(Page page, String visit, String size) {
        go(page, "visits");
        look(page, size + "-list");
        page.locator("#q").pressSequentially("nowhere");
        page.waitForSelector("#found .empty");
        page.fill("#q", "");
        page.locator("#q").pressSequentially("alder");
        page.waitForSelector("#found a[href='/visits/" + visit + "']");
        page.selectOption("#show", "COMPLETED");
        page.waitForURL("**/visits?*show=COMPLETED*");
        page.selectOption("#show", "ALL");
        page.waitForSelector("#found a[href='/visits/" + visit + "']");
        look(page, size + "-list-searched");
    }

    /** Whoever is second sees what is stored beside what was typed. */
    private static void rescheduled(Page page, CrewAtWork at, String visit, String size) {
        go(page, "visits/" + visit);
        page.click("details:has(form[action$='/reschedule']) summary");
        LocalDate day = LocalDate.parse(SiteToQuote.today());
        var meanwhile = at.office()
                .json(
                        "POST",
                        "api/visits/" + visit + "/reschedule",
                        "{\"version\": 1, \"date\": \"%s\", \"crew\": [\"%s\"], \"reason\": \"Rain\"}"
                                .formatted(day.plusDays(3), CrewAtWork.TECHNICIAN));
        assertEquals(200, meanwhile.statusCode(), meanwhile.body());
        page.fill("form[action$='/reschedule'] [name=date]", day.plusDays(2).toString());
        page.fill("form[action$='/reschedule'] [name=reason]", "Wind");
        page.click("form[action$='/reschedule'] button");
        page.waitForSelector(".errors a[href='#date']");
        look(page, size + "-rescheduled-late");
        assertEquals("Wind", page.inputValue("#reason"));
        assertEquals(day.plusDays(2).toString(), page.inputValue("#date"));
        page.click("form[action$='/reschedule'] button");
        page.waitForURL("**/visits/*?done=visits.rescheduled");
        assertTrue(page.textContent("main").contains("Wind"));
    }

    private static void decided(Page page, CrewAtWork at, String size) {
        String visit = at.visit();
        at.signedOff(visit);
        go(page, "visits/" + visit);
        look(page, size + "-scope-changes");
        page.click(".scope-change button[value=NO_CHARGE]");
        page.waitForURL("**/visits/*?done=visits.decided");
        page.click(".scope-change button[value=CANCEL]");
        page.waitForURL("**/visits/*?done=visits.decided");
        page.click("details:has(form[action$='/close']) summary");
        page.click("form[action$='/close'] button");
        page.waitForSelector(".errors a[href='#reason']");
        look(page, size + "-close-refused");
        page.fill("#reason", "A gift");
        page.click("form[action$='/close'] button");
        page.waitForURL("**/visits/*?done=visits.closed");
        look(page, size + "-closed");
    }
}
