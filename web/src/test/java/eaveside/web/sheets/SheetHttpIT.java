package eaveside.web.sheets;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.quotes.SiteToQuote;
import eaveside.web.testing.Visitor;
import eaveside.web.visits.CrewAtWork;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Stream;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.Test;

/** The technician's sheet over HTTP, on the real server. */
class SheetHttpIT {
    private final CrewAtWork at = CrewAtWork.shared();
    private final Visitor technician = at.technician();
    private final PhoneSheet phone = new PhoneSheet();

    @Test
    void a_technician_sees_the_own_sheets_of_the_day_and_no_money() throws SQLException {
        String mine = at.visit();
        String others = at.visit(Visitor.value("select id::text from app_user where username = 'quotes.office'"));
        var list = technician.get("sheets");
        assertEquals(200, list.statusCode());
        assertEquals(
                1, Visitor.page(list).select("a[href=/sheets/" + mine + "]").size());
        assertEquals(
                0, Visitor.page(list).select("a[href=/sheets/" + others + "]").size());
        assertEquals("no-store", list.headers().firstValue("cache-control").orElse(""));

        var sheet = technician.get("sheets/" + mine);
        String text = Visitor.text(sheet);
        assertTrue(text.contains("Steep north roof") && text.contains("Gate code at the desk"), text);
        assertTrue(text.indexOf("Work safely") < text.indexOf("Planned work"), "cautions come first");
        assertFalse(text.contains("$"), text);

        assertEquals(403, technician.get("sheets/" + others).statusCode());
        assertEquals(1, at.site().audited("access.get", "REFUSED", "/sheets/" + others));
        assertEquals(200, at.office().get("sheets/" + mine).statusCode());
        assertEquals(404, technician.get("sheets/" + CrewAtWork.id()).statusCode());
        assertEquals(200, technician.get("sheets?day=2026-01-01").statusCode());
    }

    @Test
    void a_plain_form_signs_off_once_however_often_it_is_sent() {
        String visit = at.visit();
        Map<String, String> form = phone.filled(visit);
        form.put("line-0-done", "46");
        form.put("line-0-skip-0-quantity", "2");
        form.put("line-0-skip-0-reason", "CRACKED");
        form.put("line-0-skip-0-note", "Row two, far end");
        form.put("line-0-skip-0-customerNotified", "yes");
        form.put("extra-0-serviceItem", SiteToQuote.SKYLIGHT);
        form.put("extra-0-quantity", "3");
        form.put("extra-0-surface", "new");
        form.put("extra-0-name", "Shed skylights " + visit);
        form.put("extra-0-there", "5");
        form.put("extra-0-acceptedBy", "Ms. Quill");
        form.put("reading-0-tapWater", "310");
        form.put("reading-0-pureWater", "4");
        form.put("reading-0-volume", "20");
        form.put("reading-0-canister", CrewAtWork.CANISTER);
        form.put("mix-0-mix", CrewAtWork.MIX);
        form.put("mix-0-volume", "2");
        form.put("finding-0-type", "BLOCKED_GUTTER");
        form.put("finding-0-severity", "SOON");
        form.put("finding-0-note", "Leaves");
        form.put("note", "Came late");

        for (int i = 0; i < 2; i++) {
            var signed = technician.post("sheets/" + visit, form);
            assertEquals("/sheets/" + visit + "?done=sheets.signed", Visitor.location(signed), signed.body());
        }

        assertEquals("COMPLETED", phone.status(visit));
        assertEquals("1", Visitor.value("select count(*)::text from job_sheet where visit_id = ?::uuid", visit));
        assertEquals("2", Visitor.value("select count(*)::text from finding where visit_id = ?::uuid", visit));
        assertEquals(
                "true",
                Visitor.value(
                        "select customer_notified::text from finding where visit_id = ?::uuid and type_code = 'CRACKED_GLASS'",
                        visit));
        assertEquals(
                "5",
                Visitor.value("select trunc(extent)::text from surface where name = ?", "Shed skylights " + visit));
        String signed = Visitor.text(technician.get("sheets/" + visit));
        assertTrue(signed.contains("46 of 48 done") && signed.contains("Row two, far end"), signed);
        // (310 − 4) ppm in 20 US gallons: 306 × 20 ÷ 17.118 grains, the factor of the two units' definitions.
        assertTrue(signed.contains("about 358") && signed.contains("grains of dissolved solids"), signed);
        assertFalse(signed.contains("$"), signed);

        form.put("note", "Another story");
        var other = technician.post("sheets/" + visit, form);
        assertEquals(409, other.statusCode());
        assertEquals("Another story", Visitor.form(other, "/sheets/" + visit).get("note"));
        String why = Visitor.text(other);
        assertTrue(why.contains("signed off before, with other entries") && !why.contains(form.get("id")), why);
        // Who sends it once more has read that the office has it, and there is nothing else that could be done with it.
        assertEquals(
                "/sheets/" + visit + "?done=sheets.recorded",
                Visitor.location(technician.post("sheets/" + visit, form)));
        assertEquals("1", Visitor.value("select count(*)::text from sent_sheet where visit_id = ?::uuid", visit));
    }

    @Test
    void what_does_not_add_up_is_said_at_its_field_and_nothing_typed_is_lost() {
        String visit = at.visit();
        Map<String, String> form = phone.filled(visit);
        form.put("line-0-done", "40");
        form.put("extra-0-serviceItem", SiteToQuote.SKYLIGHT);
        form.put("extra-0-quantity", "4");
        form.put("note", "Still here");

        var refused = technician.post("sheets/" + visit, form);

        assertEquals(422, refused.statusCode());
        var page = Visitor.page(refused);
        assertTrue(page.getElementById("line-0-done-error").text().contains("Of 48 planned, 40 done and 0 skipped"));
        assertNotNull(page.getElementById("extra-0-acceptedBy-error"));
        Map<String, String> again = Visitor.form(refused, "/sheets/" + visit);
        assertEquals("Still here", again.get("note"));
        assertEquals("4", again.get("extra-0-quantity"));
        assertEquals(form.get("id"), again.get("id"));
        assertEquals("SCHEDULED", phone.status(visit));
    }

    @Test
    void without_script_another_row_is_one_press_away() {
        String visit = at.visit();
        Map<String, String> form = phone.filled(visit);
        form.put("more", "extra");

        var more = technician.post("sheets/" + visit, form);

        assertEquals(200, more.statusCode());
        Map<String, String> again = Visitor.form(more, "/sheets/" + visit);
        assertTrue(again.containsKey("extra-1-acceptedBy"));
        assertFalse(again.get("extra-1-id").equals(again.get("extra-0-id")));
        assertEquals("48", again.get("line-0-done"));
    }

    @Test
    void a_service_line_that_the_visit_does_not_have_is_told_at_its_row() {
        String visit = at.visit();
        Map<String, String> form = phone.filled(visit);
        form.put("item-1-item", CrewAtWork.SOAP);
        form.put("item-1-quantity", "1");
        form.put(
                "item-1-line",
                Visitor.value(
                        "select id::text from service_line where id not in"
                                + " (select service_line_id from visit_line where visit_id = ?::uuid) limit 1",
                        visit));

        var refused = technician.post("sheets/" + visit, form);

        assertEquals(422, refused.statusCode(), refused.body());
        assertEquals(
                List.of("#item-1-line"),
                Visitor.page(refused).select(".errors a").eachAttr("href"));
        Element select = Visitor.page(refused).getElementById("item-1-line");
        assertEquals("true", select.attr("aria-invalid"));
        assertTrue(
                Visitor.page(refused)
                        .getElementById(select.attr("aria-describedby"))
                        .text()
                        .endsWith("must be one that the visit has work of, or none"),
                refused.body());
    }

    @Test
    void a_van_that_holds_more_than_its_books_is_counted_on_the_sheet() {
        String visit = at.visit();
        Map<String, String> form = phone.filled(visit);
        form.put("mix-0-mix", CrewAtWork.MIX);
        form.put("mix-0-volume", "200");

        var short200 = technician.post("sheets/" + visit, form);
        assertEquals(422, short200.statusCode());
        assertTrue(
                Visitor.page(short200).getElementById("used-error").text().contains("fl oz of Van soap in Test van"),
                short200.body());

        form.put("count-0-item", CrewAtWork.SOAP);
        form.put("count-0-found", "900");
        form.put("count-reason", "A drum nobody booked");
        assertEquals(303, technician.post("sheets/" + visit, form).statusCode());
        assertTrue(Visitor.text(at.office().get("visits/" + visit)).contains("A drum nobody booked"));
    }

    @Test
    void the_phone_is_told_in_json_and_may_send_again() {
        String visit = at.visit();
        Map<String, String> form = phone.filled(visit);
        form.put("line-0-done", "");
        var refused = phone.sendFromPhone(visit, form);
        assertEquals(422, refused.statusCode());
        assertEquals(
                "Done of 48 in row 1 is required",
                CrewAtWork.json(refused).getJsonObject("errors").getString("line-0-done"),
                "the field by the name that the page has for it");

        form.put("line-0-done", "48");
        form.put("signer", CrewAtWork.id());
        assertEquals(401, phone.sendFromPhone(visit, form).statusCode(), "somebody else has signed in meanwhile");

        form.put("signer", CrewAtWork.TECHNICIAN);
        for (int i = 0; i < 2; i++) {
            var sent = phone.sendFromPhone(visit, form);
            assertEquals(200, sent.statusCode(), sent.body());
            assertEquals(
                    "/sheets/" + visit + "?done=sheets.signed",
                    CrewAtWork.json(sent).getString("location"));
        }
        form.put("note", "Something else");
        assertEquals(409, phone.sendFromPhone(visit, form).statusCode());

        var expired = Visitor.stranger().post("sheets/" + visit, form);
        assertEquals(401, expired.statusCode());
    }

    @Test
    void a_consumable_that_is_named_needs_its_amount() {
        String visit = at.visit();
        Map<String, String> form = phone.filled(visit);
        form.put("mix-0-mix", CrewAtWork.MIX);
        form.put("item-0-item", CrewAtWork.SOAP);
        form.put("count-0-item", CrewAtWork.SOAP);

        var page = Visitor.page(technician.post("sheets/" + visit, form));

        for (String field : List.of("mix-0-volume", "item-0-quantity", "count-0-found")) {
            assertNotNull(
                    page.getElementById(field + "-error"),
                    field + " in " + page.select(".errors").text());
        }
        assertEquals("SCHEDULED", phone.status(visit));
    }

    @Test
    void what_is_said_without_its_thing_is_asked_for_and_not_dropped() {
        String visit = at.visit();
        Map<String, String> form = phone.filled(visit);
        form.put("finding-0-severity", "URGENT");
        form.put("count-reason", "A drum nobody booked");

        var page = Visitor.page(technician.post("sheets/" + visit, form));

        for (String field : List.of("finding-0-type", "count-0-item")) {
            assertNotNull(
                    page.getElementById(field + "-error"),
                    field + " in " + page.select(".errors").text());
        }
    }

    @Test
    void the_day_of_the_work_must_make_sense() {
        String visit = at.visit();
        LocalDate today = LocalDate.parse(SiteToQuote.today());
        for (LocalDate day : List.of(today.plusDays(1), today.minusDays(15), today.minusYears(1))) {
            Map<String, String> form = phone.filled(visit);
            form.put("completedOn", day.toString());
            var refused = technician.post("sheets/" + visit, form);
            assertEquals(422, refused.statusCode(), refused.body());
            assertNotNull(Visitor.page(refused).getElementById("completedOn-error"), day.toString());
        }
        assertEquals("SCHEDULED", phone.status(visit));
    }

    @Test
    void the_worker_is_served_for_the_pages_below_the_root() {
        var worker = Visitor.stranger().get("sheet-worker.js");
        assertEquals(200, worker.statusCode());
        assertTrue(worker.headers().firstValue("content-type").orElse("").startsWith("text/javascript"));
    }

    /** A phone may keep a sheet for days, and past a change of the page's names. */
    @Test
    void a_sheet_that_an_older_page_has_kept_is_understood() {
        String visit = at.visit();
        Map<String, String> form = phone.filled(visit);
        form.put("place", form.remove("location"));
        form.put("doneOn", form.remove("completedOn"));
        form.put("extra-0-offering", SiteToQuote.SKYLIGHT);
        form.remove("extra-0-serviceItem");
        form.put("extra-0-quantity", "3");
        form.put("extra-0-acceptedBy", "Ms. Quill");
        form.put("finding-0-kind", "RUST");
        form.remove("finding-0-type");
        form.put("finding-0-severity", "NOTE");
        form.put("reading-0-feed", "310");
        form.put("reading-0-product", "4");
        form.put("reading-0-volume", "20");
        form.remove("reading-0-tapWater");
        form.remove("reading-0-pureWater");

        var sent = phone.sendFromPhone(visit, form);

        assertEquals(200, sent.statusCode(), sent.body());
        String signed = Visitor.text(technician.get("sheets/" + visit));
        assertTrue(signed.contains("Ms. Quill") && signed.contains("Rust") && signed.contains("310"), signed);
    }

    @Test
    void every_error_names_its_field_as_the_page_does() {
        String visit = at.visit();
        Map<String, String> form = phone.filled(visit);
        form.put("onSiteMinutes", "");
        form.put("reading-0-tapWater", "4");
        form.put("reading-0-pureWater", "310");
        form.put("reading-0-volume", "20");
        form.put("mix-0-volume", "2");
        form.put("extra-0-serviceItem", SiteToQuote.SKYLIGHT);
        form.put("extra-0-quantity", "0");
        form.put("extra-0-surface", "new");

        var errors = CrewAtWork.json(phone.sendFromPhone(visit, form)).getJsonObject("errors");

        assertEquals("On site is required", errors.getString("onSiteMinutes"));
        assertTrue(errors.getString("reading-0-pureWater").startsWith("Pure water TDS in row 1 "), errors.toString());
        assertEquals("Mix in row 1 is required", errors.getString("mix-0-mix"));
        assertEquals("Accepted by in row 1 is required", errors.getString("extra-0-acceptedBy"));
        assertEquals("Surface name in row 1 is required", errors.getString("extra-0-name"));

        form.put("extra-0-acceptedBy", "Ms. Quill");
        form.put("extra-0-name", "Shed skylights " + visit);
        errors = CrewAtWork.json(phone.sendFromPhone(visit, form)).getJsonObject("errors");
        assertEquals("Quantity in row 1 must be greater than zero", errors.getString("extra-0-quantity"));
    }

    @Test
    void the_same_form_sent_twice_at_once_signs_off_once_and_answers_both_alike() {
        String visit = at.visit();
        Map<String, String> form = phone.filled(visit);
        form.put("extra-0-serviceItem", SiteToQuote.SKYLIGHT);
        form.put("extra-0-quantity", "3");
        form.put("extra-0-acceptedBy", "Ms. Quill");

        var both = Stream.of(1, 2)
                .map(i -> CompletableFuture.supplyAsync(() -> phone.sendFromPhone(visit, form)))
                .toList();

        for (var answer : both) {
            assertEquals(200, answer.join().statusCode(), answer.join().body());
            assertEquals(
                    "/sheets/" + visit + "?done=sheets.signed",
                    CrewAtWork.json(answer.join()).getString("location"));
        }
        assertEquals("1", Visitor.value("select count(*)::text from job_sheet where visit_id = ?::uuid", visit));
    }
}
