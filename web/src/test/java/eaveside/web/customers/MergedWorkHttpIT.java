package eaveside.web.customers;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.quotes.SiteToQuote;
import eaveside.web.testing.Visitor;
import eaveside.web.visits.CrewAtWork;
import java.net.http.HttpResponse;
import java.time.LocalDate;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** Work at the site of a customer who was merged: what was there is listed with the one kept, and new work is its own. */
class MergedWorkHttpIT {
    private static final String ADDRESS = "\"address\":{\"street\":\"9 Joined Lane\",\"country\":\"US\"}";

    private final SiteToQuote at = SiteToQuote.shared();
    private final Visitor office = CrewAtWork.shared().office();
    private final String kept = UUID.randomUUID().toString();
    private final String merged = UUID.randomUUID().toString();
    private final String site = UUID.randomUUID().toString();
    private final String array = UUID.randomUUID().toString();

    private void put(String path, String body) {
        HttpResponse<String> answer = office.json("PUT", "api/customers/" + path, body);
        assertEquals(200, answer.statusCode(), answer.body());
    }

    private String quote(String customer) {
        String id = UUID.randomUUID().toString();
        String body = """
            {"id": "%s", "customer": "%s", "site": "%s", "scope": {"validUntil": "%s", "note": "",
             "travel": {"drivingMinutes": 10, "distance": {"value": "3", "unit": "SMI"}}, "lines": [
              {"id": "%s", "serviceItem": "%s", "surface": "%s",
               "quantity": {"value": "20", "unit": "H87"}}]}}
            """.formatted(
                        id,
                        customer,
                        site,
                        LocalDate.parse(SiteToQuote.today()).plusDays(30),
                        UUID.randomUUID(),
                        SiteToQuote.PANEL,
                        array);
        HttpResponse<String> made = office.json("POST", "api/quotes", body);
        assertEquals(201, made.statusCode(), made.body());
        assertEquals(201, office.json("POST", "api/quotes", body).statusCode(), "the same again is a retry");
        return id;
    }

    @Test
    void quotes_and_visits_of_both_are_listed_with_the_one_kept() {
        at.published("Prices for merged sites");
        String customer = "{\"name\":\"%s\",\"type\":\"BUSINESS\",\"paymentTermDays\":30," + ADDRESS + "}";
        put(kept, customer.formatted("Joined Keeper"));
        put(merged, customer.formatted("Joined Goer"));
        put(merged + "/sites/" + site, "{\"name\":\"Joined site\"," + ADDRESS + "}");
        put(
                merged + "/sites/" + site + "/surfaces/" + array,
                "{\"type\":\"ARRAY\",\"name\":\"Joined array\",\"extent\":{\"value\":\"20\",\"unit\":\"H87\"}}");
        String before = quote(merged);

        assertEquals(
                200,
                office.json("POST", "api/customers/" + merged + "/merge", "{\"into\":\"" + kept + "\"}")
                        .statusCode());

        String after = quote(kept);
        HttpResponse<String> quotes = office.getJson("api/quotes?customer=" + kept);
        assertTrue(quotes.body().contains(before) && quotes.body().contains(after), quotes.body());
        assertTrue(Visitor.text(office.get("quotes/" + before)).contains("Joined Keeper"));
        assertEquals(
                1,
                Visitor.page(office.get("visits/new?customer=" + kept))
                        .select("main input[name=site][value=" + site + "]")
                        .size(),
                "the only site is chosen");
        String visit = UUID.randomUUID().toString();
        String scheduling = """
            {"id": "%s", "customer": "%s", "site": "%s", "date": "%s", "crew": ["%s"], "lines": [
             {"id": "%s", "serviceItem": "%s", "surface": "%s", "quantity": {"value": "20", "unit": "H87"}}]}
            """.formatted(
                        visit,
                        kept,
                        site,
                        SiteToQuote.today(),
                        CrewAtWork.TECHNICIAN,
                        UUID.randomUUID(),
                        SiteToQuote.PANEL,
                        array);
        HttpResponse<String> scheduled = office.json("POST", "api/visits", scheduling);
        assertEquals(2, scheduled.statusCode() / 100, scheduled.body());
        for (String id : new String[] {kept, merged}) {
            assertTrue(office.getJson("api/visits?customer=" + id).body().contains(visit), id);
        }
        Map<String, String> edit =
                office.form("customers/" + kept + "/sites/" + site, "/customers/" + merged + "/sites");
        edit.put("hazards", "Ice at the gate");
        assertEquals(303, office.post("customers/" + kept + "/sites", edit).statusCode(), "under either id");
        assertTrue(Visitor.text(office.get("customers/" + kept)).contains("Ice at the gate"));
    }
}
