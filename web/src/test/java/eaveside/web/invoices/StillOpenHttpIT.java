package eaveside.web.invoices;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.quotes.SiteToQuote;
import eaveside.web.testing.Visitor;
import jakarta.json.Json;
import jakarta.json.JsonObject;
import java.io.StringReader;
import java.time.YearMonth;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** What is still open of a month, as the page before its close and the API say it. */
class StillOpenHttpIT {
    private final SiteToQuote at = SiteToQuote.shared();
    private final Visitor owner = Visitor.owner();
    private final String month = SiteToQuote.today().substring(0, 7);

    private JsonObject month() {
        try (var reader = Json.createReader(
                new StringReader(owner.getJson("api/books/months/" + month).body()))) {
            return reader.readObject();
        }
    }

    private static int more(JsonObject before, JsonObject after, String what) {
        return after.getJsonObject("stillOpen").getInt(what)
                - before.getJsonObject("stillOpen").getInt(what);
    }

    @Test
    void a_visit_is_open_until_it_is_decided_and_billed() {
        JsonObject before = month();
        assertEquals(month, before.getString("month"));
        assertFalse(before.containsKey("closedAt") || before.getBoolean("closable"), "it has not ended");
        VisitToBill visit = VisitToBill.done(at);
        JsonObject done = month();
        assertEquals(1, more(before, done, "visitsToBill"));
        assertEquals(1, more(before, done, "visitsToDecide"));
        String shown = Visitor.text(owner.get("books/months/" + month));
        assertTrue(
                shown.contains("Visits completed, not billed "
                        + done.getJsonObject("stillOpen").getInt("visitsToBill")),
                shown);
        assertTrue(shown.contains("This month has not ended"), shown);

        visit.give();
        assertEquals(0, more(before, month(), "visitsToDecide"));
        assertEquals(
                303, owner.post("invoices/from-visit/" + visit.id(), Map.of()).statusCode());
        assertEquals(1, more(before, month(), "invoiceDrafts"));
    }

    /** What visits absorb shows as applied at once; nothing of it waits for the close. */
    @Test
    void the_month_shows_what_was_applied() {
        VisitToBill.done(at);
        JsonObject labor = month().getJsonArray("variances").getJsonObject(0);
        String applied = labor.getJsonObject("applied").getString("amount");
        assertTrue(!applied.equals("0.00") && !applied.startsWith("-"), labor.toString());
    }

    @Test
    void a_month_outside_the_books_is_not_found() {
        String later = YearMonth.parse(month).plusMonths(1).toString();
        assertEquals(404, owner.getJson("api/books/months/" + later).statusCode());
        assertEquals(404, owner.get("books/months/" + later).statusCode());
        assertEquals(404, owner.get("books/months/soon").statusCode());
        assertEquals(403, Visitor.technician().get("books/months/" + month).statusCode());
    }
}
