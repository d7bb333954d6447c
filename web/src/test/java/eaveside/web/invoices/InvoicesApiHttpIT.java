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

    private static String draft(String id, String quantity) {
        return """
                {"id": "%s", "customer": "%s",
                 "content": {"serviceDate": "%s", "reference": "By script",
                   "lines": [{"id": "%s", "serviceLine": "%s", "description": "Moss off the steps",
                              "quantity": %s, "unit": "HUR", "price": "40.00", "taxCode": "Q-STANDARD"}],
                   "charges": [{"amount": 20, "reason": "Parking", "taxCode": "Q-STANDARD"}]}}
                """.formatted(
                        id,
                        SiteToQuote.CUSTOMER,
                        SiteToQuote.today(),
                        UUID.nameUUIDFromBytes(id.getBytes(StandardCharsets.UTF_8)),
                        SiteToQuote.SOLAR_LINE,
                        quantity);
    }

    private static String id() {
        return UUID.randomUUID().toString();
    }

    @Test
    void a_script_drafts_issues_pays_and_credits() {
        String id = id();
        JsonObject made = json(send("POST", "api/invoices", draft(id, "3")), 201);
        assertEquals("151.55", made.getJsonObject("totals").getString("gross"), "140.00 and 8.25 % of it, 11.55");
        json(send("POST", "api/invoices", draft(id, "3")), 201);
        json(send("POST", "api/invoices", draft(id, "4")), 409);

        String content = Json.createReader(new StringReader(draft(id, "2")))
                .readObject()
                .getJsonObject("content")
                .toString();
        JsonObject edited = json(
                send(
                        "PUT",
                        "api/invoices/" + id,
                        "{\"version\": " + made.getInt("version") + ", \"content\": " + content + "}"),
                200);
        assertEquals("100.00", edited.getJsonObject("totals").getString("net"));
        String other = Json.createReader(new StringReader(draft(id, "5")))
                .readObject()
                .getJsonObject("content")
                .toString();
        json(
                send(
                        "PUT",
                        "api/invoices/" + id,
                        "{\"version\": " + made.getInt("version") + ", \"content\": " + other + "}"),
                409);

        String issue = "{\"version\": " + edited.getInt("version") + ", \"applyCredit\": false}";
        JsonObject issued = json(send("POST", "api/invoices/" + id + "/issue", issue), 200);
        assertEquals(
                issued.getInt("number"),
                json(send("POST", "api/invoices/" + id + "/issue", issue), 200).getInt("number"),
                "a retry");
        assertEquals("108.25", issued.getString("open"));

        String payment = id();
        String pay = """
                {"id": "%s", "customer": "%s", "amount": "110.00", "method": "BANK_TRANSFER",
                 "allocations": [{"invoice": "%s", "amount": 108.25}]}
                """.formatted(payment, SiteToQuote.CUSTOMER, id);
        assertEquals("1.75", json(send("POST", "api/payments", pay), 201).getString("unapplied"));
        json(send("POST", "api/payments", pay), 201);
        json(send("POST", "api/payments", pay.replace("BANK_TRANSFER", "CASH")), 409);
        JsonObject paid = json(send("GET", "api/invoices/" + id, ""), 200);
        assertEquals("0.00", paid.getString("open"));
        assertEquals(1, paid.getJsonArray("settlements").size());
        assertTrue(send("GET", "api/invoices?q=" + issued.getInt("number"), "")
                .body()
                .contains(id));

        String back = "{\"id\": \"" + id() + "\", \"reason\": \"Wrong account\"}";
        json(send("POST", "api/payments/" + payment + "/reverse", back), 200);
        assertEquals("108.25", json(send("GET", "api/invoices/" + id, ""), 200).getString("open"));
        String credit = "{\"id\": \"" + id() + "\", \"reason\": \"Not done\"}";
        assertEquals(
                "CREDIT_MEMO",
                json(send("POST", "api/invoices/" + id + "/credit", credit), 200)
                        .getString("type"));
        json(send("POST", "api/invoices/" + id + "/credit", credit.replace("Not done", "Not ours")), 409);
    }

    @Test
    void bad_bodies_leave_nothing() {
        String id = id();
        json(send("POST", "api/invoices", draft(id, "\"many\"")), 400);
        json(send("POST", "api/invoices", draft(id, "3").replace("Q-STANDARD", "NO-SUCH")), 422);
        json(send("POST", "api/invoices", draft(id, "3").replace("Moss off the steps", " ")), 422);
        json(send("GET", "api/invoices/" + id, ""), 404);
        json(send("POST", "api/payments", "{}"), 400);
        json(
                send(
                        "POST",
                        "api/payments",
                        "{\"id\": \"%s\", \"customer\": \"%s\", \"amount\": -5, \"method\": \"CASH\"}"
                                .formatted(id, SiteToQuote.CUSTOMER)),
                422);
        json(send("GET", "api/payments/" + id, ""), 404);
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
            "/api/invoices/preview", "/api/invoices/{id}/issue", "/api/invoices/{id}/credit", "/api/payments"
        }) {
            assertTrue(described.body().contains("\"" + path + "\""), path);
        }
    }
}
