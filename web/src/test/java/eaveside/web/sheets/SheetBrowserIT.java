package eaveside.web.sheets;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.testing.Visitor;
import eaveside.web.visits.CrewAtWork;
import org.junit.jupiter.api.Test;

/** A sheet that is filled in on the phone: what is wrong with it is said at the thumb, and what was typed stays. */
class SheetBrowserIT extends PhoneInHand {
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
