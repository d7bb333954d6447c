package eaveside.web.walkthrough;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.SelectOption;
import eaveside.schema.BooksProof;
import eaveside.web.testing.Browser;
import eaveside.web.testing.OnItsOwnCompany;
import eaveside.web.testing.Server;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** A company with nothing but its owner, set up by its pages alone until the first quote works itself out. */
@OnItsOwnCompany
class NewCompanyBrowserIT {
    private static Browser browser;
    private static Person owner;
    private static Page page;

    @BeforeAll
    static void found() {
        browser = new Browser();
        owner = new Person(browser.desk(), Server.fresh(), Server.OWNER, Server.OWNER_PASSWORD);
        page = owner.page;
    }

    @AfterAll
    static void leave() {
        browser.close();
    }

    @Test
    void the_first_steps_lead_to_the_first_quote() throws SQLException {
        assertEquals(8, stepsLeft());
        owner.look("new-company");
        setUpWhatIsSold();
        setUpWhoWorksWithWhat();
        String customer = enterACustomer();
        owner.go("worklist");
        assertEquals(List.of(), page.locator(".steps li:not(:has(.tag)) a").allInnerTexts(), "left to set up");
        assertEquals(0, page.locator(".steps").count(), "the steps are gone when all are done");

        owner.go("quotes/new?customer=" + customer);
        page.locator("#lines label.check:has-text(\"Window pane, both sides\") input")
                .check();
        owner.follow("main form .actions button:has-text(\"Save\")");
        // Thirty panes at 4.00, with the visit's minimum of 90.00 already passed.
        assertTrue(owner.main().contains("30 at $4.00 each"), owner.main());
        assertTrue(owner.text("tfoot").contains("$120.00"), owner.text("tfoot"));
        owner.look("new-company-quote");
        try (Connection connection = Server.fresh().database().asOwner().getConnection()) {
            assertTrue(BooksProof.run(connection).stream().allMatch(BooksProof.Result::holds));
        }
        assertEquals(List.of(), Person.FAULTS);
    }

    private static void setUpWhatIsSold() {
        step("taxes");
        owner.follow("a[href=\"/settings/taxes/new\"]");
        send("/settings/taxes", Map.of("code", "LOCAL", "rate", "7"), Map.of("category", "S"));
        step("rates");
        owner.follow("a[href=\"/settings/rates/new\"]");
        send(
                "/settings/rates",
                Map.of("laborPerHour", "30", "travelPerDistance", "0.60", "overheadPerHour", "12"),
                Map.of());
        step("service-lines");
        owner.follow("a[href=\"/settings/service-lines/new\"]");
        send("/settings/service-lines", Map.of("code", "WIN", "name", "Windows"), Map.of());
        step("services");
        owner.follow("a[href=\"/settings/services/new\"]");
        page.locator("#serviceLine").selectOption(new SelectOption().setIndex(1));
        send(
                "/settings/services",
                Map.of("code", "PANE", "name", "Window pane, both sides", "minutesPerUnit", "2.5"),
                Map.of("unit", "H87", "surfaceType", "WINDOW", "taxCode", "LOCAL"));
        step("prices");
        owner.follow("a[href=\"/prices/new\"]");
        owner.unfold("details.panel:has-text(\"Window pane, both sides\")");
        page.fill("#name", "First prices");
        page.fill("#visitMinimum", "90");
        page.fill("#sharedReduction", "0");
        page.locator("details.panel tr input[name$=\"-from\"]").first().fill("0");
        page.locator("details.panel tr input[name$=\"-price\"]").first().fill("4.00");
        owner.follow("main form .actions button:not([type=button])");
        owner.look("new-company-prices");
        owner.follow("a[href$=\"/publish\"]");
        owner.follow("form[action$=\"/publish\"] button");
    }

    private static void setUpWhoWorksWithWhat() {
        step("people");
        owner.follow("a[href=\"/settings/users/new\"]");
        send("/settings/users", Map.of("name", "Fern Alderby", "username", "fern"), Map.of("role", "TECHNICIAN"));
        step("stock");
        owner.look("new-company-stock");
        owner.follow("main a[href=\"/stock/locations/new\"]");
        page.locator("label.check:has-text(\"Fern Alderby\") input").check();
        send("/stock/locations", Map.of("name", "Van 1"), Map.of("type", "VAN"));
        step("stock");
        owner.follow("main a[href=\"/stock/items/new\"]");
        owner.look("new-company-item");
        send("/stock/items", Map.of("name", "Microfiber cloth", "code", "CLOTH"), Map.of("baseUnit", "H87"));
    }

    private static String enterACustomer() {
        step("customers");
        owner.follow("a[href=\"/customers/new\"]");
        send("/customers/save", Map.of("name", "Heron Brook"), Map.of("type", "HOUSEHOLD"));
        String customer = owner.shown();
        owner.follow("main a[href$=\"/sites/new\"]");
        send("/customers/" + customer + "/sites", Map.of("name", "Cottage"), Map.of());
        owner.follow("main a[href$=\"/surfaces/new\"]");
        owner.follow("main button[name=switch][value=WINDOW]");
        String form = page.locator("form[action$=\"/surfaces\"]").getAttribute("action");
        send(form, Map.of("name", "All round", "extent", "30"), Map.of());
        return customer;
    }

    private static int stepsLeft() {
        owner.go("worklist");
        return page.locator(".steps li:not(:has(.tag))").count();
    }

    /** Follows a step of the worklist; it is not done yet, but the stock, which takes two. */
    private static void step(String name) {
        String link = name.equals("people") ? "users" : name;
        owner.go("worklist");
        owner.follow(".steps li:not(:has(.tag)) a[href$=\"/" + link + "\"]");
    }

    private static void send(String action, Map<String, String> fields, Map<String, String> choices) {
        String form = "form[action=\"" + action + "\"] ";
        fields.forEach((name, value) -> page.fill(form + "[name=\"" + name + "\"]", value));
        choices.forEach(
                (name, value) -> page.locator(form + "[name=\"" + name + "\"]").selectOption(value));
        owner.follow(form + "button:not([type=button], [name=switch], [aria-hidden])");
        assertEquals(List.of(), page.locator(".errors").allInnerTexts(), action);
    }
}
