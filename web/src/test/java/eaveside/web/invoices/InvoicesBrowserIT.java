package eaveside.web.invoices;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.Page;
import eaveside.web.quotes.SiteToQuote;
import eaveside.web.testing.Browser;
import eaveside.web.testing.Server;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** What the forms of invoices and payments do in a real browser while they are filled in. */
class InvoicesBrowserIT {
    private static final Path PICTURES = Path.of("target", "invoices");

    private static Browser browser;

    @BeforeAll
    static void start() {
        browser = new Browser();
    }

    @AfterAll
    static void stop() {
        browser.close();
    }

    private static void go(Page page, String path) {
        page.navigate(Server.shared().at(path).toString());
    }

    private static void look(Page page, String name) {
        assertEquals(List.of(), Browser.faults(page));
        page.screenshot(new Page.ScreenshotOptions()
                .setPath(PICTURES.resolve(name + ".png"))
                .setFullPage(true));
    }

    @Test
    void a_line_follows_its_service_and_credit_is_offered() {
        SiteToQuote.shared();
        try (var desk = browser.desk()) {
            Page page = Browser.signIn(desk, Server.shared(), "quotes.office", Server.OWNER_PASSWORD);
            go(page, "payments/new?customer=" + SiteToQuote.CUSTOMER);
            page.fill("#amount", "5.00");
            page.selectOption("#method", "CASH");
            page.click("main form button:not([formaction])");
            page.waitForSelector(".errors a[href='#allocations']");
            look(page, "payment-asked");
            page.check("#keepAsCredit");
            page.click("main form button:not([formaction])");
            page.waitForURL("**/payments/*?done=invoices.payment-recorded");

            go(page, "invoices/new?customer=" + SiteToQuote.CUSTOMER);
            page.selectOption("#line-0-service", SiteToQuote.SOFT_WASH);
            page.waitForSelector("#line-0-quantityUnit:has(option[value=FTK][selected])");
            assertEquals("Soft-wash the roof", page.inputValue("#line-0-description"));
            assertEquals("Q-STANDARD", page.inputValue("#line-0-taxCode"));
            assertEquals(0, page.locator(".errors").count(), "choosing a service is no attempt at finishing");
            page.fill("#line-0-quantity", "100");
            page.fill("#line-0-gross", "0.30");
            page.waitForSelector("#totals:has-text('$32.48')");
            look(page, "draft-form");
            page.click("main form .beside button:not([formaction])");
            page.waitForURL("**/invoices/*?done=invoices.saved");
            page.click("a[href$='/issue']");
            assertTrue(page.isChecked("#applyCredit"), "on unless somebody unticks it");
            look(page, "issue");
            page.click("main form button");
            page.waitForURL("**/invoices/*?done=invoices.issued");
            look(page, "issued");
            go(page, "invoices");
            look(page, "list");
            go(page, "invoices/aging");
            look(page, "aging");
        }
    }
}
