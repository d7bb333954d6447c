package eaveside.web.invoices;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.quotes.SiteToQuote;
import eaveside.web.testing.Server;
import jakarta.json.Json;
import jakarta.json.JsonArray;
import jakarta.json.JsonObject;
import jakarta.json.JsonValue;
import java.io.IOException;
import java.io.StringReader;
import java.math.BigDecimal;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.text.PDFTextStripper;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.Test;

/** What customers owe and have paid, each test with a customer of its own: aging, credit on hand, what the paper says. */
class ReceivablesHttpIT {
    private final SiteToQuote at = SiteToQuote.shared();
    private final String name = "Quoin " + UUID.randomUUID().toString().substring(0, 8);
    private final String customer = customer();

    private static String id() {
        return UUID.randomUUID().toString();
    }

    private String customer() {
        String id = id();
        json("PUT", "api/customers/" + id, """
            {"name": "%s", "type": "HOUSEHOLD", "paymentTermDays": 14, "address": {"country": "US"}}
            """.formatted(name), 200);
        return id;
    }

    private JsonObject json(String method, String path, String body, int status) {
        var answer = at.json(at.office(), method, path, body);
        assertEquals(status, answer.statusCode(), answer.body());
        return Json.createReader(new StringReader(answer.body())).readObject();
    }

    private JsonObject get(String path) {
        var answer = at.get(at.office(), path, "application/json");
        assertEquals(200, answer.statusCode(), answer.body());
        return Json.createReader(new StringReader(answer.body())).readObject();
    }

    private HttpResponse<String> page(String path) {
        return at.get(at.office(), path);
    }

    private static String text(HttpResponse<String> answer) {
        return Jsoup.parse(answer.body()).select("main").text();
    }

    /** A draft of 43.30: an hour at 40.00 with its tax of 8.25 %. */
    private String draft() {
        String id = id();
        json("POST", "api/invoices", InvoiceJson.draft(id, customer), 201);
        return id;
    }

    private JsonObject issued() {
        return json("POST", "api/invoices/" + draft() + "/issue", "{\"version\": 1, \"credit\": \"KEEP\"}", 200);
    }

    private static String amount(JsonObject within, String name) {
        return within.getJsonObject(name).getString("amount");
    }

    private String open(String invoice) {
        return amount(get("api/invoices/" + invoice), "open");
    }

    private void deposit(String amount) {
        json("POST", "api/payments", InvoiceJson.payment(id(), customer, amount, "CHECK"), 201);
    }

    private String credit() {
        return amount(get("api/payments?customer=" + customer), "credit");
    }

    private JsonObject agingOf(String customerId) {
        return get("api/invoices/aging").getJsonArray("customers").getValuesAs(JsonObject.class).stream()
                .filter(row -> row.getString("customer").equals(customerId))
                .findFirst()
                .orElseThrow()
                .getJsonObject("aging")
                .getJsonObject("amounts");
    }

    private static void due(String invoice, int daysAgo) throws SQLException {
        // Time cannot be moved on the shared server, and no invoice can be issued late: only its due day is put back.
        try (var connection = Server.shared().database().asOwner().getConnection();
                var statement = connection.createStatement()) {
            statement.execute("""
                do $$
                declare
                  late text;
                begin
                  alter table invoice disable trigger invoice_keeps;
                  for late in select conname from pg_constraint where conrelid = 'invoice'::regclass and contype = 'c'
                      and pg_get_constraintdef(oid) ~ 'due_date >= invoice_date' loop
                    execute format('alter table invoice drop constraint %%I', late);
                  end loop;
                  update invoice set due_date = invoice_date - %d where id = '%s';
                  alter table invoice add constraint invoice_due check (due_date >= invoice_date) not valid;
                  alter table invoice enable trigger invoice_keeps;
                end $$
                """.formatted(daysAgo, invoice));
        }
    }

    @Test
    void an_invoice_that_is_not_due_is_current_and_stays_off_the_worklist() throws SQLException {
        JsonObject invoice = issued();
        String number = String.valueOf(invoice.getInt("number"));
        JsonObject aging = agingOf(customer);
        assertEquals("43.30", amount(aging, "CURRENT"));
        assertEquals("0.00", amount(aging, "DAYS_1_30"));
        assertFalse(text(page("worklist?type=past-due&show=5000")).contains(name));
        String csv =
                at.get(at.office(), "invoices/list.csv?q=" + number, "text/csv").body();
        assertTrue(csv.contains(",43.30,43.30,,0,Current"), csv);
        JsonObject listed =
                get("api/invoices?q=" + number).getJsonArray("invoices").getJsonObject(0);
        assertEquals("CURRENT", listed.getString("aging"));

        due(invoice.getString("id"), 45);
        try {
            aging = agingOf(customer);
            assertEquals("0.00", amount(aging, "CURRENT"));
            assertEquals("43.30", amount(aging, "DAYS_31_60"));
            String waits = text(page("worklist?type=past-due&show=5000"));
            assertTrue(waits.contains("45 days Invoice " + number + ", due "), waits);
            assertTrue(waits.contains(name), waits);
            String worklist = at.get(at.office(), "worklist/list.csv?type=past-due", "text/csv")
                    .body();
            assertTrue(worklist.contains("\"Invoice " + number + ", due "), worklist);
            assertTrue(worklist.contains(name), worklist);
            Document page = Jsoup.parse(page("invoices/aging").body());
            assertEquals(
                    "$43.30",
                    page.select("tr:has(a[href=/invoices/account/" + customer + "]) td")
                            .get(3)
                            .text());
            String bars = Jsoup.parse(page("invoices").body())
                    .select("figure svg title")
                    .text();
            assertTrue(bars.contains("Over 90 days"), bars);
            assertTrue(at.get(at.office(), "invoices/aging.csv", "text/csv")
                    .body()
                    .contains(name + ",0.00,0.00,43.30,0.00,0.00,43.30"));
            assertTrue(paper("invoices/" + invoice.getString("id") + ".pdf").contains("which was due on"));
        } finally {
            due(invoice.getString("id"), 0);
        }
    }

    @Test
    void a_payment_without_a_purpose_is_asked_for_one() {
        String invoice = issued().getString("id");
        JsonObject refused =
                json("POST", "api/payments", """
                    {"id": "%s", "customer": "%s", "amount": %s, "method": "CASH"}
                    """.formatted(id(), customer, InvoiceJson.money("43.30")), 422);
        assertTrue(refused.getString("type").endsWith("nothing-chosen"), refused.toString());
        assertEquals("allocations", refused.getJsonArray("fields").getString(0));

        Map<String, String> form = cash("payments/new?customer=" + customer, "43.30");
        var asked = at.post(at.office(), "payments", form);
        assertEquals(422, asked.statusCode());
        Document page = Jsoup.parse(asked.body());
        assertTrue(page.select(".errors a[href=#allocations]").text().contains("keep it as unapplied credit"));
        assertEquals("43.30", page.select("[name=amount]").val(), "nothing typed is lost");
        assertEquals(1, page.select("button[formaction=/payments/spread]").size(), "oldest first is offered");
        assertEquals("0.00", credit());

        Map<String, String> spread = SiteToQuote.fields(at.post(at.office(), "payments/spread", form));
        assertEquals("43.30", spread.get(InvoicesHttpIT.pays(spread, invoice)));
        form.put("keepAsCredit", "yes");
        assertEquals(303, at.post(at.office(), "payments", form).statusCode());
        assertEquals("43.30", credit());
    }

    private Map<String, String> cash(String path, String amount) {
        Map<String, String> form = SiteToQuote.fields(page(path));
        form.put("amount", amount);
        form.put("method", "CASH");
        return form;
    }

    /** The invoice is no longer among those that the page offers, so the error has no row to stand in. */
    @Test
    void what_somebody_else_paid_meanwhile_is_told_above_the_rows() {
        String invoice = issued().getString("id");
        Map<String, String> form = cash("payments/new?invoice=" + invoice, "43.30");
        pay(invoice, "43.30");
        var refused = at.post(at.office(), "payments", form);
        assertEquals(422, refused.statusCode());
        Document page = Jsoup.parse(refused.body());
        assertEquals(
                List.of("#allocations"),
                page.select(".errors a").eachAttr("href"),
                page.select(".errors").text());
    }

    @Test
    void the_rest_of_a_payment_is_asked_for_too() {
        String invoice = issued().getString("id");
        Map<String, String> form = cash("payments/new?invoice=" + invoice, "50.00");
        var asked = at.post(at.office(), "payments", form);
        assertEquals(422, asked.statusCode());
        Document page = Jsoup.parse(asked.body());
        String error = page.select(".errors a[href=#keepAsCredit]").text();
        assertTrue(error.contains("USD 6.70 of the payment is not applied"), error);
        assertEquals("keepAsCredit-error", page.select("#keepAsCredit").attr("aria-describedby"));
        assertEquals(1, page.select("#keepAsCredit-error").size(), "it is said where it is mended, too");
        assertEquals("0.00", credit());
        form.put("keepAsCredit", "yes");
        assertEquals(303, at.post(at.office(), "payments", form).statusCode());
        assertEquals("6.70", credit());
        assertEquals("0.00", amount(get("api/invoices/" + invoice), "open"));
    }

    @Test
    void credit_on_hand_is_applied_unless_it_is_unticked() {
        deposit("50.00");
        String draft = draft();
        String path = "invoices/" + draft + "/issue";
        Document ask = Jsoup.parse(page(path).body());
        assertTrue(ask.select("#applyCredit").hasAttr("checked"), "on unless somebody unticks it");
        assertTrue(ask.select("main").text().contains("Apply $43.30 of unapplied credit"));
        JsonObject refused = json("POST", "api/" + path, "{\"version\": 1}", 422);
        assertTrue(refused.getString("type").endsWith("credit-not-decided"), refused.toString());
        assertEquals("credit", refused.getJsonArray("fields").getString(0));

        Map<String, String> form = SiteToQuote.fields(page(path));
        assertEquals(303, at.post(at.office(), path, form).statusCode());
        assertEquals(303, at.post(at.office(), path, form).statusCode(), "a retry");
        JsonObject paid = get("api/invoices/" + draft);
        assertEquals("0.00", amount(paid, "open"));
        assertEquals("43.30", amount(paid.getJsonObject("totals"), "prepaid"));
        assertEquals("6.70", credit());

        String second = draft();
        String next = "invoices/" + second + "/issue";
        Map<String, String> unticked = SiteToQuote.fields(page(next));
        unticked.remove("applyCredit");
        assertEquals(303, at.post(at.office(), next, unticked).statusCode());
        assertEquals("43.30", open(second));
        assertEquals("6.70", credit());
    }

    @Test
    void credit_that_came_after_the_page_was_opened_is_asked_about() {
        String draft = draft();
        String path = "invoices/" + draft + "/issue";
        Map<String, String> form = SiteToQuote.fields(page(path));
        deposit("10.00");
        var asked = at.post(at.office(), path, form);
        assertEquals(422, asked.statusCode());
        Map<String, String> again = SiteToQuote.fields(asked);
        assertEquals("yes", again.get("applyCredit"));
        assertEquals(303, at.post(at.office(), path, again).statusCode());
        assertEquals("33.30", open(draft));
    }

    @Test
    void an_invoice_written_again_takes_what_was_paid_on_the_first() {
        JsonObject first = issued();
        String invoice = first.getString("id");
        pay(invoice, "43.30");
        json(
                "POST",
                "api/invoices/" + invoice + "/credit",
                "{\"id\": \"" + id() + "\", \"reason\": \"Wrong address\"}",
                201);
        assertTrue(text(page("invoices/" + invoice)).contains("$43.30 of unapplied credit"));
        String again = draft();
        assertTrue(text(page("invoices/" + again)).contains("$43.30 of unapplied credit"));
        String path = "invoices/" + again + "/issue";
        assertEquals(
                303, at.post(at.office(), path, SiteToQuote.fields(page(path))).statusCode());
        assertEquals("0.00", open(again));
        assertEquals("0.00", credit());
    }

    private String paper(String path) {
        try {
            var pdf = at.office()
                    .send(HttpRequest.newBuilder(Server.shared().at(path)).build(), BodyHandlers.ofByteArray());
            assertEquals(200, pdf.statusCode());
            try (var paper = Loader.loadPDF(pdf.body())) {
                return new PDFTextStripper().getText(paper).replaceAll("\\s+", " ");
            }
        } catch (IOException e) {
            throw new IllegalStateException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    private static void says(String paper, String... parts) {
        for (String part : parts) {
            assertTrue(paper.contains(part), () -> part + " is not in: " + paper);
        }
    }

    @Test
    void the_paper_states_todays_balance() {
        JsonObject invoice = issued();
        String id = invoice.getString("id");
        String unpaid = paper("invoices/" + id + ".pdf");
        says(unpaid, "Balance due $43.30", "Please pay $43.30 by");
        assertFalse(unpaid.contains("Paid by"), unpaid);

        pay(id, "13.30");
        says(paper("invoices/" + id + ".pdf"), "Total 43.30", "-13.30", "Balance due $30.00", "Please pay $30.00 by");

        pay(id, "30.00");
        String paid = paper("invoices/" + id + ".pdf");
        says(paid, "Status Paid", "-43.30", "Balance due $0.00", "Paid in full. Nothing is due.");
        assertFalse(paid.contains("Please pay"), paid);

        json("POST", "api/invoices/" + id + "/credit", "{\"id\": \"" + id() + "\", \"reason\": \"Not ours\"}", 201);
        String credited = paper("invoices/" + id + ".pdf");
        says(credited, "Status Credited", "Credited in full -43.30", "Balance due $0.00", "by credit memo");
        assertFalse(credited.contains("Please pay"), credited);
        says(paper("invoices/" + id + "/credit-memo.pdf"), "Amount credited $43.30");
    }

    @Test
    void the_page_of_a_paid_invoice_says_paid_and_asks_for_nothing() {
        String id = issued().getString("id");
        Document open = Jsoup.parse(page("invoices/" + id).body());
        assertEquals(
                "Record payment",
                open.select("a[href=/payments/new?invoice=" + id + "]").text());
        assertEquals("Open", open.select(".lead .tag").text());

        pay(id, "43.30");

        Document paid = Jsoup.parse(page("invoices/" + id).body());
        String said = paid.select("main").text();
        assertEquals("Paid", paid.select(".lead .tag").text(), said);
        assertEquals("Balance due $0.00", paid.select("#money ~ .table tfoot").text());
        assertEquals(0, paid.select("main a[href^=/payments/new]").size(), said);
        assertFalse(said.contains("Record payment"), said);
    }

    private void pay(String invoice, String amount) {
        json("POST", "api/payments", InvoiceJson.payment(id(), customer, amount, "CARD", invoice, amount), 201);
    }

    @Test
    void what_a_draft_is_sent_is_what_is_read_back() {
        deposit("5.00");
        String id = id();
        String sent = """
            {"id": "%s", "version": 1, "customer": "%s", "serviceDate": "%s", "reference": "PO 4711",
             "note": "Thank you",
             "lines": [{"id": "%s", "serviceLine": "%s", "description": "Moss off the steps", "quantity": %s,
                        "price": %s,
                        "adjustments": [{"type": "ALLOWANCE", "amount": %s, "reason": "Came late"},
                                        {"type": "CHARGE", "amount": %s, "reason": "Ladder"}],
                        "taxCode": "Q-STANDARD"}],
             "adjustments": [{"type": "ALLOWANCE", "amount": %s, "reason": "Season", "taxCode": "Q-STANDARD"},
                             {"type": "CHARGE", "amount": %s, "reason": "Parking", "taxCode": "Q-STANDARD"}],
             "prepaid": %s, "rounding": %s}
            """.formatted(
                        id,
                        customer,
                        SiteToQuote.today(),
                        id(),
                        SiteToQuote.SOLAR_LINE,
                        InvoiceJson.quantity("2.5", "HUR"),
                        InvoiceJson.price("40.125", "2", "HUR", "0.025"),
                        InvoiceJson.money("1.00"),
                        InvoiceJson.money("2.00"),
                        InvoiceJson.money("3.00"),
                        InvoiceJson.money("20.00"),
                        InvoiceJson.money("5.00"),
                        InvoiceJson.money("-0.02"));
        json("POST", "api/invoices", sent.replace("\"version\": 1, ", ""), 201);
        JsonObject read = get("api/invoices/" + id);
        assertEquals(Json.createReader(new StringReader(sent)).readObject(), read.getJsonObject("content"));
        assertEquals("-0.02", amount(read.getJsonObject("totals"), "rounding"));

        JsonObject put =
                json("PUT", "api/invoices/" + id, read.getJsonObject("content").toString(), 200);
        assertEquals(read, put, "put back as it was read, it changes nothing");

        Map<String, String> wrong = SiteToQuote.fields(page("invoices/" + id + "/edit"));
        wrong.put("rounding", "-1.01");
        var refused = at.post(at.office(), "invoices", wrong);
        assertEquals(422, refused.statusCode());
        assertEquals(
                1,
                Jsoup.parse(refused.body()).select(".errors a[href=#rounding]").size());

        // The form keeps the rounding as well.
        Map<String, String> form = SiteToQuote.fields(page("invoices/" + id + "/edit"));
        form.put("note", "Thank you again");
        assertEquals(303, at.post(at.office(), "invoices", form).statusCode());
        assertEquals("-0.02", amount(get("api/invoices/" + id).getJsonObject("content"), "rounding"));
        JsonObject issued = json("POST", "api/invoices/" + id + "/issue", "{\"version\": 2}", 200);
        JsonObject totals = issued.getJsonObject("totals");
        assertEquals("-0.02", amount(totals, "rounding"));
        assertEquals(
                new BigDecimal(amount(totals, "gross")).subtract(new BigDecimal("5.02")),
                new BigDecimal(amount(issued, "open")));
        JsonArray adjustments = issued.getJsonArray("adjustments");
        assertEquals("8.25", adjustments.getJsonObject(0).getJsonObject("tax").getString("rate"));
    }

    @Test
    void a_draft_and_the_preview_refuse_the_same() {
        JsonObject preview = Json.createReader(new StringReader(
                        """
                        {"currency": "USD",
                         "lines": [{"quantity": %s, "price": %s, "tax": {"category": "S", "rate": "8.25"}}]}
                        """.formatted(InvoiceJson.quantity("1", "HUR"), InvoiceJson.price("40", "1", "HUR", "0"))))
                .readObject();
        JsonObject draft = Json.createReader(new StringReader(InvoiceJson.draft(id(), customer)))
                .readObject();
        json("POST", "api/invoices/preview", preview.toString(), 200);
        for (var wrong : Map.of("prepaid", "-0.01", "rounding", "1.01").entrySet()) {
            String field = wrong.getKey();
            JsonObject value = Json.createReader(new StringReader(InvoiceJson.money(wrong.getValue())))
                    .readObject();
            JsonObject computed = json(
                    "POST", "api/invoices/preview", with(preview, field, value).toString(), 422);
            JsonObject drafted =
                    json("POST", "api/invoices", with(draft, field, value).toString(), 422);
            assertEquals(computed.getString("type"), drafted.getString("type"));
            assertEquals(computed.getJsonArray("fields"), drafted.getJsonArray("fields"));
            assertEquals(field, drafted.getJsonArray("fields").getString(0));
        }
        JsonObject rate =
                json("POST", "api/invoices/preview", preview.toString().replace("8.25", "100.01"), 422);
        assertEquals("lines[0].tax.rate", rate.getJsonArray("fields").getString(0));
    }

    private static JsonObject with(JsonObject object, String name, JsonValue value) {
        return Json.createObjectBuilder(object).add(name, value).build();
    }

    @Test
    void a_new_line_takes_service_line_tax_and_unit_from_its_service() {
        Map<String, String> form = SiteToQuote.fields(page("invoices/new?customer=" + customer));
        assertEquals("", form.get("line-0-serviceLine"), "not the first of the list");
        assertEquals("", form.get("line-0-taxCode"));
        form.put("line-0-service", SiteToQuote.SOFT_WASH);
        Map<String, String> filled = SiteToQuote.fields(at.post(at.office(), "invoices/calculation", form));
        Map<String, Object> wash = serviceItem(SiteToQuote.SOFT_WASH);
        assertEquals(wash.get("line"), filled.get("line-0-serviceLine"));
        assertEquals(wash.get("tax"), filled.get("line-0-taxCode"));
        assertEquals(wash.get("name"), filled.get("line-0-description"));
        assertEquals("FTK", filled.get("line-0-quantityUnit"));

        // Another service gives its own, but what was written by hand stays.
        filled.put("line-0-description", "By hand");
        filled.put("line-0-service", SiteToQuote.PANEL);
        Map<String, String> other = SiteToQuote.fields(at.post(at.office(), "invoices/calculation", filled));
        assertEquals(SiteToQuote.SOLAR_LINE, other.get("line-0-serviceLine"));
        assertEquals("H87", other.get("line-0-quantityUnit"));
        assertEquals("By hand", other.get("line-0-description"));
        other.put("line-0-quantity", "2");
        other.put("line-0-gross", "7.50");
        assertEquals(303, at.post(at.office(), "invoices", other).statusCode());
    }

    private static Map<String, Object> serviceItem(String id) {
        try (var connection = Server.shared().database().asOwner().getConnection();
                var statement = connection.createStatement();
                var row = statement.executeQuery(
                        "select service_line_id, tax_code, name from service_item where id = '" + id + "'")) {
            assertTrue(row.next());
            return Map.of("line", row.getString(1), "tax", row.getString(2), "name", row.getString(3));
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }
}
