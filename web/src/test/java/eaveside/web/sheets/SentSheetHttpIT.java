package eaveside.web.sheets;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.quotes.SiteToQuote;
import eaveside.web.testing.Visitor;
import eaveside.web.visits.CrewAtWork;
import java.io.IOException;
import java.sql.SQLException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Sheets that were sent and did not become their visits', over HTTP, on the real server. */
class SentSheetHttpIT {
    private final CrewAtWork at = CrewAtWork.shared();
    private final Visitor technician = at.technician();
    private final PhoneSheet phone = new PhoneSheet();

    /** Two phones of a crew fill one sheet. What the second one says is neither refused nor lost. */
    @Test
    void a_sheet_that_comes_second_is_kept_and_read_by_the_office() throws IOException {
        Visitor second = secondOfTheCrew();
        String visit = at.visit(CrewAtWork.TECHNICIAN + "\", \"" + userId("second.roof"));
        Map<String, String> late = phone.filled(visit);
        late.put("finding-0-type", "EXPOSED_CONDUCTOR");
        late.put("finding-0-severity", "URGENT");
        late.put("finding-0-note", "Bare wire under panel 12 of " + visit);
        late.put("note", "Gate was left open");
        Map<String, String> first = second.form("sheets/" + visit, "/sheets/" + visit);
        for (String field : List.of("line-0-done", "onSiteMinutes", "drivingMinutes", "loadingMinutes", "distance")) {
            first.put(field, late.get(field));
        }
        assertEquals(303, second.post("sheets/" + visit, first).statusCode());
        String photo = CrewAtWork.id();
        assertEquals(
                200,
                phone.send("sheets/" + visit + "/photos/" + photo, "image/png", PhoneSheet.photo())
                        .statusCode());
        late.put("finding-0-photo", photo);

        for (int i = 0; i < 2; i++) {
            var sent = phone.sendFromPhone(visit, late);
            assertEquals(200, sent.statusCode(), sent.body());
            assertEquals(
                    "/sheets/" + visit + "?done=sheets.recorded",
                    CrewAtWork.json(sent).getString("location"));
        }
        assertEquals(303, technician.post("sheets/" + visit, late).statusCode(), "without script just so");
        assertEquals("1", Visitor.value("select count(*)::text from sent_sheet where visit_id = ?::uuid", visit));
        assertEquals("1", Visitor.value("select count(*)::text from job_sheet where visit_id = ?::uuid", visit));

        var onVisit = Visitor.page(at.office().get("visits/" + visit)).select("a[href^=/visits/" + visit + "/sent/]");
        assertEquals(1, onVisit.size());
        assertTrue(onVisit.text().contains("Also recorded by"), onVisit.text());
        String page = onVisit.attr("href").substring(1);
        assertTrue(worklist().contains("Urgent finding"), worklist());
        assertEquals(
                1,
                Visitor.page(at.office().get("worklist?type=sheet"))
                        .select("td.next a[href=/" + page + "]")
                        .size());
        var read = at.office().get(page);
        String text = Visitor.text(read);
        for (String said : List.of(
                "Exposed conductor",
                "Urgent",
                "Bare wire under panel 12 of " + visit,
                "Gate was left open",
                "48",
                "120 min",
                "The visit had been signed off before")) {
            assertTrue(text.contains(said), said + " in " + text);
        }
        assertEquals(
                1,
                Visitor.page(read)
                        .select("img[src=/photos/" + photo + "/thumbnail]")
                        .size());
        assertEquals(403, technician.get(page).statusCode());

        for (int i = 0; i < 2; i++) {
            var acknowledged = at.office().post(page + "/acknowledge", Map.of("note", "Called the electrician"));
            assertEquals(303, acknowledged.statusCode(), acknowledged.body());
        }
        assertEquals(
                0,
                Visitor.page(at.office().get("worklist?type=sheet"))
                        .select("td.next a[href=/" + page + "]")
                        .size());
        assertTrue(Visitor.text(at.office().get(page)).contains("Called the electrician"));
        assertEquals(
                1,
                Visitor.page(at.office().get("visits/" + visit))
                        .select("a[href=/" + page + "]")
                        .size(),
                "it stays readable");
    }

    /** Nothing of a reversed sheet counts, and all of it stays readable: it is all there is to enter the next one from. */
    @Test
    void a_reversed_sheet_stays_readable_with_its_findings() throws IOException {
        String visit = at.visit();
        Map<String, String> form = phone.filled(visit);
        form.put("line-0-done", "46");
        form.put("line-0-skip-0-quantity", "2");
        form.put("line-0-skip-0-reason", "WEATHER");
        form.put("line-0-skip-0-note", "Hail since noon");
        form.put("extra-0-serviceItem", SiteToQuote.SKYLIGHT);
        form.put("extra-0-quantity", "4");
        form.put("extra-0-acceptedBy", "The caretaker of " + visit);
        form.put("finding-0-type", "EXPOSED_CONDUCTOR");
        form.put("finding-0-severity", "URGENT");
        form.put("finding-0-note", "Bare wire under panel 3 of " + visit);
        form.put("note", "Gate was left open");
        assertEquals(303, technician.post("sheets/" + visit, form).statusCode());
        assertEquals(
                404,
                at.office().get("visits/" + visit + "/sheets/" + form.get("id")).statusCode(),
                "it stands");
        Map<String, String> reversal =
                Visitor.form(at.office().get("visits/" + visit), "/visits/" + visit + "/sheet/reverse");
        reversal.put("reason", "Minutes of another visit");
        assertEquals(
                303,
                at.office().post("visits/" + visit + "/sheet/reverse", reversal).statusCode());

        var link = Visitor.page(at.office().get("visits/" + visit)).select("a[href^=/visits/" + visit + "/sheets/]");
        assertEquals(1, link.size());
        var read = at.office().get(link.attr("href").substring(1));
        assertEquals(200, read.statusCode());
        String text = Visitor.text(read);
        for (String said : List.of(
                "Hail since noon",
                "The caretaker of " + visit,
                "Urgent",
                "Bare wire under panel 3 of " + visit,
                "Gate was left open",
                "120 labor minutes")) {
            assertTrue(text.contains(said), said + " in " + text);
        }
        assertEquals(403, technician.get(link.attr("href").substring(1)).statusCode());
        assertEquals(
                404,
                at.office()
                        .get("visits/" + at.visit() + "/sheets/" + form.get("id"))
                        .statusCode());
    }

    @Test
    void who_bills_is_told_of_a_sheet_that_nobody_has_read() throws IOException {
        String visit = at.visit();
        Map<String, String> form = phone.filled(visit);
        assertEquals(200, phone.sendFromPhone(visit, form).statusCode());
        form.put("note", "Two hours more than I said");
        assertEquals(409, phone.sendFromPhone(visit, form).statusCode());
        at.site().published("Prices of unread sheets");
        var drafted = at.office().post("invoices/from-visit/" + visit, Map.of("id", CrewAtWork.id()));
        String draft = Visitor.location(drafted).substring(1);
        for (String page : List.of(draft, draft + "/issue")) {
            assertEquals(
                    1,
                    Visitor.page(at.office().get(page))
                            .select(".warn a[href^=/visits/" + visit + "/sent/]")
                            .size(),
                    page);
        }
        String sent = Visitor.page(at.office().get(draft))
                .select(".warn a")
                .attr("href")
                .substring(1);
        assertEquals(303, at.office().post(sent + "/acknowledge", Map.of()).statusCode());
        assertEquals(
                0,
                Visitor.page(at.office().get(draft))
                        .select(".warn a[href^=/visits/]")
                        .size());
    }

    @Test
    void a_refused_sheet_is_readable_too_until_its_mended_one_has_gone_through() {
        String visit = at.visit();
        Map<String, String> form = phone.filled(visit);
        form.put("line-0-done", "40");
        form.put("note", "Hail all over");
        for (int i = 0; i < 2; i++) {
            assertEquals(422, phone.sendFromPhone(visit, form).statusCode());
        }
        var link = Visitor.page(at.office().get("visits/" + visit)).select("a[href^=/visits/" + visit + "/sent/]");
        assertEquals(1, link.size());
        String text = Visitor.text(at.office().get(link.attr("href").substring(1)));
        assertTrue(text.contains("Hail all over") && text.contains("Of 48 planned, 40 done"), text);
        assertEquals(1, waiting(visit));

        form.put("line-0-done", "48");
        assertEquals(200, phone.sendFromPhone(visit, form).statusCode());
        assertEquals(0, waiting(visit), "it was mended");
        assertEquals("1", Visitor.value("select count(*)::text from sent_sheet where visit_id = ?::uuid", visit));
    }

    /** What a script sends is work as well: the office reads it in the words of the page. */
    @Test
    void what_a_script_sends_is_readable_where_it_was_refused_until_it_has_gone_through() {
        String visit = at.visit();
        String line = at.read(visit).getJsonArray("lines").getJsonObject(0).getString("id");
        String sheet = """
                {"id": "%s", "completedOn": "%s", "note": "Hail all over",
                 "lines": [{"line": "%s", "done": {"value": "40", "unit": "H87"},
                            "skips": [{"quantity": {"value": "3", "unit": "H87"}, "reason": "WEATHER", "note": "URGENT"}]}],
                 "items": [{"item": "%s", "quantity": {"value": "3", "unit": "OZA"}}],
                 "findings": [{"id": "%s", "type": "EXPOSED_CONDUCTOR", "severity": "URGENT", "photos": []}],
                 "count": {"document": "%s", "reason": "Spilled", "counted":
                            [{"item": "%s", "basis": "FOUND", "quantity": {"value": "805", "unit": "OZA"}}]},
                 "effort": {"onSiteMinutes": 61, "drivingMinutes": 0, "loadingMinutes": 0, "distance": {"value": "0", "unit": "SMI"}}}
                """.formatted(
                        CrewAtWork.id(),
                        SiteToQuote.today(),
                        line,
                        CrewAtWork.SOAP,
                        CrewAtWork.id(),
                        CrewAtWork.id(),
                        CrewAtWork.SOAP);
        String path = "api/visits/" + visit + "/sheet";
        for (int i = 0; i < 2; i++) {
            assertEquals(422, technician.json("PUT", path, sheet).statusCode());
        }
        String unread = sheet.replace("\"onSiteMinutes\": 61", "\"onSiteMinutes\": \"an hour\"");
        assertEquals(400, technician.json("PUT", path, unread).statusCode(), "it is no sheet at all, and is kept too");

        var kept = Visitor.page(at.office().get("visits/" + visit)).select("a[href^=/visits/" + visit + "/sent/]");
        assertEquals(2, kept.size());
        String text = kept.eachAttr("href").stream()
                .map(href -> Visitor.text(at.office().get(href.substring(1))))
                .filter(page -> page.contains("On site 61"))
                .findFirst()
                .orElseThrow();
        for (String said : List.of(
                "Hail all over",
                "Of 48 planned",
                "Done 40",
                "Skipped 3",
                "Reason weather",
                "URGENT", // a note is nobody's code
                "Quantity 3 fl oz",
                "Exposed conductor",
                "Urgent",
                "Spilled",
                "Found before 805 fl oz")) {
            assertTrue(text.contains(said), said + " in " + text);
        }
        assertEquals(
                404,
                technician
                        .json("PUT", "api/visits/" + CrewAtWork.id() + "/sheet", sheet)
                        .statusCode(),
                "a sheet of no visit is nobody's to read");

        String mended = sheet.replace("\"40\"", "\"45\"");
        var signed = technician.json("PUT", path, mended);
        assertEquals(200, signed.statusCode(), signed.body());
        assertEquals(0, waiting(visit), "it was mended");
    }

    /** However wrong a script's sheet is, it is refused in words and kept. */
    @Test
    void a_sheet_that_is_wrong_beyond_measure_is_refused_and_kept_all_the_same() {
        String visit = at.visit();
        String path = "api/visits/" + visit + "/sheet";
        String line = at.read(visit).getJsonArray("lines").getJsonObject(0).getString("id");
        String id = CrewAtWork.id();
        String sheet = """
                {"id": "%s", "completedOn": "%s", "note": "%s",
                 "lines": [{"line": "%s", "done": {"value": "48", "unit": "H87"}}],
                 "extras": [{"id": "%s", "serviceItem": "%s", "quantity": {"value": "1", "unit": "H87"}, "acceptedBy": "Ms. Quill"}],
                 "count": {"document": "%s", "reason": "Spilled", "counted":
                            [{"item": "%s", "basis": "FOUND", "quantity": {"value": "5", "unit": "OZA"}}]},
                 "effort": {"onSiteMinutes": 61, "drivingMinutes": 0, "loadingMinutes": 0, "distance": {"value": "0", "unit": "SMI"}}}
                """.formatted(
                        id,
                        SiteToQuote.today(),
                        "Seen",
                        line,
                        CrewAtWork.id(),
                        SiteToQuote.SKYLIGHT,
                        CrewAtWork.id(),
                        CrewAtWork.SOAP);
        Map<String, Integer> wrong = new LinkedHashMap<>();
        wrong.put(sheet.replace("\"note\"", "\"" + "n".repeat(12_000) + "\""), 400);
        wrong.put(sheet.replace("\"value\": \"1\"", "\"value\": \"999999999999999\""), 422);
        wrong.put(sheet.replace("\"value\": \"0\", \"unit\": \"SMI\"", "\"value\": \"99999\", \"unit\": \"SMI\""), 422);
        wrong.put(sheet.replaceFirst("(\"document\": )\"[^\"]+\"", "$1\"" + id + "\""), 422);
        wrong.forEach((body, status) -> {
            var refused = technician.json("PUT", path, body);
            assertEquals(status, refused.statusCode(), refused.body());
        });
        assertEquals(
                String.valueOf(wrong.size()),
                Visitor.value("select count(*)::text from sent_sheet where visit_id = ?::uuid", visit));

        assertEquals(400, at.office().json("PUT", path, "").statusCode());
        String deep = "{\"note\": " + "[".repeat(5_000) + "]".repeat(5_000) + "}";
        assertEquals(
                400, technician.json("PUT", path, deep).statusCode(), "no object at all: there is nothing to keep");
        assertEquals("SCHEDULED", phone.status(visit));
    }

    @Test
    void who_is_taken_off_the_crew_meanwhile_does_not_lose_the_work() throws IOException {
        String visit = at.visit();
        Map<String, String> form = phone.filled(visit);
        String second = userIdOf(secondOfTheCrew());
        assertEquals(
                303,
                at.office()
                        .post(
                                "visits/" + visit + "/reschedule",
                                Map.of("version", "1", "date", SiteToQuote.today(), "crew", second, "reason", "Sick"))
                        .statusCode());
        assertEquals(
                200,
                phone.send("sheets/" + visit + "/photos/" + CrewAtWork.id(), "image/png", PhoneSheet.photo())
                        .statusCode());
        var sent = phone.sendFromPhone(visit, form);
        assertEquals(200, sent.statusCode(), sent.body());
        assertEquals("/sheets?done=sheets.recorded", CrewAtWork.json(sent).getString("location"));
        assertEquals(1, waiting(visit));
        assertEquals(403, technician.get("sheets/" + visit).statusCode());
        assertEquals("SCHEDULED", phone.status(visit));
    }

    private int waiting(String visit) {
        return Visitor.page(at.office().get("worklist?type=sheet&show=5000"))
                .select("td.next a[href^=/visits/" + visit + "/sent/]")
                .size();
    }

    private String worklist() {
        return Visitor.text(at.office().get("worklist?type=sheet&show=5000"));
    }

    private static Visitor secondOfTheCrew() {
        return SecondOfTheCrew.ONE;
    }

    private static String userIdOf(Visitor second) {
        assertNotNull(second);
        return userId("second.roof");
    }

    private static String userId(String username) {
        return Visitor.value("select id::text from app_user where username = ?", username);
    }

    private static final class SecondOfTheCrew {
        private static final Visitor ONE = Visitor.owner().hire("Second of the Crew", "second.roof", "TECHNICIAN");
    }

    @Test
    void what_an_older_page_has_sent_is_read_in_the_words_of_today_and_stands_once_on_the_audit_log()
            throws SQLException {
        String visit = at.visit();
        Map<String, String> form = phone.filled(visit);
        form.put("line-0-done", "40");
        form.put("doneOn", form.remove("completedOn"));
        form.put("extra-0-offering", SiteToQuote.SKYLIGHT);
        form.put("extra-0-quantity", "4");
        for (int i = 0; i < 2; i++) {
            assertEquals(422, phone.sendFromPhone(visit, form).statusCode());
        }

        String page = Visitor.page(at.office().get("visits/" + visit))
                .select("a[href^=/visits/" + visit + "/sent/]")
                .attr("href")
                .substring(1);
        String text = Visitor.text(at.office().get(page));
        assertTrue(text.contains("Date completed ") && !text.contains("doneOn"), text);
        assertTrue(text.contains("Service ") && !text.contains("offering"), text);
        assertEquals(1, at.site().audited("visit.sheet-recorded", "DONE", visit));

        for (int i = 0; i < 2; i++) {
            assertEquals(303, at.office().post(page + "/acknowledge", Map.of()).statusCode());
        }
        assertEquals(1, at.site().audited("visit.sheet-read", "DONE", page.substring(page.lastIndexOf('/') + 1)));
        assertEquals(
                422,
                at.office()
                        .post(page + "/acknowledge", Map.of("note", "n".repeat(2001)))
                        .statusCode());
    }
}
