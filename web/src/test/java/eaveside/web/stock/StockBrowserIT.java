package eaveside.web.stock;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.SelectOption;
import eaveside.web.testing.Browser;
import eaveside.web.testing.Server;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** What the forms of the stock do in a real browser while they are filled in. */
class StockBrowserIT {
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
    void a_soap_is_entered_and_its_ratio_said_in_words_as_it_is_typed() {
        try (var desk = browser.desk()) {
            Page page = Browser.signIn(desk, Server.shared(), Server.OWNER, Server.OWNER_PASSWORD);
            page.navigate(Server.shared().at("stock/items/new").toString());
            page.fill("#name", "Browser soap");
            page.fill("#code", "B-SOAP");
            page.selectOption("#type", "CONCENTRATE");
            page.selectOption("#baseUnit", "OZA");
            page.fill("#pack-0-name", "canister");
            page.fill("#pack-0-content", "128");
            page.click("button[data-add-row]");
            page.fill("#pack-1-name", "drum");
            page.fill("#pack-1-content", "55");
            page.selectOption("#pack-1-contentUnit", "GLL");
            page.click("main form button:not([type=button])");
            page.waitForURL("**/stock/items?done=stock.items.saved");
            page.fill("#q", "browser");
            page.waitForURL("**/stock/items?q=browser");
            assertEquals(1, page.locator("#found tbody tr").count());

            page.navigate(Server.shared().at("stock/mixes/new").toString());
            page.fill("#name", "Browser wash");
            page.selectOption("#concentrate", new SelectOption().setLabel("Browser soap"));
            page.fill("#parts", "31");
            page.waitForSelector("#in-words:has-text('takes 4')");
            page.selectOption("#meaning", "IN_SOLUTION");
            page.waitForSelector("#in-words:has-text('takes 4.13')");
            assertEquals(List.of(), Browser.faults(page));
            page.click("main form button");
            page.waitForURL("**/stock/mixes?done=stock.mixes.saved");
        }
    }
}
