package eaveside.web.visits;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.quotes.SiteToQuote;
import eaveside.web.testing.Visitor;
import jakarta.json.JsonObject;
import java.net.URLEncoder;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The office's visits over HTTP, on the real server. */
class VisitsHttpIT {
    private final CrewAtWork at = CrewAtWork.shared();
    private final Visitor office = at.office();

    @BeforeAll
    static void publishPrices() {
        CrewAtWork.shared().site().published("Prices of visits");
    }

    private static Element form(HttpResponse<String> page, String action) {
        return Visitor.page(page).selectFirst("form[action=" + action + "]");
    }

    private HttpResponse<String> show(String visit) {
        return office.get("visits/" + visit);
    }

    @Test
    void a_visit_is_scheduled_for_the_surfaces_of_asite() {
        Map<String, String> form = office.form("visits/new?site=" + SiteToQuote.SITE, "/visits/new");
        assertEquals("48", form.get("line-0-quantity"), "each surface suggests all of itself");
        form.put("line-0-serviceItem", SiteToQuote.PANEL);
        form.put("note", "Ring twice");

        var refused = office.post("visits/new", form);
        assertEquals(422, refused.statusCode());
        assertEquals("Ring twice", Visitor.form(refused, "/visits/new").get("note"));
        assertTrue(Visitor.text(refused).contains("Choose a crew"));

        form.put("crew", CrewAtWork.TECHNICIAN);
        var scheduled = office.post("visits/new", form);
        String visit = form.get("id");
        assertEquals("/visits/" + visit + "?done=visits.scheduled", Visitor.location(scheduled));
        assertEquals("/visits/" + visit + "?done=visits.scheduled", Visitor.location(office.post("visits/new", form)));
        assertEquals("1", Visitor.value("select count(*)::text from visit_line where visit_id = ?::uuid", visit));
        var page = show(visit);
        assertTrue(Visitor.text(page).contains("Steep north roof"), "the hazards of the site");
        assertEquals("no-store", page.headers().firstValue("cache-control").orElse(""));

        assertTrue(Visitor.page(office.get("visits?q=alder+clinic"))
                        .select("a[href=/visits/" + visit + "]")
                        .size()
                > 0);
        assertTrue(Visitor.text(office.get("visits?q=nobodyhere")).contains("No visits found"));
        var csv = office.get("visits/list.csv?q=alder");
        assertTrue(csv.body().contains("Alder Lane Clinic"), csv.body());
        assertTrue(csv.headers().firstValue("content-type").orElse("").startsWith("text/csv"));
    }

    @Test
    void a_refused_row_is_named_and_everything_typed_is_kept() {
        Map<String, String> form = office.form("visits/new?site=" + SiteToQuote.SITE, "/visits/new");
        form.put("line-0-serviceItem", SiteToQuote.PANEL);
        form.put("line-0-quantity", "many");
        form.put("crew", CrewAtWork.TECHNICIAN);
        form.put("date", "someday");

        var refused = office.post("visits/new", form);

        assertEquals(422, refused.statusCode());
        assertTrue(Visitor.text(refused).contains("Quantity in row 1"), Visitor.text(refused));
        Map<String, String> shown = Visitor.form(refused, "/visits/new");
        assertEquals("many", shown.get("line-0-quantity"));
        assertEquals("someday", shown.get("date"));
        assertEquals(SiteToQuote.PANEL, shown.get("line-0-serviceItem"));
    }

    /** Other tests schedule for the same customer, more than fit on a page. */
    private Stream<Document> everyPageOf(String address) {
        return Stream.iterate(Visitor.page(office.get(address)), Objects::nonNull, page -> {
            Element more = page.selectFirst("a[rel=next], a[href*=after]");
            return more == null
                    ? null
                    : Visitor.page(office.get(more.attr("href").substring(1)));
        });
    }

    /** Whether any page of a list for scripts has the visit; how many there are depends on what other tests scheduled. */
    private boolean scriptsPageWith(String visit, String list) {
        String after = "";
        for (; ; ) {
            JsonObject page = CrewAtWork.json(office.getJson(list + after));
            if (page.toString().contains(visit)) {
                return true;
            }
            String next = page.getString("next", "");
            if (next.isEmpty()) {
                return false;
            }
            after = "&after=" + URLEncoder.encode(next, StandardCharsets.UTF_8);
        }
    }

    @Test
    void a_list_is_narrowed_by_one_vocabulary() {
        String visit = at.visit();
        String link = "a[href=/visits/" + visit + "]";
        assertEquals(
                1,
                everyPageOf("visits?show=TODAY&q=alder")
                        .filter(page -> !page.select(link).isEmpty())
                        .count());
        assertEquals(
                0,
                everyPageOf("visits?show=COMPLETED&q=alder")
                        .filter(page -> !page.select(link).isEmpty())
                        .count());
        assertEquals(
                1,
                everyPageOf("visits?customer=" + SiteToQuote.CUSTOMER)
                        .filter(page -> !page.select(link).isEmpty())
                        .count());
        assertTrue(scriptsPageWith(visit, "api/visits?show=TODAY&q=alder"), "no page of the list has it");
        assertFalse(scriptsPageWith(visit, "api/visits?show=COMPLETED"), "it is not completed");
        var unknown = office.getJson("api/visits?show=done");
        assertEquals(400, unknown.statusCode());
        assertEquals(
                "[\"show\"]", CrewAtWork.json(unknown).getJsonArray("fields").toString());
    }

    @Test
    void a_service_that_does_not_fit_its_surface_is_refused() {
        Map<String, String> form = office.form("visits/new?site=" + SiteToQuote.SITE, "/visits/new");
        form.put("line-0-serviceItem", SiteToQuote.SOFT_WASH);
        form.put("crew", CrewAtWork.TECHNICIAN);

        var refused = office.post("visits/new", form);

        assertEquals(422, refused.statusCode());
        assertTrue(Visitor.text(refused).contains("Soft-wash the roof is not for South array"), refused.body());
    }

    @Test
    void an_accepted_quote_is_scheduled_once() throws SQLException {
        Map<String, String> quoted = SiteToQuote.fields(at.site()
                .get(at.site().office(), "quotes/new?customer=" + SiteToQuote.CUSTOMER + "&site=" + SiteToQuote.SITE));
        String line = quoted.entrySet().stream()
                .filter(f -> f.getKey().startsWith("line-") && f.getValue().equals(SiteToQuote.PANEL))
                .findFirst()
                .orElseThrow()
                .getKey()
                .replace("serviceItem", "");
        quoted.put(line + "on", "yes");
        assertEquals(303, office.post("quotes", quoted).statusCode());
        String quote = quoted.get("id");
        assertEquals(422, office.post("visits/new", scheduling(quote)).statusCode(), "not agreed yet");
        for (String step : new String[] {"send", "accept"}) {
            String version = Visitor.page(office.get("quotes/" + quote))
                    .select("main input[name=version]")
                    .val();
            assertEquals(
                    303,
                    office.post("quotes/" + quote + "/" + step, Map.of("version", version, "acceptedBy", "By phone"))
                            .statusCode());
        }

        Map<String, String> form = scheduling(quote);
        assertEquals(303, office.post("visits/new", form).statusCode());
        assertEquals(303, office.post("visits/new", form).statusCode(), "a retry");
        assertEquals(1, at.site().audited("visit.schedule", "DONE", form.get("id")), "the retry is no deed");

        var again = office.post("visits/new", scheduling(quote));
        assertEquals(409, again.statusCode());
        assertTrue(Visitor.text(again).contains("is scheduled for quote"));
    }

    private Map<String, String> scheduling(String quote) {
        Map<String, String> form = office.form("visits/new?quote=" + quote, "/visits/new");
        form.put("crew", CrewAtWork.TECHNICIAN);
        return form;
    }

    @Test
    void rain_moves_avisit_and_the_reason_stays() {
        String visit = at.visit();
        String tomorrow = LocalDate.parse(SiteToQuote.today()).plusDays(1).toString();
        Map<String, String> form = Visitor.form(show(visit), "/visits/" + visit + "/reschedule");
        form.put("date", tomorrow);
        form.put("crew", CrewAtWork.TECHNICIAN);

        var without = office.post("visits/" + visit + "/reschedule", form);
        assertEquals(422, without.statusCode());
        assertEquals(
                tomorrow,
                Visitor.form(without, "/visits/" + visit + "/reschedule").get("date"));

        form.put("reason", "Rain all day");
        assertEquals(303, office.post("visits/" + visit + "/reschedule", form).statusCode());
        assertTrue(Visitor.text(show(visit)).contains("Rain all day"));

        // Somebody who looked at it before the move sees what is stored now beside what was typed.
        form.put("reason", "The customer is away");
        var late = office.post("visits/" + visit + "/reschedule", form);
        assertEquals(409, late.statusCode());
        assertTrue(Visitor.text(late).contains("Saved now"));
        assertTrue(Visitor.text(late).contains("Another user saved this visit first"), Visitor.text(late));
        assertEquals(
                "The customer is away",
                Visitor.form(late, "/visits/" + visit + "/reschedule").get("reason"));

        Map<String, String> cancel = Visitor.form(show(visit), "/visits/" + visit + "/cancel");
        cancel.put("reason", "Sold the house");
        assertEquals(303, office.post("visits/" + visit + "/cancel", cancel).statusCode());
        assertEquals("CANCELED", at.read(visit).getString("status"));
    }

    @Test
    void every_scope_change_is_decided_before_the_visit_is_billed() throws SQLException {
        String visit = at.visit();
        at.signedOff(visit);
        var undecided = show(visit);
        assertTrue(Visitor.text(undecided).contains("2 scope changes are not decided"), Visitor.text(undecided));
        // 6 skylights at 18 less 5 % for the shared visit: what the extra would bring.
        assertTrue(Visitor.text(undecided).contains("Worth $68.40"), Visitor.text(undecided));
        assertNull(form(undecided, "/invoices/from-visit/" + visit));
        assertEquals(1, at.site().audited("visit.sign-off", "DONE", visit));

        for (Map.Entry<String, String> decision :
                Map.of("SKIPPED", "RETURN_VISIT", "EXTRA", "BILL").entrySet()) {
            String scopeChange = scopeChange(visit, decision.getKey()).getString("id");
            String deed = "visits/" + visit + "/scope-changes/" + scopeChange;
            Map<String, String> form = new HashMap<>(Map.of("version", "1", "note", "As agreed"));
            form.put("decision", decision.getKey().equals("SKIPPED") ? "BILL" : "CANCEL");
            assertEquals(422, office.post(deed, form).statusCode(), "it does not answer that type");
            form.put("decision", decision.getValue());
            assertEquals(303, office.post(deed, form).statusCode());
            assertEquals(303, office.post(deed, form).statusCode(), "the same again is a retry");
            form.put("note", "Another thought");
            assertEquals(409, office.post(deed, form).statusCode());
        }

        var decided = show(visit);
        assertNotNull(form(decided, "/invoices/from-visit/" + visit));
        assertEquals(
                1,
                Visitor.page(decided)
                        .select("a[href=/visits/new?return=" + visit + "]")
                        .size());
        Map<String, String> again = office.form("visits/new?return=" + visit, "/visits/new");
        again.put("crew", CrewAtWork.TECHNICIAN);
        assertEquals(303, office.post("visits/new", again).statusCode());
        assertEquals(
                "2",
                at.read(again.get("id"))
                        .getJsonArray("lines")
                        .getJsonObject(0)
                        .getJsonObject("planned")
                        .getString("value"));
        Map<String, String> bill = Visitor.form(decided, "/invoices/from-visit/" + visit);
        assertEquals(303, office.post("invoices/from-visit/" + visit, bill).statusCode());
        assertTrue(Visitor.text(show(visit)).contains("Open draft"));
    }

    private JsonObject scopeChange(String visit, String type) {
        return at.read(visit).getJsonArray("scopeChanges").getValuesAs(JsonObject.class).stream()
                .filter(d -> d.getString("type").equals(type))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void a_visit_is_closed_without_an_invoice_and_opened_again_and_its_sheet_reversed() {
        String visit = at.visit();
        String sheet = at.signedOff(visit);
        Map<String, String> early = Map.of("id", CrewAtWork.id(), "reason", "Nothing to bill");
        assertEquals(422, office.post("visits/" + visit + "/close", early).statusCode(), "differences are open");
        for (String type : new String[] {"SKIPPED", "EXTRA"}) {
            String decision = type.equals("EXTRA") ? "NO_CHARGE" : "CANCEL";
            assertEquals(
                    200,
                    office.json(
                                    "POST",
                                    "api/visits/" + visit + "/scope-changes/"
                                            + scopeChange(visit, type).getString("id"),
                                    "{\"version\": 1, \"decision\": \"" + decision + "\"}")
                            .statusCode());
        }
        Map<String, String> close = Visitor.form(show(visit), "/visits/" + visit + "/close");
        close.put("reason", "A first clean as a gift");
        assertEquals(303, office.post("visits/" + visit + "/close", close).statusCode());
        assertEquals("CLOSED_NOT_BILLED", at.read(visit).getString("status"));

        Map<String, String> reopen = Visitor.form(show(visit), "/visits/" + visit + "/close/reverse");
        reopen.put("reason", "It was to be billed");
        assertEquals(
                303, office.post("visits/" + visit + "/close/reverse", reopen).statusCode());

        Map<String, String> reverse = Visitor.form(show(visit), "/visits/" + visit + "/sheet/reverse");
        assertEquals(sheet, reverse.get("original"));
        assertEquals(
                422, office.post("visits/" + visit + "/sheet/reverse", reverse).statusCode(), "no reason");
        reverse.put("reason", "The wrong house");
        assertEquals(
                404,
                office.post("visits/" + at.visit() + "/sheet/reverse", reverse).statusCode(),
                "another visit's sheet");
        assertEquals(
                303, office.post("visits/" + visit + "/sheet/reverse", reverse).statusCode());
        assertEquals("SCHEDULED", at.read(visit).getString("status"));
        assertTrue(Visitor.text(show(visit)).contains("Reversed sheets"));
    }

    @Test
    void what_is_not_there_or_not_open_says_so() throws SQLException {
        assertEquals(404, office.get("visits/" + CrewAtWork.id()).statusCode());
        assertEquals(404, office.get("visits/nothing").statusCode());
        String visit = at.visit();
        assertEquals(403, at.technician().get("visits/" + visit).statusCode());
        assertEquals(1, at.site().audited("access.get", "REFUSED", "/visits/" + visit));
        assertEquals(403, at.technician().getJson("api/visits").statusCode());
    }

    @Test
    void scripts_book_move_and_cancel() {
        String visit = at.visit();
        int version = at.read(visit).getInt("version");
        String move = "{\"version\": %d, \"date\": \"%s\", \"crew\": [\"%s\"], \"reason\": \"Rain\"}"
                .formatted(version, SiteToQuote.today(), CrewAtWork.TECHNICIAN);
        var moved = office.json("POST", "api/visits/" + visit + "/reschedule", move);
        assertEquals(200, moved.statusCode(), moved.body());
        assertEquals(
                200,
                office.json("POST", "api/visits/" + visit + "/reschedule", move).statusCode(),
                "a retry");
        assertEquals(1, CrewAtWork.json(moved).getJsonArray("changes").size(), "the first answer");
        var late = office.json("POST", "api/visits/" + visit + "/reschedule", move.replace("Rain", "Wind"));
        assertEquals(409, late.statusCode());
        assertEquals("urn:eaveside:refusal:visit.stale", CrewAtWork.json(late).getString("type"));
        assertEquals(version + 1, CrewAtWork.json(late).getJsonObject("stored").getInt("version"));
        assertEquals("Wind", CrewAtWork.json(late).getJsonObject("sent").getString("reason"));
        assertEquals(
                400,
                office.json("POST", "api/visits/" + visit + "/reschedule", "{").statusCode());
        assertEquals(
                400,
                office.json("POST", "api/visits/" + visit + "/cancel", "{\"version\": 1}")
                        .statusCode());
        assertEquals(
                404,
                office.json("POST", "api/visits/" + CrewAtWork.id() + "/cancel", "{\"version\": 1, \"reason\": \"x\"}")
                        .statusCode());
        int now = CrewAtWork.json(moved).getInt("version");
        var canceled = office.json(
                "POST", "api/visits/" + visit + "/cancel", "{\"version\": " + now + ", \"reason\": \"Sold\"}");
        assertEquals("CANCELED", CrewAtWork.json(canceled).getString("status"));
        assertFalse(CrewAtWork.json(canceled).getJsonArray("changes").isEmpty());
        assertTrue(office.getJson("api/visits?show=COMPLETED").statusCode() == 200);
    }

    @Test
    void a_canister_that_worked_beyond_its_estimate_is_corrected_by_a_variance_that_pages_name() {
        String canister = CrewAtWork.id();
        String label = "C-" + canister.substring(0, 8);
        var received = office.json("POST", "api/stock/receipts", """
                {"id": "%s", "date": "%s", "location": "%s", "supplier": "Suds & Co", "lines": [
                  {"item": "%s", "lot": "%s", "quantity": {"value": "100", "unit": "GRN"}, "cost": {"amount": "9.00", "currency": "USD"}, "label": "%s"}]}
                """.formatted(
                        CrewAtWork.id(), SiteToQuote.today(), CrewAtWork.VAN, CrewAtWork.RESIN, canister, label));
        assertEquals(201, received.statusCode(), received.body());
        String visit = at.visit();
        String sheet = CrewAtWork.id();
        var signed = at.technician().json("PUT", "api/visits/" + visit + "/sheet", """
                {"id": "%s", "completedOn": "%s",
                 "lines": [{"line": "%s", "done": {"value": "48", "unit": "H87"}}],
                 "readings": [{"tapWater": "250", "pureWater": "5", "volume": {"value": "40", "unit": "GLL"}, "canister": "%s"}],
                 "effort": {"onSiteMinutes": 60, "drivingMinutes": 10, "loadingMinutes": 0, "distance": {"value": "3", "unit": "SMI"}}}
                """.formatted(
                        sheet,
                        SiteToQuote.today(),
                        at.read(visit).getJsonArray("lines").getJsonObject(0).getString("id"),
                        canister));
        assertEquals(200, signed.statusCode(), signed.body());

        // 40 gallons are 151.416 liters; with 245 mg less in each, 37,097 mg, and a grain is 64.79891 mg: 572.49
        // grains.
        // The books had 100 and are given 473.49, so that the canister holds what went through it and one grain more.
        String shown = Visitor.text(show(visit));
        assertTrue(shown.contains("about 572 grains of dissolved solids removed"), shown);
        assertTrue(
                shown.matches(".*Rated capacity exceeded: \\S.*" + label
                        + ".* still made pure water, so its books were corrected by 473 grains at no cost\\..*"),
                shown);
        Document document = Visitor.page(office.get("documents/" + sheet));
        var entries = document.select("table:has(caption:contains(Stock)) tbody tr:contains(" + label + ")");
        assertEquals(2, entries.size(), document.text());
        assertTrue(entries.text().contains("473 grains"), entries.text());
        assertTrue(entries.text().contains("572 grains"), entries.text());
        assertEquals(
                "1.00",
                Visitor.value(
                        "select sum(quantity)::numeric(9,2)::text from stock_entry where lot_id = ?::uuid", canister));
    }
}
