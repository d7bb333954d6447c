package eaveside.web.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.Page;
import eaveside.web.testing.Browser;
import eaveside.web.testing.LooksAtDemo;
import eaveside.web.testing.Server;
import eaveside.web.testing.Visitor;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/** The search by keyboard alone, and the menu where there is little room; one test after the other, since they share a browser. */
@LooksAtDemo
class SearchBrowserIT {
    private static final Server DEMO = Server.demo();
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
    @Execution(ExecutionMode.SAME_THREAD)
    void a_customer_who_calls_is_opened_by_keyboard_alone() {
        String digits = Visitor.value(DEMO, "select phone from customer where name = 'Larchwick Apartments'")
                .replaceAll("[^0-9]", "");
        try (var desk = browser.desk()) {
            Page page = Browser.signIn(desk, DEMO, "edda", DEMO.passwordOf("edda"));
            page.navigate(DEMO.at("settings").toString());
            page.keyboard().press("/");
            page.keyboard().type(digits);
            page.waitForSelector("#hit-list[data-for='" + digits + "'] [aria-selected=true]");
            assertEquals(List.of(), Browser.faults(page));
            page.keyboard().press("Enter");
            page.waitForURL("**/customers/*");
            assertEquals("Larchwick Apartments", page.locator("h1").innerText());
        }
    }

    @Test
    @Execution(ExecutionMode.SAME_THREAD)
    void arrows_go_through_what_is_found_and_escape_closes_it() {
        try (var desk = browser.desk()) {
            Page page = Browser.signIn(desk, DEMO, "edda", DEMO.passwordOf("edda"));
            page.navigate(DEMO.at("worklist").toString());
            page.keyboard().press("/");
            page.keyboard().type("larch");
            page.waitForSelector("#hit-list[data-for=larch]");
            String first = page.locator("[role=option][aria-selected=true]").innerText();
            page.keyboard().press("ArrowDown");
            String second = page.locator("[role=option][aria-selected=true]").innerText();
            assertTrue(!first.equals(second), first);
            assertEquals(
                    page.locator("[role=option][aria-selected=true]").getAttribute("id"),
                    page.locator("#find").getAttribute("aria-activedescendant"));
            page.keyboard().press("ArrowUp");
            assertEquals(
                    first, page.locator("[role=option][aria-selected=true]").innerText());
            page.keyboard().press("Escape");
            assertEquals("false", page.locator("#find").getAttribute("aria-expanded"));
            assertTrue(page.locator("#hit-list").isHidden());
        }
    }

    @Test
    @Execution(ExecutionMode.SAME_THREAD)
    void a_slash_that_is_typed_into_a_field_stays_a_slash() {
        try (var desk = browser.desk()) {
            Page page = Browser.signIn(desk, DEMO, "edda", DEMO.passwordOf("edda"));
            page.navigate(DEMO.at("customers").toString());
            page.focus("#q");
            page.keyboard().type("a/b");
            assertEquals("a/b", page.inputValue("#q"));
        }
    }

    @Test
    @Execution(ExecutionMode.SAME_THREAD)
    void on_a_phone_the_menu_folds_and_is_reached_by_keyboard() {
        try (var phone = browser.phone()) {
            Page page = Browser.signIn(phone, DEMO, "edda", DEMO.passwordOf("edda"));
            page.navigate(DEMO.at("worklist").toString());
            assertTrue(page.locator("#menu").isHidden());
            page.focus("button[popovertarget=menu]");
            page.keyboard().press("Enter");
            assertTrue(page.locator("#menu").isVisible());
            assertEquals(List.of(), Browser.faults(page));
            page.keyboard().press("Escape");
            assertTrue(page.locator("#menu").isHidden());
            page.click("button[popovertarget=menu]");
            page.click("#menu a[href='/customers']");
            page.waitForURL("**/customers");
        }
    }

    @Test
    @Execution(ExecutionMode.SAME_THREAD)
    void the_way_back_to_a_list_keeps_its_filter_and_place() {
        try (var desk = browser.desk()) {
            Page page = Browser.signIn(desk, DEMO, "edda", DEMO.passwordOf("edda"));
            page.navigate(DEMO.at("quotes?status=ACCEPTED").toString());
            page.evaluate("scrollTo(0, 400)");
            page.locator("#found tbody a").nth(12).click();
            page.waitForURL("**/quotes/*-*");
            page.click(".crumbs a >> nth=0");
            page.waitForURL("**/quotes?status=ACCEPTED");
            page.waitForFunction("scrollY > 300");
        }
    }

    @Test
    @Execution(ExecutionMode.SAME_THREAD)
    void columns_are_chosen_and_kept_in_the_address_and_the_file() {
        try (var desk = browser.desk()) {
            Page page = Browser.signIn(desk, DEMO, "edda", DEMO.passwordOf("edda"));
            page.navigate(DEMO.at("payments").toString());
            int all = page.locator("#found thead th").count();
            page.click("details.columns summary");
            page.locator("details.columns input[name=cols]").last().uncheck();
            assertEquals(List.of(), Browser.faults(page));
            page.click("details.columns button");
            page.waitForURL("**/payments?*cols=*");
            assertEquals(all - 1, page.locator("#found thead th").count());
            assertTrue(page.locator("#csv").getAttribute("href").contains("cols="));
        }
    }

    @Test
    @Execution(ExecutionMode.SAME_THREAD)
    void a_list_that_comes_whole_is_sorted_by_the_head_of_a_column_and_back() {
        try (var desk = browser.desk()) {
            Page page = Browser.signIn(desk, DEMO, "edda", DEMO.passwordOf("edda"));
            page.navigate(DEMO.at("settings/users").toString());
            page.click("#found thead th a >> nth=0");
            page.waitForURL("**/settings/users?sort=*");
            List<String> up = page.locator("#found tbody tr td:first-child").allInnerTexts();
            assertEquals(up.stream().sorted(String.CASE_INSENSITIVE_ORDER).toList(), up);
            assertEquals("ascending", page.locator("#found thead th >> nth=0").getAttribute("aria-sort"));
            page.click("#found thead th a >> nth=0");
            page.waitForURL("**/settings/users?sort=-*");
            assertEquals(
                    up.reversed(),
                    page.locator("#found tbody tr td:first-child").allInnerTexts());
        }
    }
}
