package eaveside.web.invoices;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.quotes.SiteToQuote;
import eaveside.web.testing.Server;
import java.io.IOException;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.text.PDFTextStripper;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.Test;

/** Writing, issuing, paying and crediting invoices through the pages of the real server. */
class InvoicesHttpIT {
    private final SiteToQuote at = SiteToQuote.shared();

    private HttpResponse<String> get(String path) {
        return at.get(at.office(), path);
    }

    private HttpResponse<String> post(String path, Map<String, String> form) {
        return at.post(at.office(), path, form);
    }

    private static Document page(HttpResponse<String> answer) {
        return Jsoup.parse(answer.body());
    }

    private static String text(HttpResponse<String> answer) {
        return page(answer).select("main").text();
    }

    /** The form of a new invoice with two lines: 10 hours at 45.00 less 50.00, and 250 pieces at 12.00 a hundred. */
    private Map<String, String> written() {
        Map<String, String> form = SiteToQuote.fields(get("invoices/new?customer=" + SiteToQuote.CUSTOMER));
        form.put("more", "line");
        form = SiteToQuote.fields(post("invoices/calculation", form));
        form.put("reference", "PO 77");
        line(form, 0, "Gutters by hand", "10", "HUR", "45.00");
        form.put("line-0-adjustment-0-type", "ALLOWANCE");
        form.put("line-0-adjustment-0-amount", "50");
        form.put("line-0-adjustment-0-reason", "Came late");
        line(form, 1, "Clips", "250", "H87", "12.00");
        form.put("line-1-grossPer", "100");
        return form;
    }

    /** The lines of an invoice are rows, and so are its own allowances: which of them lacks a reason must be said. */
    @Test
    void what_an_allowance_of_the_whole_invoice_lacks_is_told_apart_from_its_lines() {
        Map<String, String> form = written();
        form.put("adjustment-0-type", "ALLOWANCE");
        form.put("adjustment-0-amount", "10%");
        form.put("adjustment-0-taxCode", "Q-STANDARD");
        var refused = post("invoices", form);
        assertEquals(422, refused.statusCode());
        String said = page(refused).select(".errors").text();
        assertAll(
                said,
                "Printed reason of invoice allowance or charge 1 is required",
                "Amount of invoice allowance or charge 1 is no percentage. Write it without the %");
        assertEquals("10%", page(refused).select("[name=adjustment-0-amount]").val());
        assertFalse(text(refused).contains("Printed reason in row"), "nor are the totals that cannot be told");
        assertFalse(text(post("invoices/calculation", form)).contains("Printed reason in row"));
    }

    private static void line(
            Map<String, String> form, int row, String description, String quantity, String unit, String price) {
        String p = "line-" + row + "-";
        form.put(p + "serviceLine", SiteToQuote.SOLAR_LINE);
        form.put(p + "description", description);
        form.put(p + "quantity", quantity);
        form.put(p + "quantityUnit", unit);
        form.put(p + "gross", price);
        form.put(p + "taxCode", "Q-STANDARD");
    }

    private String draft(Map<String, String> form) {
        var answer = post("invoices", form);
        assertEquals(303, answer.statusCode(), () -> text(answer));
        assertEquals("/invoices/" + form.get("id") + "?done=invoices.saved", SiteToQuote.location(answer));
        return form.get("id");
    }

    private String issued(String draft) {
        // Credit that other tests of the shared customer left stays where it is.
        Map<String, String> form = SiteToQuote.fields(get("invoices/" + draft + "/issue"));
        form.remove("applyCredit");
        var answer = post("invoices/" + draft + "/issue", form);
        assertEquals(303, answer.statusCode(), () -> text(answer));
        assertEquals("/invoices/" + draft + "?done=invoices.issued", SiteToQuote.location(answer));
        return draft;
    }

    private String paid(String invoice, String amount, String onInvoice) {
        Map<String, String> form = SiteToQuote.fields(get("payments/new?invoice=" + invoice));
        form.put("amount", amount);
        form.put("method", "CHECK");
        form.put(pays(form, invoice), onInvoice);
        if (!amount.equals(onInvoice)) {
            form.put("keepAsCredit", "yes");
        }
        var answer = post("payments", form);
        assertEquals(303, answer.statusCode(), () -> text(answer));
        return form.get("id");
    }

    /** The field that says how much of a payment the invoice takes. */
    static String pays(Map<String, String> form, String invoice) {
        return form.entrySet().stream()
                .filter(field ->
                        field.getKey().endsWith("-invoice") && field.getValue().equals(invoice))
                .map(field -> field.getKey().replace("-invoice", "-amount"))
                .findFirst()
                .orElseThrow();
    }

    private String open(String invoice) {
        return page(get("invoices/" + invoice))
                .select("#money ~ .table tfoot td.num")
                .text();
    }

    private static void assertAll(String text, String... parts) {
        for (String part : parts) {
            assertTrue(text.contains(part), () -> part + " is not in: " + text);
        }
    }

    // 450.00 − 50.00 + 30.00 = 430.00; 8.25 % of it = 35.475, rounded half up to 35.48.
    private static final String[] TOTALS = {"$400.00", "$30.00", "$430.00", "$35.48", "$465.48"};

    @Test
    void the_totals_follow_what_is_typed() {
        Map<String, String> form = written();
        var swapped = server().send(
                        at.office(),
                        request("invoices/calculation", form)
                                .header("HX-Request", "true")
                                .header("HX-Target", "totals")
                                .build());
        assertEquals(200, swapped.statusCode());
        assertEquals(
                1, Jsoup.parse(swapped.body()).select("body > aside#totals").size(), swapped.body());
        assertAll(Jsoup.parse(swapped.body()).text(), TOTALS);

        // Without script, the button shows the whole form again with everything typed and the same totals.
        var whole = post("invoices/calculation", form);
        assertEquals(200, whole.statusCode());
        assertAll(page(whole).select("#totals").text(), TOTALS);
        assertEquals(
                "Gutters by hand",
                page(whole).select("[name=line-0-description]").val());
        assertEquals(404, get("invoices/" + form.get("id")).statusCode(), "nothing is stored");
    }

    private HttpRequest.Builder request(String path, Map<String, String> form) {
        StringBuilder body = new StringBuilder();
        form.forEach((name, value) -> body.append(body.isEmpty() ? "" : "&")
                .append(URLEncoder.encode(name, StandardCharsets.UTF_8))
                .append('=')
                .append(URLEncoder.encode(value, StandardCharsets.UTF_8)));
        return HttpRequest.newBuilder(server().at(path))
                .header("Content-Type", "application/x-www-form-urlencoded")
                .header("Accept", "text/html")
                .header("Origin", server().base().toString().replaceAll("/$", ""))
                .POST(HttpRequest.BodyPublishers.ofString(body.toString()));
    }

    private static Server server() {
        return Server.shared();
    }

    @Test
    void an_invoice_is_written_issued_and_printed() throws IOException, SQLException, InterruptedException {
        Map<String, String> form = written();
        String invoice = draft(form);
        draft(form); // the same form once more is the same draft
        assertAll(text(get("invoices/" + invoice)), TOTALS);
        assertTrue(text(get("invoices?show=DRAFTS")).contains("Alder Lane Clinic"));

        issued(invoice);
        var shown = get("invoices/" + invoice);
        assertEquals(List.of("no-store"), shown.headers().allValues("cache-control"));
        assertAll(text(shown), TOTALS);
        assertAll(text(shown), "PO 77", "Alder Lane Clinic", "12 Alder Lane", "$465.48 of $465.48 is due");
        assertEquals(1, at.audited("invoice.issue", "DONE", invoice));
        assertTrue(text(get("documents/" + invoice)).contains("$465.48"));

        String number = page(shown).select("h1").text().replace("Invoice ", "");
        var pdf = at.office()
                .send(
                        HttpRequest.newBuilder(server().at("invoices/" + invoice + ".pdf"))
                                .build(),
                        BodyHandlers.ofByteArray());
        assertEquals(List.of("application/pdf"), pdf.headers().allValues("content-type"));
        try (var paper = Loader.loadPDF(pdf.body())) {
            String printed = new PDFTextStripper().getText(paper);
            assertAll(printed, "Invoice " + number, "PO 77", "Came late: −$50.00", "430.00", "35.48", "$465.48");
        }
        assertEquals(
                404,
                at.get(at.office(), "invoices/" + invoice + "/credit-memo.pdf", "*/*")
                        .statusCode());

        // Found by its number and its customer, outstanding, and in the list as a file.
        assertTrue(text(get("invoices?q=" + number)).contains("Alder Lane Clinic"));
        assertEquals(
                1,
                page(get("invoices?q=alder"))
                        .select("#found a[href=/invoices/" + invoice + "#money]")
                        .size());
        // A search looks among those that the filter shows, and the filters keep what is searched for.
        for (String search : List.of("alder", number)) {
            assertEquals(
                    0,
                    page(get("invoices?show=PAST_DUE&q=" + search))
                            .select("#found a[href=/invoices/" + invoice + "#money]")
                            .size());
            var found = page(get("invoices?show=OUTSTANDING&q=" + search));
            assertEquals(
                    1,
                    found.select("#found a[href=/invoices/" + invoice + "#money]")
                            .size());
            assertEquals(
                    "/invoices?show=PAST_DUE&q=" + search,
                    found.select("#found .types a").get(2).attr("href"));
        }
        assertEquals(
                1,
                page(get("invoices?show=OUTSTANDING"))
                        .select("#found a[href=/invoices/" + invoice + "#money]")
                        .size());
        String csv =
                at.get(at.office(), "invoices/list.csv?q=" + number, "text/csv").body();
        assertAll(csv, "number,date,due,customer,total,open,credited", number + ",", ",465.48,465.48,");
        // An issued invoice is not a draft any more; who comes back to issue it is led to it.
        var back = get("invoices/" + invoice + "/issue");
        assertEquals(303, back.statusCode());
        assertTrue(back.headers().firstValue("location").orElseThrow().endsWith("/invoices/" + invoice));
        assertEquals(409, get("invoices/" + invoice + "/edit").statusCode());
    }

    @Test
    void a_form_has_at_most_five_hundred_rows_of_a_kind() {
        Map<String, String> form = written();
        for (int row = 2; row < 500; row++) {
            form.put("line-" + row + "-id", UUID.randomUUID().toString());
            line(form, row, "Panel " + row, "1", "H87", "1.00");
        }
        draft(form);
        Document stored = page(get("invoices/" + form.get("id") + "/edit"));
        assertEquals("Panel 499", stored.select("[name=line-499-description]").val());

        Map<String, String> longer = written();
        for (int row = 2; row <= 500; row++) {
            line(longer, row, "Panel " + row, "1", "H87", "1.00");
        }
        for (String address : List.of("invoices", "invoices/calculation")) {
            var answer = post(address, longer);
            assertEquals(400, answer.statusCode());
            assertAll(text(answer), "A form has at most 500 rows of a kind");
        }
        assertEquals(404, get("invoices/" + longer.get("id")).statusCode(), "nothing is stored");
    }

    /** More errors than are told: what is wrong further on is wrong all the same. */
    @Test
    void a_form_of_nothing_but_errors_is_refused() {
        Map<String, String> form = written();
        for (int row = 2; row < 500; row++) {
            line(form, row, "", "ten", "H87", "dear");
            form.put("line-" + row + "-adjustment-0-reason", "Early bird");
        }
        var answer = post("invoices", form);
        assertEquals(422, answer.statusCode());
        assertEquals(404, get("invoices/" + form.get("id")).statusCode(), "nothing is stored");
    }

    @Test
    void wrong_input_is_marked_and_kept() {
        Map<String, String> form = written();
        form.put("line-0-quantity", "ten");
        form.put("line-1-gross", "");
        var answer = post("invoices", form);

        assertEquals(422, answer.statusCode());
        Document page = page(answer);
        assertEquals("ten", page.select("[name=line-0-quantity]").val());
        assertEquals("true", page.select("[name=line-0-quantity]").attr("aria-invalid"));
        assertEquals(
                2, page.select(".errors li a").size(), page.select(".errors").text());
        assertEquals("Clips", page.select("[name=line-1-description]").val());
        assertAll(page.select(".errors").text(), "Price in row 2 is required");
        assertEquals(form.get("id"), page.select("[name=id]").val());
        assertTrue(page.title().startsWith("Error:"));
        assertEquals(404, get("invoices/" + form.get("id")).statusCode(), "nothing is stored");
    }

    @Test
    void who_saves_second_sees_both_versions() {
        String draft = draft(written());
        Map<String, String> mine = SiteToQuote.fields(get("invoices/" + draft + "/edit"));
        Map<String, String> theirs = SiteToQuote.fields(get("invoices/" + draft + "/edit"));
        theirs.put("line-0-description", "Gutters, theirs");
        assertEquals(303, post("invoices", theirs).statusCode());
        mine.put("line-0-description", "Gutters, mine");

        var answer = post("invoices", mine);
        assertEquals(409, answer.statusCode());
        assertTrue(page(answer).select("section.panel").text().contains("Gutters, theirs"));
        assertEquals(
                "Gutters, mine",
                page(answer).select("[name=line-0-description]").val());
        assertAll(page(answer).select("#totals").text(), TOTALS);
        // An issue that names the old version is refused as well.
        assertEquals(
                409,
                post(
                                "invoices/" + draft + "/issue",
                                Map.of("version", mine.get("version"), "date", SiteToQuote.today()))
                        .statusCode());
        // Nothing typed is lost, and the numbers are written as the company writes them.
        assertEquals("45.00", page(answer).select("[name=line-0-gross]").val());
        assertEquals("100", page(answer).select("[name=line-1-grossPer]").val());
        // The form that was shown names the stored version now: sending it again is deliberate.
        assertEquals(303, post("invoices", SiteToQuote.fields(answer)).statusCode());
        assertTrue(text(get("invoices/" + draft)).contains("Gutters, mine"));

        String version = page(get("invoices/" + draft)).select("[name=version]").val();
        assertEquals(
                409,
                post("invoices/" + draft + "/discard", Map.of("version", "0")).statusCode());
        assertEquals(
                303,
                post("invoices/" + draft + "/discard", Map.of("version", version))
                        .statusCode());
        assertEquals(404, get("invoices/" + draft).statusCode());
    }

    @Test
    void money_pays_in_parts_and_is_taken_back() throws SQLException {
        String invoice = issued(draft(written()));
        String first = paid(invoice, "200.00", "200.00");
        assertEquals("$265.48", open(invoice));
        String rest = paid(invoice, "300.00", "265.48");
        assertEquals("$0.00", open(invoice));
        assertTrue(text(get("payments/" + rest)).contains("$34.52"), "what no invoice takes becomes credit");
        assertTrue(text(get("invoices/account/" + SiteToQuote.CUSTOMER)).contains("$300.00"));
        assertEquals(1, at.audited("payment.record", "DONE", first));

        Map<String, String> reversal = SiteToQuote.fields(get("payments/" + first));
        assertEquals(422, post("payments/" + first + "/reverse", reversal).statusCode(), "a reason is asked for");
        reversal.put("reason", "Check bounced");
        assertEquals(303, post("payments/" + first + "/reverse", reversal).statusCode());
        assertEquals(303, post("payments/" + first + "/reverse", reversal).statusCode(), "a retry");
        assertEquals("$200.00", open(invoice));
        assertTrue(at.audited("payment.reverse", "DONE", first) > 0);
        reversal.put("id", UUID.randomUUID().toString());
        assertEquals(409, post("payments/" + first + "/reverse", reversal).statusCode(), "once only");

        // The credit that the second payment left pays a part; taking the match back frees it again.
        Map<String, String> apply = SiteToQuote.fields(get("invoices/" + invoice + "/apply"));
        apply.put("amount", "34.52");
        assertEquals(303, post("invoices/" + invoice + "/apply", apply).statusCode());
        assertEquals("$165.48", open(invoice));
        Document shown = page(get("invoices/" + invoice));
        assertEquals(
                303,
                post(
                                "invoices/" + invoice + "/unapply",
                                Map.of(
                                        "id",
                                                shown.select("form[action$=unapply] [name=id]")
                                                        .val(),
                                        "original",
                                                shown.select("form[action$=unapply] [name=original]")
                                                        .val()))
                        .statusCode());
        assertEquals("$200.00", open(invoice));
    }

    @Test
    void more_than_is_open_is_refused_and_the_oldest_is_filled_in_first() {
        String invoice = issued(draft(written()));
        Map<String, String> form = SiteToQuote.fields(get("payments/new?invoice=" + invoice));
        form.put("amount", "500.00");
        form.put(pays(form, invoice), "500.00");
        form.put("method", "CASH");
        var answer = post("payments", form);
        assertEquals(422, answer.statusCode());
        assertAll(page(answer).select(".errors").text(), "465.48");
        assertEquals(
                "500.00",
                page(answer).select("[name=" + pays(form, invoice) + "]").val());

        form.put("amount", "1.00");
        form.remove(pays(form, invoice));
        Document spread = page(post("payments/spread", form));
        assertEquals("1.00", spread.select("table input.figure").getFirst().val());
        assertEquals(
                "$465.48 of $465.48",
                text(get("invoices/" + invoice)).replaceAll(".*?(\\$465.48 of \\$465.48).*", "$1"));
    }

    @Test
    void an_invoice_is_credited_in_full_once() throws IOException, SQLException, InterruptedException {
        String invoice = issued(draft(written()));
        paid(invoice, "65.48", "65.48");
        Map<String, String> credit = SiteToQuote.fields(get("invoices/" + invoice + "/credit"));
        assertEquals(422, post("invoices/" + invoice + "/credit", credit).statusCode(), "a reason is asked for");
        credit.put("reason", "Billed to the wrong address");
        assertEquals(303, post("invoices/" + invoice + "/credit", credit).statusCode());
        assertAll(text(get("invoices/" + invoice)), "Credited in full", "Billed to the wrong address");
        assertEquals(1, at.audited("invoice.credit", "DONE", invoice));
        var pdf = at.office()
                .send(
                        HttpRequest.newBuilder(server().at("invoices/" + invoice + "/credit-memo.pdf"))
                                .build(),
                        BodyHandlers.ofByteArray());
        try (var paper = Loader.loadPDF(pdf.body())) {
            assertAll(new PDFTextStripper().getText(paper), "Credit memo", "Billed to the wrong address", "$465.48");
        }
        credit.put("id", UUID.randomUUID().toString());
        assertEquals(409, post("invoices/" + invoice + "/credit", credit).statusCode());
    }

    @Test
    void a_visit_is_billed_with_the_reason_of_every_price() {
        VisitToBill visit = VisitToBill.done(at);
        var early = post("invoices/from-visit/" + visit.id(), Map.of());
        assertEquals(422, early.statusCode(), "a difference is undecided");
        visit.give();

        var answer = post("invoices/from-visit/" + visit.id(), Map.of());
        assertEquals(303, answer.statusCode(), () -> text(answer));
        String draft = URI.create(SiteToQuote.location(answer)).getPath().replace("/invoices/", "");
        assertEquals(
                SiteToQuote.location(answer),
                SiteToQuote.location(post("invoices/from-visit/" + visit.id(), Map.of())),
                "the draft that there is");
        String shown = text(get("invoices/" + draft));
        assertAll(shown, "48 at the quoted $7.80 each, makes $374.40.", "No charge", "Worth $34.20, not charged.");
        assertAll(shown, "$374.40", "$0.00");
        issued(draft);
        // 374.40 at 8.25 % = 30.888
        assertAll(text(get("invoices/" + draft)), "48 at the quoted $7.80 each, makes $374.40.", "$30.89", "$405.29");
        Document page = page(get("invoices/" + draft));
        assertEquals(1, page.select("a[href=/visits/" + visit.id() + "]").size());
        assertEquals(1, page.select("a[href=/quotes/" + visit.quote() + "]").size());
    }

    @Test
    void technicians_stay_outside_and_the_attempt_is_noted() throws SQLException {
        String draft = draft(written());
        assertEquals(403, at.get(at.technician(), "invoices/" + draft).statusCode());
        assertEquals(1, at.audited("access.get", "REFUSED", "/invoices/" + draft));
        assertEquals(403, at.post(at.technician(), "payments", Map.of()).statusCode());
        assertEquals(
                403,
                at.json(at.technician(), "POST", "api/invoices/preview", "{}").statusCode());
    }

    @Test
    void what_is_not_there_is_not_found() {
        assertEquals(404, get("invoices/" + UUID.randomUUID()).statusCode());
        assertEquals(404, get("invoices/nothing").statusCode());
        assertEquals(404, get("invoices/new?customer=" + UUID.randomUUID()).statusCode());
        assertEquals(404, get("payments/" + UUID.randomUUID()).statusCode());
        assertEquals(404, get("invoices/account/" + UUID.randomUUID()).statusCode());
        assertEquals(400, get("invoices?after=never").statusCode());
    }
}
