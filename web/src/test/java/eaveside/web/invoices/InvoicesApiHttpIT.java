package eaveside.web.invoices;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.quotes.SiteToQuote;
import eaveside.web.testing.Server;
import jakarta.json.Json;
import jakarta.json.JsonObject;
import java.io.StringReader;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** Invoices and payments for scripts, on the real server. */
class InvoicesApiHttpIT {
    private final SiteToQuote at = SiteToQuote.shared();

    private HttpResponse<String> send(String method, String path, String body) {
        return at.json(at.office(), method, path, body);
    }

    private static JsonObject json(HttpResponse<String> answer, int status) {
        assertEquals(status, answer.statusCode(), answer.body());
        return Json.createReader(new StringReader(answer.body())).readObject();
    }

    private static String draft(String id, int version, String quantity) {
        return """
            {"id": "%s", "version": %d, "customer": "%s", "serviceDate": "%s", "reference": "By script",
             "lines": [%s],
             "adjustments": [{"type": "CHARGE", "amount": %s, "reason": "Parking", "taxCode": "Q-STANDARD"}]}
            """.formatted(
                        id,
                        version,
                        SiteToQuote.CUSTOMER,
                        SiteToQuote.today(),
                        InvoiceJson.hours(
                                UUID.nameUUIDFromBytes(id.getBytes(StandardCharsets.UTF_8))
                                        .toString(),
                                quantity),
                        InvoiceJson.money("20"));
    }

    private static String amount(JsonObject within, String name) {
        return within.getJsonObject(name).getString("amount");
    }

    private static int version(JsonObject draft) {
        return draft.getJsonObject("content").getInt("version");
    }

    @Test
    void a_list_has_at_most_five_hundred_rows() {
        String id = InvoiceJson.id();
        List<String> lines = new ArrayList<>();
        for (int i = 0; i < 501; i++) {
            lines.add(InvoiceJson.hours(InvoiceJson.id(), "1"));
        }
        String draft = "{\"id\": \"%s\", \"customer\": \"%s\", \"serviceDate\": \"%s\", \"lines\": %s}";
        var refused = send(
                "PUT",
                "api/invoices/" + id,
                draft.formatted(id, SiteToQuote.CUSTOMER, SiteToQuote.today(), lines.toString()));
        assertEquals(422, refused.statusCode());
        assertTrue(refused.body().contains("Lines must have at most 500 rows, not 501"), refused.body());
        var taken = send(
                "PUT",
                "api/invoices/" + id,
                draft.formatted(
                        id,
                        SiteToQuote.CUSTOMER,
                        SiteToQuote.today(),
                        lines.subList(0, 500).toString()));
        assertEquals(200, taken.statusCode(), taken.body());
    }

    /** Each line can be, but nobody could ever issue their sum. */
    @Test
    void a_draft_of_more_than_the_books_can_hold_is_refused_when_it_is_saved() {
        String id = InvoiceJson.id();
        String two = InvoiceJson.hours(InvoiceJson.id(), "1") + ", " + InvoiceJson.hours(InvoiceJson.id(), "1");
        String draft = InvoiceJson.draft(id, SiteToQuote.CUSTOMER)
                .replaceFirst("(?s)\"lines\": \\[.*]", "\"lines\": [" + two + "]")
                .replace("40.00", "999999999999.00");

        JsonObject refused = json(send("POST", "api/invoices", draft), 422);

        assertEquals("[\"lines\"]", refused.getJsonArray("fields").toString(), refused.toString());
        json(send("GET", "api/invoices/" + id, ""), 404);
    }

    @Test
    void a_script_drafts_issues_pays_and_credits() {
        String id = InvoiceJson.id();
        var created = send("POST", "api/invoices", draft(id, 0, "3"));
        JsonObject made = json(created, 201);
        assertTrue(created.headers().firstValue("location").orElseThrow().endsWith("/api/invoices/" + id));
        assertEquals(1, version(made), "0 means new");
        assertEquals("151.55", amount(made.getJsonObject("totals"), "gross"), "140.00 and 8.25 % of it, 11.55");
        assertEquals(made, json(send("POST", "api/invoices", draft(id, 0, "3")), 201), "a retry");
        JsonObject stale = json(send("POST", "api/invoices", draft(id, 0, "4")), 409);
        assertEquals("lines", stale.getJsonArray("fields").getString(0));

        JsonObject edited = json(send("PUT", "api/invoices/" + id, draft(id, 1, "2")), 200);
        assertEquals("100.00", amount(edited.getJsonObject("totals"), "net"));
        assertEquals(2, version(edited), "one edit is one version");
        assertEquals(edited, json(send("PUT", "api/invoices/" + id, draft(id, 1, "2")), 200), "a retry");
        JsonObject rival = json(send("PUT", "api/invoices/" + id, draft(id, 1, "5")), 409);
        assertEquals(2, rival.getJsonObject("stored").getInt("version"), "both contents are told");

        String issue = "{\"version\": 2, \"credit\": \"KEEP\"}";
        JsonObject issued = json(send("POST", "api/invoices/" + id + "/issue", issue), 200);
        assertEquals(issued, json(send("POST", "api/invoices/" + id + "/issue", issue), 200), "a retry");
        assertEquals("108.25", amount(issued, "open"));
        JsonObject line = issued.getJsonArray("lines").getJsonObject(0);
        assertEquals("Q-STANDARD", line.getString("taxCode"));
        assertEquals("S", line.getJsonObject("tax").getString("category"));
        assertEquals("8.25", line.getJsonObject("tax").getString("rate"));

        String payment = InvoiceJson.id();
        String pay = InvoiceJson.payment(payment, SiteToQuote.CUSTOMER, "110.00", "BANK_TRANSFER", id, "108.25");
        assertEquals("1.75", amount(json(send("POST", "api/payments", pay), 201), "unapplied"));
        json(send("POST", "api/payments", pay), 201);
        json(send("POST", "api/payments", pay.replace("BANK_TRANSFER", "CASH")), 409);
        JsonObject paid = json(send("GET", "api/invoices/" + id, ""), 200);
        assertEquals("0.00", amount(paid, "open"));
        assertEquals(1, paid.getJsonArray("settlements").size());
        assertTrue(send("GET", "api/invoices?q=" + issued.getInt("number"), "")
                .body()
                .contains(id));

        String back = "{\"id\": \"" + InvoiceJson.id() + "\", \"reason\": \"Wrong account\"}";
        JsonObject reversed = json(send("POST", "api/payments/" + payment + "/reversal", back), 201);
        assertEquals("REVERSAL", reversed.getString("type"));
        assertEquals(SiteToQuote.today(), reversed.getString("postingDate"));
        assertEquals(reversed, json(send("POST", "api/payments/" + payment + "/reversal", back), 201), "a retry");
        assertEquals("108.25", amount(json(send("GET", "api/invoices/" + id, ""), 200), "open"));
        String credit = "{\"id\": \"" + InvoiceJson.id() + "\", \"reason\": \"Not done\"}";
        assertEquals(
                "CREDIT_MEMO",
                json(send("POST", "api/invoices/" + id + "/credit", credit), 201)
                        .getString("type"));
        json(send("POST", "api/invoices/" + id + "/credit", credit.replace("Not done", "Not ours")), 409);
    }

    @Test
    void a_draft_is_discarded_once_and_the_retry_is_answered_alike() throws Exception {
        String id = InvoiceJson.id();
        String draft = draft(id, 0, "3");
        JsonObject made = json(send("POST", "api/invoices", draft), 201);
        String discard = "api/invoices/" + id + "?version=1";
        json(send("DELETE", "api/invoices/" + id, ""), 400);
        json(send("DELETE", "api/invoices/" + id + "?version=last", ""), 400);
        json(send("DELETE", "api/invoices/" + id + "?version=2", ""), 409);
        assertEquals(204, send("DELETE", discard, "").statusCode());
        assertEquals(204, send("DELETE", discard, "").statusCode(), "a retry");
        assertEquals(1, at.audited("invoice-draft.discard", "DONE", id));
        json(send("GET", "api/invoices/" + id, ""), 404);
        assertEquals(
                made, json(send("POST", "api/invoices", draft), 201), "the first answer, and nothing is drafted anew");
        json(send("GET", "api/invoices/" + id, ""), 404);
        json(send("POST", "api/invoices", draft.replace("Parking", "Waiting")), 409);
        json(send("DELETE", "api/invoices/" + InvoiceJson.id() + "?version=1", ""), 404);
    }

    @Test
    void bad_bodies_leave_nothing() {
        String id = InvoiceJson.id();
        String good = draft(id, 0, "3");
        JsonObject many = json(send("POST", "api/invoices", good.replace("\"3\"", "\"many\"")), 400);
        assertEquals("lines[0].quantity.value", many.getJsonArray("fields").getString(0));
        json(send("POST", "api/invoices", good.replace("Q-STANDARD", "NO-SUCH")), 422);
        json(send("POST", "api/invoices", good.replace("Moss off the steps", " ")), 422);
        json(send("POST", "api/invoices", good.replace("reference", "referense")), 400);
        JsonObject nowhere =
                json(send("POST", "api/invoices", good.replace(SiteToQuote.SOLAR_LINE, InvoiceJson.id())), 422);
        assertEquals("lines[0].serviceLine", nowhere.getJsonArray("fields").getString(0));
        json(send("PUT", "api/invoices/" + id, draft(id, 1, "3")), 404);
        json(send("GET", "api/invoices/" + id, ""), 404);
        json(send("POST", "api/payments", "{}"), 400);
        json(send("POST", "api/payments", InvoiceJson.payment(id, SiteToQuote.CUSTOMER, "-5", "CASH")), 422);
        json(send("GET", "api/payments/" + id, ""), 404);
    }

    @Test
    void a_list_refuses_what_it_does_not_know() {
        JsonObject show = json(send("GET", "api/invoices?show=late", ""), 400);
        assertEquals("show", show.getJsonArray("fields").getString(0));
        for (String list : List.of("invoices", "payments")) {
            JsonObject unknown = json(send("GET", "api/" + list + "?customer=" + InvoiceJson.id(), ""), 422);
            assertEquals("customer", unknown.getJsonArray("fields").getString(0));
        }
        json(send("GET", "api/invoices?after=never", ""), 400);
        assertEquals(
                0,
                json(send("GET", "api/invoices?show=PAST_DUE&customer=" + SiteToQuote.CUSTOMER, ""), 200)
                        .getJsonArray("invoices")
                        .size());
    }

    @Test
    void the_interface_is_described() {
        var server = Server.shared();
        var described = server.send(
                server.stranger(),
                HttpRequest.newBuilder(server.at("openapi"))
                        .header("Accept", "application/json")
                        .build());
        for (String path : new String[] {
            "/api/invoices/preview", "/api/invoices/{id}/issue", "/api/invoices/{original}/credit", "/api/payments"
        }) {
            assertTrue(described.body().contains("\"" + path + "\""), path);
        }
    }
}
