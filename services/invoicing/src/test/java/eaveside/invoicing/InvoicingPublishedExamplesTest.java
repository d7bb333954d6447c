package eaveside.invoicing;

import static eaveside.invoicing.InvoicingFixture.EXEMPT;
import static eaveside.invoicing.InvoicingFixture.rate;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.catalog.TaxCategory;
import eaveside.invoicing.InvoiceTotals.TaxSubtotal;
import eaveside.kernel.CustomerId;
import eaveside.kernel.DocumentId;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.Unit;
import eaveside.kernel.UnitPrice;
import eaveside.ledger.AccountRole;
import eaveside.ledger.EntryFilter;
import eaveside.ledger.EntryLine;
import eaveside.ledger.ReadLedger;
import eaveside.testing.Bench;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/**
 * Published figures through the real use cases and the database, as freely written invoices of a company that keeps its
 * books in Norwegian kroner (two decimals, like the other examples' currencies).
 */
@Tag("database")
class InvoicingPublishedExamplesTest {
    @RegisterExtension
    static final Bench bench = new Bench();

    private static InvoicingFixture fixture;
    private static CustomerId customer;

    @BeforeAll
    static void found() {
        fixture = new InvoicingFixture(bench, "NOK", "25", "15", "10", "14", "2.1", "5.5", "6", "6.25", "8.25");
        customer = fixture.customer("Ola Takrenne");
    }

    @AfterEach
    void books_are_true() {
        bench.verifyBooks();
    }

    private static Money nok(String amount) {
        return fixture.money(amount);
    }

    private static Draft.OnDocument on(Adjustment adjustment, String rate) {
        return new Draft.OnDocument(adjustment, rate(rate));
    }

    private static Map<String, String> breakdown(InvoiceTotals totals) {
        return totals.breakdown().stream()
                .collect(Collectors.toMap(
                        s -> s.rate().toString(),
                        s -> s.taxable().amount().toPlainString() + " / "
                                + s.tax().amount().toPlainString()));
    }

    private static IssuedInvoice issuedLine(String quantity, ItemPrice price, String rate) {
        return fixture.issue(
                fixture.draft(customer, fixture.content(fixture.line(fixture.windows, quantity, price, rate(rate)))));
    }

    private static Money tax(String quantity, String price, String rate) {
        return issuedLine(quantity, fixture.price(price, "1"), rate).totals().tax();
    }

    /**
     * Source: CEN/TC 434, validation artifacts of EN 16931-1:2017 (repository ConnectingEurope/eInvoicing-EN16931),
     * ubl/examples/ubl-tc434-example2.xml (NOK): lines 1273.00, −3.96, 4.96, −25.00, 187.50; document allowance 100 and
     * charge 100 at 25 %; 1460.50 at 25 % = 365.13, 1.00 at 15 % = 0.15, −25.00 exempt; net 1436.50, gross 1801.78,
     * prepaid 1000, due 801.78. Quantities and prices are chosen to give the published line nets.
     */
    @Test
    void invoice_example_2() {
        fixture.pay(customer, "1000");
        Draft content = fixture.content(
                List.of(
                        fixture.line(fixture.windows, "1", "1273", rate("25")),
                        fixture.line(fixture.windows, "-1", "3.96", rate("15")),
                        fixture.line(fixture.arrays, "2", "2.48", rate("15")),
                        fixture.line(fixture.arrays, "-1", "25", EXEMPT),
                        fixture.line(fixture.arrays, "5", "37.50", rate("25"))),
                List.of(
                        on(Adjustment.allowance(nok("100"), "Loyal customer"), "25"),
                        on(Adjustment.charge(nok("100"), "Freight"), "25")),
                "1000",
                "0");
        IssuedInvoice invoice = fixture.issue(fixture.draft(customer, content));
        InvoiceTotals totals = invoice.totals();
        assertEquals(
                List.of(nok("1273.00"), nok("-3.96"), nok("4.96"), nok("-25.00"), nok("187.50")), totals.lineNets());
        assertEquals(nok("100"), totals.allowances());
        assertEquals(nok("100"), totals.charges());
        assertEquals(
                Map.of("S 25%", "1460.50 / 365.13", "S 15%", "1.00 / 0.15", "E 0%", "-25.00 / 0.00"),
                breakdown(totals));
        assertEquals(nok("1436.50"), totals.net());
        assertEquals(nok("1801.78"), totals.gross());
        assertEquals(nok("1000"), totals.prepaid());
        assertEquals(nok("801.78"), totals.due());
        assertEquals(nok("801.78"), invoice.open());
        assertEquals("Exempt by the test", invoice.exemptionReasons().get(TaxCategory.E));
        Map<String, Money> posted =
                bench.get(ReadLedger.class).document(new DocumentId(invoice.id().value())).entries().stream()
                        .collect(Collectors.toMap(EntryLine::accountName, EntryLine::amount, Money::plus));
        assertEquals(nok("801.78"), posted.get("Receivables"));
        assertEquals(nok("1000"), posted.get("Customer credit"));
        assertEquals(nok("-365.28"), posted.get("Tax payable"));
        assertEquals(nok("-1436.50"), posted.get("Service revenue"));
    }

    /**
     * Source: CEN/TC 434, validation artifacts of EN 16931-1:2017 (repository ConnectingEurope/eInvoicing-EN16931),
     * ubl/examples/ubl-tc434-example3.xml: 800 at 25 % and 800 at 10 %, a charge of 100 at 25 %: 900 / 225 and 800 /
     * 80, net 1700, gross 2005.
     */
    @Test
    void invoice_example_3() {
        Draft content = fixture.content(
                List.of(
                        fixture.line(fixture.windows, "2", "400", rate("25")),
                        fixture.line(fixture.arrays, "1", "800", rate("10"))),
                List.of(on(Adjustment.charge(nok("100"), "Freight"), "25")),
                "0",
                "0");
        IssuedInvoice invoice = fixture.issue(fixture.draft(customer, content));
        assertEquals(Map.of("S 25%", "900.00 / 225.00", "S 10%", "800.00 / 80.00"), breakdown(invoice.totals()));
        assertEquals(nok("1700"), invoice.totals().net());
        assertEquals(nok("2005"), invoice.totals().gross());
        assertEquals(
                nok("-900"),
                bench
                        .get(ReadLedger.class)
                        .entries(
                                EntryFilter.of(AccountRole.REVENUE, invoice.date(), invoice.date())
                                        .on(fixture.windows),
                                null,
                                100)
                        .rows()
                        .stream()
                        .filter(e -> e.document().value().equals(invoice.id().value()))
                        .map(EntryLine::amount)
                        .reduce(nok("0"), Money::plus),
                "the charge is revenue of the service line taxed at its rate");
    }

    /**
     * Source: CEN/TC 434, validation artifacts of EN 16931-1:2017 (repository ConnectingEurope/eInvoicing-EN16931),
     * ubl/examples/ubl-tc434-example8.xml, lines 3, 5 and 1: 132 × 15.24 / 12 = 167.64; 441 / 12 = 36.75; 16000 ×
     * 0.00880 = 140.80.
     */
    @Test
    void base_quantity_pricing() {
        IssuedInvoice invoice = fixture.issue(fixture.draft(
                customer,
                fixture.content(
                        fixture.line(fixture.windows, "132", fixture.price("15.24", "12"), EXEMPT),
                        fixture.line(fixture.windows, "1", fixture.price("441", "12"), EXEMPT),
                        fixture.line(fixture.windows, "16000", fixture.price("0.00880", "1"), EXEMPT))));
        assertEquals(
                List.of(nok("167.64"), nok("36.75"), nok("140.80")),
                invoice.totals().lineNets());
        assertEquals(
                List.of(nok("167.64"), nok("36.75"), nok("140.80")),
                invoice.lines().stream().map(IssuedInvoice.Line::net).toList());
    }

    /**
     * Source: CEN/TC 434, validation artifacts of EN 16931-1:2017 (repository ConnectingEurope/eInvoicing-EN16931),
     * ubl/examples/sample-discount-price.xml: (0.1234 − 0.0022) × 100 = 12.12; 25 % = 3.03; gross 15.15.
     */
    @Test
    void discounted_price() {
        ItemPrice price = new ItemPrice(
                new UnitPrice(fixture.currency, new BigDecimal("0.1234"), Quantity.of("1", Unit.PIECE)),
                new BigDecimal("0.0022"));
        IssuedInvoice invoice = issuedLine("100", price, "25");
        assertEquals(nok("12.12"), invoice.totals().net());
        assertEquals(nok("3.03"), invoice.totals().tax());
        assertEquals(nok("15.15"), invoice.totals().gross());
        assertEquals(price, invoice.lines().getFirst().price());
    }

    /**
     * Source: CEN/TC 434, validation artifacts of EN 16931-1:2017 (repository ConnectingEurope/eInvoicing-EN16931),
     * test/Invoice-unit-UBL/BR-CO-17.xml, tests 3, 5 and 7: 2141.05 at 14 % = 299.75; 2141.19 at 2.1 % = 44.96;
     * −2141.19 at 5.5 % = −117.77.
     */
    @Test
    void tax_of_a_category() {
        assertEquals(nok("299.75"), tax("1", "2141.05", "14"));
        assertEquals(nok("44.96"), tax("1", "2141.19", "2.1"));
        // An invoice below zero is not issued, so the third stands beside a line that lifts the total.
        IssuedInvoice invoice = fixture.issue(fixture.draft(
                customer,
                fixture.content(
                        fixture.line(fixture.windows, "-1", "2141.19", rate("5.5")),
                        fixture.line(fixture.windows, "1", "3000", EXEMPT))));
        assertTrue(invoice.totals()
                .breakdown()
                .contains(new TaxSubtotal(TaxRate.standard("5.5"), nok("-2141.19"), nok("-117.77"))));
    }

    /**
     * Source: Franklin, Graybeal and Cooper, Principles of Accounting, Volume 1: Financial Accounting (OpenStax, 2019),
     * §12.2, Taxes Payable: a sale of 18,000 at 6 % sales tax is 1,080 of tax and 19,080 of cash.
     */
    @Test
    void sales_tax_of_the_textbook() {
        IssuedInvoice invoice = issuedLine("1", fixture.price("18000", "1"), "6");
        assertEquals(nok("1080"), invoice.totals().tax());
        assertEquals(nok("19080"), invoice.totals().gross());
    }

    /**
     * Source: Streamlined Sales Tax Governing Board, Streamlined Sales and Use Tax Agreement (2002, as amended), §324,
     * and in the same words Kansas Statutes 79-3676: carried to the third decimal, rounded up when that digit is above
     * four; here by invoice, as the seller may choose.
     *
     * <p>Source: Commonwealth of Massachusetts, General Laws, chapter 64H, section 4 (as amended by Acts of 2009,
     * chapter 27, section 54): the same rule. By it, computed: 12.95 × 6.25 % = 0.809375 → 0.81, its third digit being
     * nine; 0.29 × 6.25 % = 0.018125 → 0.02, its third digit being eight; 2.30 × 6.25 % = 0.14375 → 0.14, its third
     * digit being three; 50 × 8.25 % = 4.125 → 4.13.
     *
     * <p>Source: Texas Comptroller of Public Accounts, form 98-292, 8¼ % Sales and Use Tax Chart (undated in the copy
     * read in 2026): 4.06 → 0.33, 4.18 → 0.34, 5.87 → 0.48, 5.88 → 0.49, 10.24 → 0.84, 10.25 → 0.85.
     */
    @Test
    void sales_tax_rounding() {
        assertEquals(nok("0.33"), tax("1", "4.06", "8.25"));
        assertEquals(nok("0.34"), tax("1", "4.18", "8.25"));
        assertEquals(nok("0.48"), tax("1", "5.87", "8.25"));
        assertEquals(nok("0.49"), tax("1", "5.88", "8.25"));
        assertEquals(nok("0.84"), tax("1", "10.24", "8.25"));
        assertEquals(nok("0.85"), tax("1", "10.25", "8.25"));
        assertEquals(nok("0.81"), tax("1", "12.95", "6.25"));
        assertEquals(nok("4.13"), tax("1", "50", "8.25"));
        assertEquals(nok("0.02"), tax("1", "0.29", "6.25"));
        assertEquals(nok("0.14"), tax("1", "2.30", "6.25"));
    }

    /**
     * The same without storing anything. Source: CEN/TC 434, validation artifacts of EN 16931-1:2017 (repository
     * ConnectingEurope/eInvoicing-EN16931), ubl/examples/ubl-tc434-example3.xml.
     */
    @Test
    void a_preview_computes_the_same() {
        InvoiceInput.Line windows = new InvoiceInput.Line(
                Quantity.of("2", Unit.PIECE), fixture.price("400", "1"), List.of(), TaxRate.standard("25"));
        InvoiceInput.Line arrays = new InvoiceInput.Line(
                Quantity.of("1", Unit.PIECE), fixture.price("800", "1"), List.of(), TaxRate.standard("10"));
        InvoiceTotals totals = bench.get(PreviewInvoice.class)
                .preview(InvoiceInput.of(
                        fixture.currency,
                        List.of(windows, arrays),
                        List.of(new InvoiceInput.DocumentAdjustment(
                                Adjustment.charge(nok("100"), "Freight"), TaxRate.standard("25")))));
        assertEquals(nok("2005"), totals.gross());
    }
}
