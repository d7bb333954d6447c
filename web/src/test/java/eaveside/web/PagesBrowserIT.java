package eaveside.web;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.ConsoleMessage;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Response;
import com.microsoft.playwright.options.LoadState;
import eaveside.web.quotes.SiteToQuote;
import eaveside.web.testing.Browser;
import eaveside.web.testing.Server;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Every page that needs no particular thing to show, in a real browser: accessible, within the window, no complaint. */
class PagesBrowserIT {
    private static final List<String> PAGES = List.of(
            "overview",
            "search?q=a",
            "worklist",
            "worklist/aside",
            "customers",
            "customers/new",
            "customers/import",
            "quotes",
            "visits",
            "visits?show=COMPLETED",
            "invoices",
            "payments",
            "findings",
            "stock",
            "stock/new/receipt",
            "stock/new/transfer",
            "stock/new/count",
            "stock/new/write-off",
            "stock/items",
            "stock/items/new",
            "stock/locations",
            "stock/locations/new",
            "stock/mixes",
            "stock/mixes/new",
            "prices",
            "margins",
            "books",
            "books/journal",
            "books/accounts",
            "books/entries?account=1000",
            "books/months/" + SiteToQuote.today().substring(0, 7),
            "settings",
            "settings/company",
            "settings/service-lines",
            "settings/service-lines/new",
            "settings/services",
            "settings/services/new",
            "settings/taxes",
            "settings/taxes/new",
            "settings/rates",
            "settings/rates/new",
            "settings/manufacturers",
            "settings/finding-types",
            "settings/finding-types/new",
            "settings/manufacturers/edit",
            "settings/users",
            "settings/users/new",
            "settings/users/office-rights",
            "settings/audit-log",
            "account",
            "no/such/page");

    private static Browser browser;

    @BeforeAll
    static void start() {
        browser = new Browser();
    }

    @AfterAll
    static void stop() {
        browser.close();
    }

    @Test
    void on_a_phone_in_the_dark() {
        look(browser.phone(), "phone");
    }

    private static void look(BrowserContext context, String size) {
        List<String> faults = new ArrayList<>();
        try (context) {
            Page page = Browser.signIn(context, Server.shared(), Server.OWNER, Server.OWNER_PASSWORD);
            List<String> complaints = new ArrayList<>();
            page.onConsoleMessage(message -> note(message, complaints));
            for (String path : PAGES) {
                complaints.clear();
                Response response = page.navigate(Server.shared().at(path).toString());
                page.waitForLoadState(LoadState.LOAD);
                int expected = path.startsWith("no/") ? 404 : 200;
                if (response.status() != expected) {
                    faults.add(path + ": status " + response.status());
                }
                Browser.faults(page).forEach(fault -> faults.add(path + ": " + fault));
                complaints.forEach(complaint -> faults.add(path + ": " + complaint));
                page.screenshot(new Page.ScreenshotOptions()
                        .setFullPage(true)
                        .setPath(Path.of("target", "pages", size, path.replaceAll("[^a-z]+", "-") + ".png")));
            }
        }
        assertEquals(String.join("\n", List.of()), String.join("\n", faults));
    }

    private static void note(ConsoleMessage message, List<String> complaints) {
        // The status of a page that is not there is meant to be one.
        if (message.type().equals("error") && !message.text().contains("404")) {
            complaints.add(message.text());
        }
    }
}
