package eaveside.web.books;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.quotes.SiteToQuote;
import eaveside.web.testing.OnItsOwnCompany;
import eaveside.web.testing.Server;
import eaveside.web.testing.Visitor;
import jakarta.json.Json;
import jakarta.json.JsonObject;
import java.io.IOException;
import java.io.StringReader;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.sql.SQLException;
import java.time.Instant;
import java.time.YearMonth;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * What a month leaves open, as the page says it that asks before the close: in a company of its own, where nothing else is
 * open, from the first visit to the last payment.
 */
@OnItsOwnCompany
class BeforeTheCloseHttpIT {
    private static final String SIGN_OFF = "Visits not signed off";
    private static final String DECIDE = "Visits with undecided scope changes";
    private static final String BILL = "Visits completed, not billed";
    private static final String DRAFTS = "Invoice drafts";
    private static final String GOODS = "Goods received, not invoiced";
    private static final String NOT_COUNTED = "No physical count was posted in this month.";
    private static final String COUNTED = "One physical count was posted in this month.";
    private static final String SOAP = "01900000-0000-7000-8000-000000000101";
    private static final String VAN = "01900000-0000-7000-8000-000000000105";

    /** A month that no other company of the run is founded in: their servers would write into one log. */
    private static final Server SERVER = Server.foundedAt(Instant.parse("2027-08-16T18:00:00Z"));

    private static final Visitor OWNER = Visitor.ownerOf(SERVER);

    private static YearMonth month;
    private static String crew;

    @BeforeAll
    static void arrange() throws SQLException, IOException {
        month = EarlierBooks.begin(SERVER, OWNER);
        try (var connection = SERVER.database().asOwner().getConnection();
                var statement = connection.createStatement()) {
            for (String script : List.of("/arranged/site-to-quote.sql", "/arranged/van.sql")) {
                try (var sql = BeforeTheCloseHttpIT.class.getResourceAsStream(script)) {
                    statement.execute(new String(sql.readAllBytes(), StandardCharsets.UTF_8));
                }
            }
        }
        crew = Visitor.value(SERVER, "select id from app_user where username = ?", Server.OWNER);
        String book = id();
        sent(200, "PUT", "api/price-books/" + book, """
                {"list": {"name": "Prices of the year", "from": "%s", "sharedReduction": "0",
                          "visitMinimum": {"amount": "0", "currency": "USD"}, "prices": [{"serviceItem": "%s", "steps": [
                            {"price": {"amount": "5.00", "currency": "USD", "per": {"value": "1", "unit": "H87"}}}]}]}}
                """.formatted(month.atDay(1), SiteToQuote.PANEL));
        sent(200, "POST", "api/price-books/" + book + "/publish", "{\"version\": 1}");
    }

    @AfterAll
    static void stop() {
        SERVER.stop();
    }

    private static String id() {
        return UUID.randomUUID().toString();
    }

    private static JsonObject sent(int status, String method, String path, String body) {
        HttpResponse<String> answer = OWNER.json(method, path, body);
        assertEquals(status, answer.statusCode(), path + ": " + answer.body());
        return read(answer);
    }

    private static JsonObject read(HttpResponse<String> answer) {
        try (var reader = Json.createReader(new StringReader(answer.body()))) {
            return reader.readObject();
        }
    }

    private static String visit(String day) {
        String id = id();
        sent(201, "POST", "api/visits", """
                {"id": "%s", "customer": "%s", "site": "%s", "date": "%s", "crew": ["%s"],
                 "lines": [{"id": "%s", "serviceItem": "%s", "surface": "%s", "quantity": {"value": "48", "unit": "H87"}}]}
                """.formatted(
                id, SiteToQuote.CUSTOMER, SiteToQuote.SITE, day, crew, id(), SiteToQuote.PANEL, SiteToQuote.ARRAY));
        return id;
    }

    /** Signed off with two panels skipped, which somebody has to decide about. */
    private static void signedOff(String visit) {
        String line = visitNow(visit).getJsonArray("lines").getJsonObject(0).getString("id");
        sent(200, "PUT", "api/visits/" + visit + "/sheet", """
                {"id": "%s", "completedOn": "%s",
                 "lines": [{"line": "%s", "done": {"value": "46", "unit": "H87"},
                            "skips": [{"quantity": {"value": "2", "unit": "H87"}, "reason": "NO_ACCESS"}]}],
                 "effort": {"onSiteMinutes": 60, "drivingMinutes": 0, "loadingMinutes": 0, "distance": {"value": "0", "unit": "SMI"}}}
                """.formatted(id(), month.atDay(20), line));
    }

    private static JsonObject visitNow(String visit) {
        return read(OWNER.getJson("api/visits/" + visit));
    }

    private static void decided(String visit) {
        JsonObject scopeChange = visitNow(visit).getJsonArray("scopeChanges").getJsonObject(0);
        sent(
                200,
                "POST",
                "api/visits/" + visit + "/scope-changes/" + scopeChange.getString("id"),
                "{\"version\": 1, \"decision\": \"CANCEL\"}");
    }

    private static void received(String day) {
        sent(201, "POST", "api/stock/receipts", """
                {"id": "%s", "date": "%s", "location": "%s", "supplier": "Suds & Co", "lines": [
                  {"item": "%s", "lot": "%s", "quantity": {"value": "640", "unit": "OZA"}, "cost": {"amount": "320.00", "currency": "USD"}}]}
                """.formatted(id(), day, VAN, SOAP, id()));
    }

    /** The supplier's invoice came: a journal takes it. */
    private static void invoiced(String amount) {
        JournalForm.posted(OWNER, "JOURNAL", month.atDay(25), "Invoice of the supplier", "2050", "1000", amount);
    }

    private static void counted(String day) {
        sent(201, "POST", "api/stock/counts", """
                {"id": "%s", "date": "%s", "location": "%s", "reason": "End of the month", "lines": [
                  {"item": "%s", "basis": "FOUND", "quantity": {"value": "640", "unit": "OZA"}}]}
                """.formatted(id(), day, VAN, SOAP));
    }

    private static Document page() {
        HttpResponse<String> shown = OWNER.get("books/months/" + month);
        assertEquals(200, shown.statusCode());
        return Visitor.page(shown);
    }

    private static boolean isSaid(String sentence) {
        return page().select("main").text().contains(sentence);
    }

    /** The lines under the heading of what is still open, each with its number and amount. */
    private static Map<String, String> open(Document page) {
        Map<String, String> open = new LinkedHashMap<>();
        Element under = page.select("main h2").stream()
                .filter(heading -> heading.text().equals("Still open"))
                .findFirst()
                .orElseThrow()
                .nextElementSibling();
        if (under.hasClass("empty")) {
            assertEquals("Nothing is open for this month.", under.text());
            return open;
        }
        for (Element row : under.select("tbody tr")) {
            var cells = row.select("td").eachText();
            open.put(
                    cells.getFirst(),
                    String.join(" ", cells.subList(1, cells.size())).strip());
        }
        return open;
    }

    /** What scripts read says the same, figure by figure. */
    private static void holds(Map<String, String> expected) {
        Document page = page();
        assertEquals(expected, open(page));
        for (String link : page.select("main h2 ~ .table td a").eachAttr("href")) {
            assertEquals(200, OWNER.get(link.substring(1)).statusCode(), link);
        }
        assertEquals(1, page.select("form[action=/books/close] [name=confirm]").size(), "it may close all the same");
        JsonObject said = read(OWNER.getJson("api/books/months/" + month)).getJsonObject("stillOpen");
        Map<String, String> toScripts = new HashMap<>();
        for (var line : Map.of(
                        SIGN_OFF, "visitsToSignOff",
                        DECIDE, "visitsToDecide",
                        BILL, "visitsToBill",
                        DRAFTS, "invoiceDrafts")
                .entrySet()) {
            if (said.getInt(line.getValue()) > 0) {
                toScripts.put(line.getKey(), String.valueOf(said.getInt(line.getValue())));
            }
        }
        toScripts.computeIfPresent(
                DRAFTS,
                (line, number) ->
                        number + " $" + said.getJsonObject("invoiceDraftsTotal").getString("amount"));
        String goods = said.getJsonObject("goodsNotInvoiced").getString("amount");
        if (!goods.equals("0.00")) {
            toScripts.put(GOODS, "$" + goods);
        }
        assertEquals(expected, toScripts);
    }

    @Test
    void each_thing_still_open_is_named_before_the_close_until_it_is_finished() {
        holds(Map.of());
        assertTrue(isSaid(NOT_COUNTED));

        String visit = visit(month.atEndOfMonth().toString());
        holds(Map.of(SIGN_OFF, "1"));
        received(month.atDay(18).toString());
        holds(Map.of(SIGN_OFF, "1", GOODS, "$320.00"));

        signedOff(visit);
        Map<String, String> signed = Map.of(DECIDE, "1", BILL, "1", GOODS, "$320.00");
        holds(signed);
        HttpResponse<String> asked = OWNER.post("books/close", OWNER.form("books/months/" + month, "/books/close"));
        assertEquals(422, asked.statusCode(), "the close asks first");
        assertEquals(signed, open(Visitor.page(asked)), "with what is still open");
        assertEquals("0", Visitor.value(SERVER, "select count(*) from period where closed_at is not null"));

        decided(visit);
        holds(Map.of(BILL, "1", GOODS, "$320.00"));
        assertEquals(303, OWNER.post("invoices/from-visit/" + visit, Map.of()).statusCode());
        // 46 panels at 5.00, with a tax of 8.25 %
        holds(Map.of(BILL, "1", DRAFTS, "1 $248.98", GOODS, "$320.00"));
        String draft = Visitor.value(SERVER, "select id from invoice_draft where visit_id = ?::uuid", visit);
        sent(200, "POST", "api/invoices/" + draft + "/issue", "{\"version\": 1, \"credit\": \"KEEP\"}");
        holds(Map.of(GOODS, "$320.00"));

        invoiced("120.00");
        holds(Map.of(GOODS, "$200.00"));
        invoiced("200.00");
        holds(Map.of());

        counted(month.atDay(28).toString());
        assertTrue(isSaid(COUNTED) && !isSaid(NOT_COUNTED));

        // What is open of the next month is no matter of this one's.
        String nextMonth = month.plusMonths(1).atDay(2).toString();
        visit(nextMonth);
        received(nextMonth);
        counted(nextMonth);
        holds(Map.of());
        assertTrue(isSaid(COUNTED));
    }
}
