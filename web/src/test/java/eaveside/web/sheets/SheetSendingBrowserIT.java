package eaveside.web.sheets;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Route;
import eaveside.web.testing.Browser;
import eaveside.web.testing.Server;
import eaveside.web.testing.Visitor;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.Test;

/** A sheet that is kept on the phone until it has gone through: by itself, once, and to be read whatever becomes of it. */
class SheetSendingBrowserIT extends PhoneInHand {
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

    /** A touch after signing off without signal: what is shown is not what would be sent, and both places say so. */
    @Test
    void a_sheet_that_is_changed_after_signing_off_says_that_it_is_not_signed_off_any_more() {
        String visit = open();
        awaitKeptPage();
        Page list = context.newPage();
        list.navigate(address("sheets"));
        fill();
        context.setOffline(true);
        page.click(".bottom button");
        thumbSays("waiting for signal");
        page.fill("#onSiteMinutes", "125");
        thumbSays("Changed after signing off, and not sent");
        look("waiting-changed");
        list.locator("#unsent [data-open]").waitFor();
        assertTrue(list.locator("#unsent [data-open]").getAttribute("href").endsWith(visit));
        list.close(); // or it would be the one that sends
        context.setOffline(false);
        page.click(".bottom button");
        page.waitForURL(url -> url.contains("done=sheets.signed"), new Page.WaitForURLOptions().setTimeout(60_000));
        assertEquals(
                "125", Visitor.value("select on_site_minutes::text from job_sheet where visit_id = ?::uuid", visit));
    }

    /** The answer to what was sent is none to what was entered since. */
    @Test
    void what_is_changed_while_the_sheet_is_on_its_way_is_not_thrown_away() {
        String visit = open();
        fill();
        CountDownLatch arrived = new CountDownLatch(1);
        List<Route> held = new ArrayList<>();
        context.route("**/sheets/" + visit, route -> {
            if (route.request().method().equals("POST") && held.isEmpty()) {
                held.add(route);
                arrived.countDown();
            } else {
                route.resume();
            }
        });
        page.click(".bottom button");
        page.waitForCondition(() -> arrived.getCount() == 0);
        page.fill("#note", "One pane is cracked");
        held.getFirst().resume();
        page.waitForCondition(() -> sheetsOf(visit) == 1);
        thumbSays("Changed after signing off, and not sent");
        assertEquals("One pane is cracked", page.inputValue("#note"));
        page.click(".bottom button");
        page.locator(".errors")
                .filter(new Locator.FilterOptions().setHasText("The office reads what you entered here"))
                .waitFor();
        assertEquals(
                "1",
                Visitor.value(
                        "select count(*)::text from sent_sheet s join sent_sheet_field f on f.sent_sheet_id = s.id"
                                + " where s.visit_id = ?::uuid and f.name = 'note' and f.value = 'One pane is cracked'",
                        visit));
    }

    /** The other page of the same phone may be the one that sends. */
    @Test
    void what_is_wrong_is_shown_on_the_page_that_has_the_form_whichever_page_has_sent() {
        Page list = context.newPage();
        list.navigate(address("sheets"));
        String visit = open();
        fill();
        page.evaluate("() => navigator.locks.request = (name, options, deed) => deed(null)"); // the list holds the lock
        unfold("#water");
        page.fill("#reading-0-tapWater", "5");
        page.fill("#reading-0-pureWater", "50");
        page.fill("#reading-0-volume", "10");
        page.click(".bottom button");
        page.locator(".errors a[href='#reading-0-pureWater'], #reading-0-pureWater-error")
                .first()
                .waitFor();
        assertEquals(0, sheetsOf(visit));
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
        // The page may know the answer before the browser tells that there was one.
        list.waitForCondition(() -> !fromList.isEmpty());
        assertEquals(1, fromList.size(), fromList.toString());
    }

    /** After a month the browser has dropped the cookie: what would be too large from a stranger is no fault of the photo. */
    @Test
    void without_the_cookie_of_a_session_nothing_leaves_the_sheet_until_somebody_signs_in() {
        String visit = open();
        awaitKeptPage();
        fill();
        context.setOffline(true);
        takePhoto("image/png", noise());
        page.locator("#findings .shot img").first().waitFor();
        page.click(".bottom button");
        thumbSays("waiting for signal");
        context.clearCookies(new BrowserContext.ClearCookiesOptions().setName("eaveside"));
        context.setOffline(false);
        thumbSays("sign in to send it");
        assertEquals(1, page.locator("#findings .shot img").count());
        assertTrue(sent.stream().allMatch(s -> s.startsWith("401 ")), sent.toString());
        look("cookie-gone");
        page.navigate(address("sign-in?to=/sheets/" + visit));
        page.fill("#username", "quotes.technician");
        page.fill("#password", Server.OWNER_PASSWORD);
        page.click("form[action='/sign-in'] button");
        page.waitForURL(url -> url.contains("done=sheets.signed"), new Page.WaitForURLOptions().setTimeout(60_000));
        assertEquals(1, sheetsOf(visit));
        assertEquals("1", photosOf(visit));
    }

    /** A proxy answers for a server that is away: what the phone has kept is shown all the same. */
    @Test
    void the_kept_sheet_is_shown_while_a_proxy_stands_before_nothing() {
        String visit = open();
        awaitKeptPage();
        fill();
        int[] asked = {0};
        context.route("**/sheets/" + visit, route -> {
            asked[0]++;
            route.fulfill(new Route.FulfillOptions()
                    .setStatus(503)
                    .setContentType("text/html")
                    .setBody("<h1>Not we</h1>"));
        });
        page.navigate(address("sheets/" + visit));
        assertEquals("120", page.inputValue("#onSiteMinutes"));
        assertTrue(asked[0] > 0, "the proxy has answered");
    }

    @Test
    void a_server_that_is_down_is_tried_again_too() {
        String visit = open();
        awaitKeptPage();
        fill();
        int[] tries = {0};
        context.route("**/sheets/" + visit, route -> {
            if (route.request().method().equals("POST") && ++tries[0] <= 3) {
                // Also what is not from us: a server without the program yet, and whoever stands between.
                route.fulfill(new Route.FulfillOptions()
                        .setStatus(List.of(503, 404, 200).get(tries[0] - 1))
                        .setContentType("text/html")
                        .setBody("<h1>Not we</h1>"));
            } else {
                route.resume();
            }
        });
        page.click(".bottom button");
        page.waitForURL(url -> url.contains("done=sheets.signed"), new Page.WaitForURLOptions().setTimeout(60_000));
        assertEquals(4, tries[0]);
        assertEquals(1, sheetsOf(visit));
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
        for (int i = 0; i < 3; i++) {
            open(); // what is begun for other visits is not what stands here
            page.fill("#note", "Begun");
        }
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
            page.locator("td.next a[href^=\"/visits/" + visit + "/sent/\"]").click();
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
}
