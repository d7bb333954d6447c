package eaveside.web.invoices;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.testing.Visitor;
import eaveside.web.visits.CrewAtWork;
import jakarta.json.Json;
import jakarta.json.JsonObject;
import java.io.StringReader;
import java.math.BigDecimal;
import java.net.http.HttpResponse;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** A customer's credit, and the invoice of a visit, for scripts on the real server. */
class CreditApiHttpIT {
    private final CrewAtWork at = CrewAtWork.shared();
    private final Visitor office = at.office();
    private final String customer = id();

    private static String id() {
        return UUID.randomUUID().toString();
    }

    private static JsonObject json(HttpResponse<String> answer, int status) {
        assertEquals(status, answer.statusCode(), answer.body());
        return Json.createReader(new StringReader(answer.body())).readObject();
    }

    private JsonObject post(String path, String body, int status) {
        return json(office.json("POST", path, body), status);
    }

    /** A customer with credit of so much, from a payment that pays nothing. */
    private void withCredit(String amount) {
        json(
                office.json(
                        "PUT",
                        "api/customers/" + customer,
                        "{\"name\": \"To the Good\", \"type\": \"HOUSEHOLD\", \"paymentTermDays\": 14,"
                                + " \"address\": {\"country\": \"US\"}}"),
                200);
        post("api/payments", InvoiceJson.payment(id(), customer, amount, "CHECK"), 201);
    }

    /** An issued invoice of 43.30: an hour at 40.00 with its tax of 8.25 %. */
    private String issued() {
        String invoice = id();
        post("api/invoices", InvoiceJson.draft(invoice, customer), 201);
        post("api/invoices/" + invoice + "/issue", "{\"version\": 1, \"credit\": \"KEEP\"}", 200);
        return invoice;
    }

    private String open(String invoice) {
        return json(office.getJson("api/invoices/" + invoice), 200)
                .getJsonObject("open")
                .getString("amount");
    }

    private static String apply(String id, String amount) {
        return "{\"id\": \"" + id + "\", \"amount\": " + InvoiceJson.money(amount) + "}";
    }

    @Test
    void credit_pays_an_invoice_and_is_taken_back() throws Exception {
        withCredit("30.00");
        String invoice = issued();
        String path = "api/invoices/" + invoice;
        String applying = id();

        JsonObject applied = post(path + "/apply", apply(applying, "20.00"), 201);
        assertEquals("CREDIT_APPLICATION", applied.getString("type"));
        assertEquals(applied, post(path + "/apply", apply(applying, "20.00"), 201), "a retry");
        assertEquals("23.30", open(invoice));
        post(path + "/apply", apply(applying, "21.00"), 409);
        post(path + "/apply", apply(id(), "10.01"), 422);
        post(path + "/apply", apply(id(), "23.31"), 422);
        post(path + "/apply", apply(id(), "0"), 422);
        post(path + "/apply", "{}", 400);
        post("api/invoices/" + id() + "/apply", apply(id(), "1.00"), 404);
        json(at.technician().json("POST", path + "/apply", apply(id(), "1.00")), 403);
        assertEquals("23.30", open(invoice));

        String unapply = "{\"id\": \"%s\", \"reason\": \"Another invoice was meant\"}".formatted(id());
        String reversal = "/applications/" + applying + "/reversal";
        String other = issued();
        post("api/invoices/" + other + reversal, unapply, 404);
        json(at.technician().json("POST", path + reversal, unapply), 403);
        JsonObject back = post(path + reversal, unapply, 201);
        assertEquals(back, post(path + reversal, unapply, 201), "a retry");
        assertEquals("43.30", open(invoice));
        post(path + reversal, unapply.replace("Another", "No"), 409);
        post(path + reversal, "{}", 400);
        assertEquals(1, at.site().audited("credit.apply", "DONE", invoice), "retries are no deeds");
        assertEquals(1, at.site().audited("credit.unapply", "DONE", invoice));
    }

    @Test
    void credit_is_paid_back() throws Exception {
        withCredit("30.00");
        String refund = id();
        String body = """
            {"id": "%s", "customer": "%s", "amount": %s, "method": "BANK_TRANSFER", "reference": "Back"}
            """.formatted(refund, customer, InvoiceJson.money("12.50"));

        JsonObject before = json(office.getJson("api/payments?customer=" + customer), 200);
        JsonObject paid = post("api/payments/refunds", body, 201);
        JsonObject after = json(office.getJson("api/payments?customer=" + customer), 200);
        assertEquals(
                before.getJsonArray("payments").size() + 1,
                after.getJsonArray("payments").size());
        assertEquals(
                new BigDecimal(before.getJsonObject("credit").getString("amount")).subtract(new BigDecimal("12.50")),
                new BigDecimal(after.getJsonObject("credit").getString("amount")));
        assertEquals(refund, after.getJsonArray("payments").getJsonObject(0).getString("id"));
        assertTrue(office.getJson("api/payments").body().contains(refund), "on everybody's list too");
        assertTrue(Visitor.page(office.get("payments"))
                        .select("a[href=/payments/" + refund + "]")
                        .size()
                == 1);
        assertTrue(office.get("payments/list.csv").body().contains("-12.50"), "in the list as a file");
        assertEquals(
                "-12.50", paid.getJsonObject("payment").getJsonObject("amount").getString("amount"));
        assertEquals(paid, post("api/payments/refunds", body, 201), "a retry");
        assertEquals(paid, json(office.getJson("api/payments/" + refund), 200));
        post("api/payments/refunds", body.replace("12.50", "12.51"), 409);
        JsonObject tooMuch =
                post("api/payments/refunds", body.replace(refund, id()).replace("12.50", "17.51"), 422);
        assertTrue(tooMuch.getString("type").endsWith("not-enough-credit"), tooMuch.toString());
        post("api/payments/refunds", body.replace(refund, id()).replace("BANK_TRANSFER", "SHELLS"), 400);
        post("api/payments/refunds", body.replace(refund, id()).replace(customer, id()), 422);
        json(at.technician().json("POST", "api/payments/refunds", body), 403);
        assertEquals(1, at.site().audited("payment.refund", "DONE", refund));
    }

    @Test
    void a_done_visit_is_drafted_once() {
        at.site().published("Prices of scripted invoices");
        String visit = at.visit();
        String invoice = id();
        String path = "api/invoices/from-visit/";
        String bill = "{\"id\": \"" + invoice + "\"}";
        String another = "{\"id\": \"" + id() + "\"}";
        post(path + visit, bill, 409);
        at.signedOff(visit);
        post(path + visit, bill, 422);
        at.settled(visit);

        JsonObject draft = post(path + visit, bill, 201);
        assertEquals(visit, draft.getString("visit"));
        assertEquals(draft, post(path + visit, bill, 201), "a retry");
        post(path + visit, another, 409);
        post(path + id(), another, 404);
        json(at.technician().json("POST", path + visit, another), 403);
    }
}
