package eaveside.web.walkthrough;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import eaveside.web.testing.Browser;
import eaveside.web.testing.OnDemo;
import eaveside.web.testing.Server;
import eaveside.web.testing.Visitor;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** How many keys and clicks the most frequent jobs take, each counted as a hand would make it. */
@OnDemo
class KeystrokesBrowserIT {
    private static final Server DEMO = Server.demo();
    private static Browser browser;

    @BeforeAll
    static void start() {
        browser = new Browser(DEMO.clock());
    }

    @AfterAll
    static void stop() {
        browser.close();
    }

    /** Counts what the hands do. */
    private static final class Hands {
        private final Page page;
        private int count;

        Hands(Page page) {
            this.page = page;
        }

        void press(String key) {
            page.keyboard().press(key);
            count++;
        }

        void type(String text) {
            page.keyboard().type(text);
            count += text.length();
        }

        void click(Locator where) {
            where.click();
            count++;
        }

        /** A list that drops down takes a click to open it and one to choose. */
        void choose(Locator where, int option) {
            where.selectOption(new com.microsoft.playwright.options.SelectOption().setIndex(option));
            count += 2;
        }
    }

    /** A customer whose last four digits nobody else's phone ends with, with one site that has windows. */
    private static String customer() {
        return Visitor.value(
                DEMO,
                "select c.id::text from customer c where c.active and c.merged_into is null"
                        + " and (select count(*) from site s where s.customer_id = c.id) = 1"
                        + " and exists (select 1 from site s join surface f on f.site_id = s.id where s.customer_id = c.id"
                        + "   and f.type = 'WINDOW' and f.active)"
                        + " and not exists (select 1 from customer o where o.id <> c.id and right(o.phone, 4) = right(c.phone, 4))"
                        + " and not exists (select 1 from contact o where right(o.phone, 4) = right(c.phone, 4))"
                        + " order by c.name limit 1");
    }

    private static void find(Hands hands, String typed) {
        hands.press("/");
        hands.type(typed);
        hands.page.waitForSelector("#hit-list[data-for='" + typed + "'] [aria-selected=true]");
        hands.press("Enter");
        hands.page.waitForURL("**/customers/*");
    }

    @Test
    void a_customer_is_found_by_phone_and_scheduled_within_twelve() {
        String customer = customer();
        String phone = Visitor.value(DEMO, "select phone from customer where id = ?::uuid", customer);
        String name = Visitor.value(DEMO, "select name from customer where id = ?::uuid", customer);
        try (var desk = browser.desk()) {
            Page page = Browser.signIn(desk, DEMO, "petra", DEMO.passwordOf("petra"));
            Hands hands = new Hands(page);
            find(hands, phone.substring(phone.length() - 4));
            assertEquals(name, page.locator("h1").innerText());
            hands.click(page.locator(".head .actions a[href^='/visits/new']"));
            hands.choose(page.locator("select[name$=serviceItem]").first(), 1);
            hands.click(page.locator("input[name=crew]").first());
            hands.click(page.locator("main form .actions button"));
            page.waitForURL("**/visits/*?done=*");
            assertTrue(hands.count <= 12, hands.count + " keys and clicks");
        }
    }

    @Test
    void a_known_site_is_quoted_with_three_services_within_fifteen() {
        String customer = Visitor.value(
                DEMO,
                "select c.id::text from customer c join site s on s.customer_id = c.id join surface f on f.site_id = s.id"
                        + " where c.active and c.merged_into is null and f.active"
                        + " group by c.id having count(distinct s.id) = 1 and count(distinct f.type) >= 2 order by min(c.name) limit 1");
        String name = Visitor.value(DEMO, "select name from customer where id = ?::uuid", customer);
        try (var desk = browser.desk()) {
            Page page = Browser.signIn(desk, DEMO, "petra", DEMO.passwordOf("petra"));
            Hands hands = new Hands(page);
            String[] words = name.toLowerCase(java.util.Locale.ROOT).split(" ");
            find(
                    hands,
                    words[0].substring(0, Math.min(3, words[0].length())) + " "
                            + words[words.length - 1].substring(0, 2));
            assertEquals(name, page.locator("h1").innerText());
            hands.click(page.locator(".head .actions a[href^='/quotes/new']"));
            Locator boxes = page.locator("#lines input[type=checkbox]:not(:checked)");
            for (int i = 0; i < 3; i++) {
                hands.click(boxes.first());
            }
            hands.click(page.locator("main form .actions button").first());
            page.waitForURL("**/quotes/*-*?done=*");
            assertTrue(hands.count <= 15, hands.count + " keys and clicks");
        }
    }

    @Test
    void a_clean_visit_is_billed_with_two() {
        try (var desk = browser.desk()) {
            Page page = Browser.signIn(desk, DEMO, "petra", DEMO.passwordOf("petra"));
            page.navigate(DEMO.at("worklist").toString());
            Hands hands = new Hands(page);
            hands.click(page.locator("button[name=only]").first());
            page.waitForURL("**/invoices/*/issue");
            hands.click(page.locator("main form .actions button"));
            page.waitForURL("**/invoices/*-*?done=*");
            assertEquals(2, hands.count);
            assertTrue(
                    page.locator("h1").innerText().startsWith("Invoice "),
                    page.locator("h1").innerText());
        }
    }
}
