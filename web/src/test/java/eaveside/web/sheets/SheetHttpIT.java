package eaveside.web.sheets;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.quotes.SiteToQuote;
import eaveside.web.testing.Server;
import eaveside.web.testing.Visitor;
import eaveside.web.visits.CrewAtWork;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;

/** The technician's sheet over HTTP, on the real server. */
class SheetHttpIT {
    private final CrewAtWork at = CrewAtWork.shared();
    private final Visitor technician = at.technician();
    private final HttpClient phone = at.site().technician();

    /** The form with everything done as planned and the time told. */
    private Map<String, String> filled(String visit) {
        Map<String, String> form = technician.form("sheets/" + visit, "/sheets/" + visit);
        form.put("line-0-done", "48");
        form.put("onSiteMinutes", "120");
        form.put("drivingMinutes", "40");
        form.put("loadingMinutes", "0");
        form.put("distance", "12.5");
        return form;
    }

    private String status(String visit) {
        return at.read(visit).getString("status");
    }

    private HttpResponse<String> send(String path, String type, byte[] body) {
        Server server = Server.shared();
        return server.send(
                phone,
                HttpRequest.newBuilder(server.at(path))
                        .header("Content-Type", type)
                        .header("Accept", "application/json")
                        .header("Sec-Fetch-Site", "same-origin")
                        .POST(BodyPublishers.ofByteArray(body))
                        .build());
    }

    private HttpResponse<String> sendFromPhone(String visit, Map<String, String> form) {
        String body = form.entrySet().stream()
                .map(f -> URLEncoder.encode(f.getKey(), StandardCharsets.UTF_8) + "="
                        + URLEncoder.encode(f.getValue(), StandardCharsets.UTF_8))
                .collect(Collectors.joining("&"));
        return send("sheets/" + visit, "application/x-www-form-urlencoded", body.getBytes(StandardCharsets.UTF_8));
    }

    private static byte[] photo() throws IOException {
        var picture = new BufferedImage(400, 300, BufferedImage.TYPE_INT_RGB);
        var out = new ByteArrayOutputStream();
        ImageIO.write(picture, "png", out);
        return out.toByteArray();
    }

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
        Map<String, String> form = filled(visit);
        form.put("line-0-done", "46");
        form.put("line-0-skip-0-quantity", "2");
        form.put("line-0-skip-0-reason", "CRACKED");
        form.put("line-0-skip-0-note", "Row two, far end");
        form.put("line-0-skip-0-told", "yes");
        form.put("extra-0-serviceItem", SiteToQuote.SKYLIGHT);
        form.put("extra-0-quantity", "3");
        form.put("extra-0-surface", "new");
        form.put("extra-0-name", "Shed skylights " + visit);
        form.put("extra-0-there", "5");
        form.put("extra-0-agreed", "Ms. Quill");
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

        assertEquals("COMPLETED", status(visit));
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
        assertTrue(signed.contains("about 358") && signed.contains("gr of dissolved solids"), signed);
        assertFalse(signed.contains("$"), signed);

        form.put("note", "Another story");
        var other = technician.post("sheets/" + visit, form);
        assertEquals(409, other.statusCode());
        assertEquals("Another story", Visitor.form(other, "/sheets/" + visit).get("note"));
    }

    @Test
    void what_does_not_add_up_is_said_at_its_field_and_nothing_typed_is_lost() {
        String visit = at.visit();
        Map<String, String> form = filled(visit);
        form.put("line-0-done", "40");
        form.put("extra-0-serviceItem", SiteToQuote.SKYLIGHT);
        form.put("extra-0-quantity", "4");
        form.put("note", "Still here");

        var refused = technician.post("sheets/" + visit, form);

        assertEquals(422, refused.statusCode());
        var page = Visitor.page(refused);
        assertTrue(page.getElementById("line-0-done-error").text().contains("Of 48 planned, 40 done and 0 skipped"));
        assertNotNull(page.getElementById("extra-0-agreed-error"));
        Map<String, String> again = Visitor.form(refused, "/sheets/" + visit);
        assertEquals("Still here", again.get("note"));
        assertEquals("4", again.get("extra-0-quantity"));
        assertEquals(form.get("id"), again.get("id"));
        assertEquals("SCHEDULED", status(visit));
    }

    @Test
    void without_script_another_row_is_one_press_away() {
        String visit = at.visit();
        Map<String, String> form = filled(visit);
        form.put("more", "extra");

        var more = technician.post("sheets/" + visit, form);

        assertEquals(200, more.statusCode());
        Map<String, String> again = Visitor.form(more, "/sheets/" + visit);
        assertTrue(again.containsKey("extra-1-agreed"));
        assertFalse(again.get("extra-1-id").equals(again.get("extra-0-id")));
        assertEquals("48", again.get("line-0-done"));
    }

    @Test
    void a_van_that_holds_more_than_its_books_is_counted_on_the_sheet() {
        String visit = at.visit();
        Map<String, String> form = filled(visit);
        form.put("mix-0-mix", CrewAtWork.MIX);
        form.put("mix-0-volume", "200");

        var short200 = technician.post("sheets/" + visit, form);
        assertEquals(422, short200.statusCode());
        assertTrue(
                Visitor.page(short200).getElementById("used-error").text().contains("fl oz of Van soap in Test van"),
                short200.body());

        form.put("count-0-thing", CrewAtWork.SOAP);
        form.put("count-0-found", "900");
        form.put("count-reason", "A drum nobody booked");
        assertEquals(303, technician.post("sheets/" + visit, form).statusCode());
        assertTrue(Visitor.text(at.office().get("visits/" + visit)).contains("A drum nobody booked"));
    }

    @Test
    void the_phone_is_told_in_json_and_may_send_again() {
        String visit = at.visit();
        Map<String, String> form = filled(visit);
        form.put("line-0-done", "");
        var refused = sendFromPhone(visit, form);
        assertEquals(422, refused.statusCode());
        assertNotNull(CrewAtWork.json(refused).getJsonObject("errors").getString("line-0-done"));

        form.put("line-0-done", "48");
        form.put("signer", CrewAtWork.id());
        assertEquals(401, sendFromPhone(visit, form).statusCode(), "somebody else has signed in meanwhile");

        form.put("signer", CrewAtWork.TECHNICIAN);
        for (int i = 0; i < 2; i++) {
            var sent = sendFromPhone(visit, form);
            assertEquals(200, sent.statusCode(), sent.body());
            assertEquals(
                    "/sheets/" + visit + "?done=sheets.signed",
                    CrewAtWork.json(sent).getString("location"));
        }
        form.put("note", "Something else");
        assertEquals(409, sendFromPhone(visit, form).statusCode());

        var expired = Visitor.stranger().post("sheets/" + visit, form);
        assertEquals(401, expired.statusCode());
    }

    @Test
    void photos_go_up_one_at_atime_and_only_the_crew_and_the_office_see_them() throws IOException, SQLException {
        String visit = at.visit();
        String id = CrewAtWork.id();
        String path = "sheets/" + visit + "/photos/" + id;
        for (int i = 0; i < 2; i++) {
            var stored = send(path, "image/png", photo());
            assertEquals(200, stored.statusCode(), stored.body());
        }
        assertEquals(
                2,
                at.site().audited("sheet-photos.store", "DONE", "/" + path),
                "what no use case tells is told by its address");
        byte[] pdf = "%PDF-1.7 no picture".getBytes(StandardCharsets.US_ASCII);
        var refused = send("sheets/" + visit + "/photos/" + CrewAtWork.id(), "image/jpeg", pdf);
        assertEquals(422, refused.statusCode());
        assertTrue(refused.body().contains("PDF"), refused.body());
        var request = HttpRequest.newBuilder(Server.shared().at(path))
                .header("Sec-Fetch-Site", "same-origin")
                .expectContinue(true)
                .POST(BodyPublishers.ofByteArray(new byte[20_000_000]))
                .build();
        assertEquals(413, Server.shared().send(phone, request).statusCode());

        for (Visitor reader : new Visitor[] {technician, at.office()}) {
            var thumbnail = reader.get("photos/" + id + "/thumbnail");
            assertEquals(200, thumbnail.statusCode());
            assertEquals(
                    "image/jpeg", thumbnail.headers().firstValue("content-type").orElse(""));
        }
        assertEquals(403, Visitor.technician().get("photos/" + id).statusCode());
        assertEquals(1, at.site().audited("access.get", "REFUSED", "/photos/" + id));
        assertEquals(404, technician.get("photos/" + CrewAtWork.id()).statusCode());

        // The sheet offers what is stored; ticked, it belongs to the finding.
        assertEquals(
                2,
                Visitor.page(technician.get("sheets/" + visit))
                        .select("input[type=checkbox][value=" + id + "]")
                        .size());
        Map<String, String> form = filled(visit);
        form.put("finding-0-type", "RUST");
        form.put("finding-0-severity", "NOTE");
        form.put("finding-0-photo", id);
        assertEquals(303, technician.post("sheets/" + visit, form).statusCode());
        assertEquals(
                1,
                Visitor.page(at.office().get("visits/" + visit))
                        .select("img[src=/photos/" + id + "/thumbnail]")
                        .size());
    }

    @Test
    void the_plain_form_sends_aphoto_too() throws IOException {
        String visit = at.visit();
        var body = new ByteArrayOutputStream();
        body.write(("--b0undary\r\nContent-Disposition: form-data; name=\"photo\"; filename=\"a.png\"\r\n"
                        + "Content-Type: image/png\r\n\r\n")
                .getBytes(StandardCharsets.US_ASCII));
        body.write(photo());
        body.write("\r\n--b0undary--\r\n".getBytes(StandardCharsets.US_ASCII));
        Server server = Server.shared();

        var sent = server.send(
                phone,
                HttpRequest.newBuilder(server.at("sheets/" + visit + "/photos"))
                        .header("Content-Type", "multipart/form-data; boundary=b0undary")
                        .header("Accept", "text/html")
                        .header("Sec-Fetch-Site", "same-origin")
                        .POST(BodyPublishers.ofByteArray(body.toByteArray()))
                        .build());

        assertEquals("/sheets/" + visit + "?done=sheets.photo-stored", Visitor.location(sent), sent.body());
        assertEquals("1", Visitor.value("select count(*)::text from photo where visit_id = ?::uuid", visit));
    }

    @Test
    void scripts_sign_off_only_their_own_visits() throws SQLException {
        String others = at.visit(Visitor.value("select id::text from app_user where username = 'quotes.office'"));
        String line = at.read(others).getJsonArray("lines").getJsonObject(0).getString("id");
        String sheet = """
                {"id": "%s", "completedOn": "%s", "lines": [{"line": "%s", "done": {"value": "48", "unit": "H87"}}],
                 "effort": {"onSiteMinutes": 60, "drivingMinutes": 0, "loadingMinutes": 0, "distance": {"value": "0", "unit": "SMI"}}}
                """.formatted(CrewAtWork.id(), SiteToQuote.today(), line);
        String path = "api/visits/" + others + "/sheet";
        assertEquals(403, technician.json("PUT", path, sheet).statusCode());
        assertEquals(1, at.site().audited("access.put", "REFUSED", "/" + path));
        assertEquals(400, technician.json("PUT", path, "{\"id\": ").statusCode());
        assertEquals(
                400,
                technician
                        .json("PUT", path, sheet.replace("\"48\"", "\"many\""))
                        .statusCode());
        assertEquals("SCHEDULED", status(others));
        assertEquals(200, at.office().json("PUT", path, sheet).statusCode());
        assertEquals(200, at.office().json("PUT", path, sheet).statusCode(), "the same again");
    }

    @Test
    void the_worker_is_served_for_the_pages_below_the_root() {
        var worker = Visitor.stranger().get("sheet-worker.js");
        assertEquals(200, worker.statusCode());
        assertTrue(worker.headers().firstValue("content-type").orElse("").startsWith("text/javascript"));
    }

    @Test
    void a_consumable_that_is_named_needs_its_amount() {
        String visit = at.visit();
        Map<String, String> form = filled(visit);
        form.put("mix-0-mix", CrewAtWork.MIX);
        form.put("item-0-item", CrewAtWork.SOAP);
        form.put("count-0-thing", CrewAtWork.SOAP);

        var page = Visitor.page(technician.post("sheets/" + visit, form));

        for (String field : List.of("mix-0-volume", "item-0-quantity", "count-0-found")) {
            assertNotNull(
                    page.getElementById(field + "-error"),
                    field + " in " + page.select(".errors").text());
        }
        assertEquals("SCHEDULED", status(visit));
    }

    @Test
    void what_is_said_without_its_thing_is_asked_for_and_not_dropped() {
        String visit = at.visit();
        Map<String, String> form = filled(visit);
        form.put("finding-0-severity", "URGENT");
        form.put("count-reason", "A drum nobody booked");

        var page = Visitor.page(technician.post("sheets/" + visit, form));

        for (String field : List.of("finding-0-type", "count-0-thing")) {
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
            Map<String, String> form = filled(visit);
            form.put("completedOn", day.toString());
            var refused = technician.post("sheets/" + visit, form);
            assertEquals(422, refused.statusCode(), refused.body());
            assertNotNull(Visitor.page(refused).getElementById("completedOn-error"), day.toString());
        }
        assertEquals("SCHEDULED", status(visit));
    }

    @Test
    void photos_that_nobody_ticked_show_on_the_visit() throws IOException {
        String visit = at.visit();
        String photo = CrewAtWork.id();
        assertEquals(
                200,
                send("sheets/" + visit + "/photos/" + photo, "image/png", photo())
                        .statusCode());
        assertEquals(1, pictures(visit, photo), "before it is signed off");
        assertEquals(303, technician.post("sheets/" + visit, filled(visit)).statusCode());
        assertEquals(1, pictures(visit, photo), "and afterwards");
    }

    private int pictures(String visit, String photo) {
        return Visitor.page(at.office().get("visits/" + visit))
                .select("img[src=/photos/" + photo + "/thumbnail]")
                .size();
    }

    /** Two phones of a crew fill one sheet. What the second one says is neither refused nor lost. */
    @Test
    void a_sheet_that_comes_second_is_kept_and_read_by_the_office() throws IOException {
        Visitor second = secondOfTheCrew();
        String visit = at.visit(CrewAtWork.TECHNICIAN + "\", \"" + userId("second.roof"));
        Map<String, String> late = filled(visit);
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
                send("sheets/" + visit + "/photos/" + photo, "image/png", photo())
                        .statusCode());
        late.put("finding-0-photo", photo);

        for (int i = 0; i < 2; i++) {
            var sent = sendFromPhone(visit, late);
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
                        .select("a.button[href=/" + page + "]")
                        .size());
        var read = at.office().get(page);
        String text = Visitor.text(read);
        for (String said : List.of(
                "Exposed conductor",
                "Urgent",
                "Bare wire under panel 12 of " + visit,
                "Gate was left open",
                "48",
                "120")) {
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
                        .select("a.button[href=/" + page + "]")
                        .size());
        assertTrue(Visitor.text(at.office().get(page)).contains("Called the electrician"));
        assertEquals(
                1,
                Visitor.page(at.office().get("visits/" + visit))
                        .select("a[href=/" + page + "]")
                        .size(),
                "it stays readable");
    }

    @Test
    void a_refused_sheet_is_readable_too_until_its_mended_one_has_gone_through() {
        String visit = at.visit();
        Map<String, String> form = filled(visit);
        form.put("line-0-done", "40");
        form.put("note", "Hail all over");
        for (int i = 0; i < 2; i++) {
            assertEquals(422, sendFromPhone(visit, form).statusCode());
        }
        var link = Visitor.page(at.office().get("visits/" + visit)).select("a[href^=/visits/" + visit + "/sent/]");
        assertEquals(1, link.size());
        String text = Visitor.text(at.office().get(link.attr("href").substring(1)));
        assertTrue(text.contains("Hail all over") && text.contains("Of 48 planned, 40 done"), text);
        assertEquals(1, waiting(visit));

        form.put("line-0-done", "48");
        assertEquals(200, sendFromPhone(visit, form).statusCode());
        assertEquals(0, waiting(visit), "it was mended");
        assertEquals("1", Visitor.value("select count(*)::text from sent_sheet where visit_id = ?::uuid", visit));
    }

    @Test
    void who_is_taken_off_the_crew_meanwhile_does_not_lose_the_work() throws IOException {
        String visit = at.visit();
        Map<String, String> form = filled(visit);
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
                send("sheets/" + visit + "/photos/" + CrewAtWork.id(), "image/png", photo())
                        .statusCode());
        var sent = sendFromPhone(visit, form);
        assertEquals(200, sent.statusCode(), sent.body());
        assertEquals("/sheets?done=sheets.recorded", CrewAtWork.json(sent).getString("location"));
        assertEquals(1, waiting(visit));
        assertEquals(403, technician.get("sheets/" + visit).statusCode());
        assertEquals("SCHEDULED", status(visit));
    }

    private int waiting(String visit) {
        return Visitor.page(at.office().get("worklist?type=sheet&show=5000"))
                .select("a.button[href^=/visits/" + visit + "/sent/]")
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
}
