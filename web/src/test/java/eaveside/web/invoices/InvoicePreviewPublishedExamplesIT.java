package eaveside.web.invoices;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.quotes.SiteToQuote;
import jakarta.json.Json;
import jakarta.json.JsonObject;
import jakarta.json.JsonString;
import jakarta.json.JsonValue;
import java.io.StringReader;
import java.util.List;
import org.junit.jupiter.api.Test;

/** {@code POST /api/invoices/preview} on the real server, against the public example invoices of EN 16931. */
class InvoicePreviewPublishedExamplesIT {
    private final SiteToQuote at = SiteToQuote.shared();

    private JsonObject preview(String body) {
        var answer = at.json(at.office(), "POST", "api/invoices/preview", body);
        assertEquals(200, answer.statusCode(), answer.body());
        return Json.createReader(new StringReader(answer.body())).readObject();
    }

    /** A body in the currency: lines and adjustments as they are below, with what else there is. */
    private static String invoice(String currency, String lines, String adjustments, String more) {
        return ("{\"currency\": \"CUR\", \"lines\": [%s], \"adjustments\": [%s]%s}".formatted(lines, adjustments, more))
                .replace("CUR", currency);
    }

    /** A line of so many pieces at a price for so many, less a discount; tax is written {@code S 25}. */
    private static String line(String quantity, String price, String per, String discount, String tax) {
        return """
            {"quantity": {"value": %s, "unit": "C62"},
             "price": {"gross": {"amount": %s, "currency": "CUR", "per": {"value": %s, "unit": "C62"}},
                       "discount": %s}, "tax": %s}\
            """.formatted(quantity, price, per, discount, tax(tax));
    }

    private static String line(String quantity, String price, String tax) {
        return line(quantity, price, "1", "0", tax);
    }

    private static String tax(String tax) {
        String[] parts = tax.split(" ");
        return parts.length == 1
                ? "{\"category\": \"%s\"}".formatted(parts[0])
                : "{\"category\": \"%s\", \"rate\": %s}".formatted(parts[0], parts[1]);
    }

    private static String adjustment(String type, String amount, String tax) {
        return "{\"type\": \"%s\", \"amount\": %s, \"reason\": \"Published\", \"tax\": %s}"
                .formatted(type, money(amount), tax(tax));
    }

    private static String money(String amount) {
        return "{\"amount\": \"%s\", \"currency\": \"CUR\"}".formatted(amount);
    }

    private static List<String> texts(JsonObject totals, String name) {
        return totals.getJsonArray(name).getValuesAs(JsonObject.class).stream()
                .map(amount -> amount.getString("amount"))
                .toList();
    }

    private static List<String> breakdown(JsonObject totals) {
        return totals.getJsonArray("breakdown").getValuesAs(JsonObject.class).stream()
                .map(t -> t.getJsonObject("rate").getString("category") + " "
                        + t.getJsonObject("rate").getString("rate") + ": " + amount(t, "taxable") + " / "
                        + amount(t, "tax"))
                .toList();
    }

    private static String amount(JsonObject within, String name) {
        return within.getJsonObject(name).getString("amount");
    }

    private static void assertFigures(JsonObject totals, String... namesAndValues) {
        for (int i = 0; i < namesAndValues.length; i += 2) {
            assertEquals(namesAndValues[i + 1], amount(totals, namesAndValues[i]), namesAndValues[i]);
        }
    }

    /**
     * Source: CEN/TC 434, validation artifacts of EN 16931-1:2017 (repository ConnectingEurope/eInvoicing-EN16931),
     * ubl/examples/ubl-tc434-example2.xml (NOK): lines 1273.00, −3.96, 4.96, −25.00, 187.50; allowance 100 and charge 100
     * at 25 %; 1460.50 at 25 % = 365.13, 1.00 at 15 % = 0.15, −25.00 exempt; net 1436.50, gross 1801.78, prepaid 1000, due
     * 801.78. Quantities and prices are chosen to give the published line nets; decimals come as numbers.
     */
    @Test
    void invoice_example_2() {
        JsonObject totals = preview(invoice(
                "NOK",
                String.join(
                        ",",
                        line("1", "1273", "S 25"),
                        line("-1", "3.96", "S 15"),
                        line("2", "2.48", "S 15"),
                        line("-1", "25", "E 0"),
                        line("5", "37.50", "S 25")),
                adjustment("ALLOWANCE", "100", "S 25") + "," + adjustment("CHARGE", "100", "S 25"),
                ", \"prepaid\": " + money("1000")));

        assertEquals(List.of("1273.00", "-3.96", "4.96", "-25.00", "187.50"), texts(totals, "lineNets"));
        assertEquals(List.of("S 25: 1460.50 / 365.13", "S 15: 1.00 / 0.15", "E 0: -25.00 / 0.00"), breakdown(totals));
        assertFigures(
                totals,
                "lineSum",
                "1436.50",
                "allowances",
                "100.00",
                "charges",
                "100.00",
                "net",
                "1436.50",
                "tax",
                "365.28",
                "gross",
                "1801.78",
                "prepaid",
                "1000.00",
                "rounding",
                "0.00",
                "due",
                "801.78");
    }

    /**
     * Source: CEN/TC 434, validation artifacts of EN 16931-1:2017 (repository ConnectingEurope/eInvoicing-EN16931),
     * ubl/examples/ubl-tc434-example3.xml: 800 at 25 % and 800 at 10 %, a charge of 100 at 25 %: 900 / 225 and 800 / 80,
     * net 1700, gross 2005. Decimals come as texts.
     */
    @Test
    void invoice_example_3() {
        JsonObject totals = preview(invoice(
                "DKK",
                line("\"2\"", "\"400.00\"", "S \"25\"") + "," + line("\"1\"", "\"800.00\"", "S \"10\""),
                adjustment("CHARGE", "100", "S \"25\""),
                ""));

        assertEquals(List.of("800.00", "800.00"), texts(totals, "lineNets"));
        assertEquals(List.of("S 25: 900.00 / 225.00", "S 10: 800.00 / 80.00"), breakdown(totals));
        assertFigures(
                totals, "lineSum", "1600.00", "charges", "100.00", "net", "1700.00", "tax", "305.00", "gross",
                "2005.00", "due", "2005.00");
    }

    /**
     * Source: CEN/TC 434, validation artifacts of EN 16931-1:2017 (repository ConnectingEurope/eInvoicing-EN16931),
     * ubl/examples/ubl-tc434-example8.xml, lines 3, 5 and 1: 132 × 15.24 / 12 = 167.64; 441 / 12 = 36.75; 16000 × 0.00880 =
     * 140.80.
     */
    @Test
    void base_quantity_pricing() {
        JsonObject totals = preview(invoice(
                "EUR",
                String.join(
                        ",",
                        line("132", "15.24", "12", "0", "Z"),
                        line("1", "\"441\"", "\"12\"", "0", "Z"),
                        line("16000", "0.00880", "Z")),
                "",
                ""));

        assertEquals(List.of("167.64", "36.75", "140.80"), texts(totals, "lineNets"));
        assertFigures(totals, "net", "345.19", "tax", "0.00", "gross", "345.19");
    }

    /**
     * Source: CEN/TC 434, validation artifacts of EN 16931-1:2017 (repository ConnectingEurope/eInvoicing-EN16931),
     * ubl/examples/sample-discount-price.xml: (0.1234 − 0.0022) × 100 = 12.12; 25 % = 3.03; gross 15.15.
     */
    @Test
    void discounted_price() {
        JsonObject totals = preview(invoice("NOK", line("100", "0.1234", "1", "0.0022", "S 25"), "", ""));

        assertEquals(List.of("12.12"), texts(totals, "lineNets"));
        assertEquals(List.of("S 25: 12.12 / 3.03"), breakdown(totals));
        assertFigures(totals, "net", "12.12", "tax", "3.03", "gross", "15.15");
    }

    /**
     * Source: CEN/TC 434, validation artifacts of EN 16931-1:2017 (repository ConnectingEurope/eInvoicing-EN16931),
     * test/Invoice-unit-UBL/BR-CO-17.xml, tests 3, 5 and 7: 2141.05 at 14 % = 299.75; 2141.19 at 2.1 % = 44.96; −2141.19 at 5.5 % = −117.77.
     */
    @Test
    void tax_of_a_category() {
        JsonObject totals = preview(invoice(
                "EUR",
                String.join(
                        ",",
                        line("1", "2141.05", "S 14"),
                        line("1", "2141.19", "S 2.1"),
                        line("-1", "2141.19", "S 5.5")),
                "",
                ""));

        assertEquals(
                List.of("S 14: 2141.05 / 299.75", "S 2.1: 2141.19 / 44.96", "S 5.5: -2141.19 / -117.77"),
                breakdown(totals));
    }

    /**
     * Source: ISO 4217, Codes for the representation of currencies (2015), minor units: JPY has none and KWD three
     * decimals. Tax of 10 % and rounding computed from the definition.
     */
    @Test
    void amounts_have_the_decimals_of_their_currency() {
        String onLine = ", \"adjustments\": [{\"type\": \"ALLOWANCE\", \"amount\": %s, \"reason\": \"Late\"},"
                        .formatted(money("10"))
                + " {\"type\": \"CHARGE\", \"amount\": %s, \"reason\": \"Ladder\"}]}".formatted(money("5"));
        assertFigures(
                preview(invoice(
                        "JPY",
                        line("3", "115", "S 10").replaceFirst("}$", onLine),
                        "",
                        ", \"rounding\": " + money("-1"))),
                "net",
                "340",
                "tax",
                "34",
                "gross",
                "374",
                "due",
                "373");
        assertFigures(preview(invoice("KWD", line("1", "1.2345", "Z"), "", "")), "gross", "1.235");
    }

    /** No outside figure: what the address answers. */
    @Test
    void what_cannot_be_read_is_named() {
        for (String body : List.of(
                "",
                "[]",
                "{\"currency\": ",
                "{\"lines\": []}",
                "{\"currency\": \"XQQ\", \"lines\": []}",
                "{\"currency\": \"USD\", \"lines\": [null]}",
                "{\"currency\": \"USD\", \"currency\": \"USD\", \"lines\": []}",
                invoice("USD", line("1", "1", "Z"), "", "") + "{}",
                invoice("USD", line("1", "1", "Z"), "", "") + " and more",
                invoice("USD", line("1", "1", "Z").replaceFirst("\"quantity\": [^}]*},", ""), "", ""),
                invoice("USD", line("\"one\"", "1", "Z"), "", ""),
                invoice("USD", line("1", "1", "Q"), "", ""),
                invoice("USD", line("1e999999999", "1", "Z"), "", ""))) {
            var answer = at.json(at.office(), "POST", "api/invoices/preview", body);
            assertEquals(400, answer.statusCode(), () -> body + " was answered with " + answer.body());
            assertTrue(answer.body().contains("\"title\""), answer.body());
        }
    }

    /** No outside figure: what the address answers. */
    @Test
    void a_preview_refuses_a_total_that_a_draft_refuses() {
        String two = line("1", "999999999999", "Z") + ", " + line("1", "999999999999", "Z");
        var answer = at.json(at.office(), "POST", "api/invoices/preview", invoice("USD", two, "", ""));
        assertEquals(422, answer.statusCode(), answer.body());
        assertTrue(answer.body().contains("\"fields\":[\"lines\"]"), answer.body());
    }

    /** No outside figure: what the address answers. */
    @Test
    void a_rule_that_is_broken_is_named() {
        var none = at.json(at.office(), "POST", "api/invoices/preview", "{\"currency\": \"USD\", \"lines\": []}");
        assertEquals(422, none.statusCode(), none.body());
        assertTrue(none.body().contains("urn:eaveside:refusal:kernel.no-rows"), none.body());
        var rate = at.json(at.office(), "POST", "api/invoices/preview", invoice("USD", line("1", "1", "E 5"), "", ""));
        assertEquals(422, rate.statusCode(), rate.body());
        JsonObject problem = Json.createReader(new StringReader(rate.body())).readObject();
        assertEquals(
                List.of("lines[0].tax.rate"),
                problem.getJsonArray("fields").stream()
                        .map(InvoicePreviewPublishedExamplesIT::text)
                        .toList());
    }

    private static String text(JsonValue value) {
        return ((JsonString) value).getString();
    }
}
