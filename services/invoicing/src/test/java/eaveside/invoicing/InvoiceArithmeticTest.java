package eaveside.invoicing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import eaveside.catalog.TaxCategory;
import eaveside.invoicing.InvoiceInput.DocumentAdjustment;
import eaveside.invoicing.InvoiceInput.Line;
import eaveside.invoicing.InvoiceTotals.TaxSubtotal;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Money;
import eaveside.kernel.Percent;
import eaveside.kernel.Quantity;
import eaveside.kernel.Unit;
import eaveside.kernel.UnitPrice;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.joda.money.CurrencyUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class InvoiceArithmeticTest {
    private static final CurrencyUnit USD = CurrencyUnit.USD;
    private static final TaxRate STANDARD = TaxRate.standard("8.25");
    private static final TaxRate EXEMPT = TaxRate.none(TaxCategory.E);

    private static Money usd(String amount) {
        return Money.of(USD, amount);
    }

    private static Line line(String quantity, String price, TaxRate tax, Adjustment... adjustments) {
        return new Line(
                Quantity.of(quantity, Unit.PIECE),
                ItemPrice.of(UnitPrice.perOne(USD, new BigDecimal(price), Unit.PIECE)),
                List.of(adjustments),
                tax);
    }

    private static InvoiceTotals total(Line... lines) {
        return InvoiceArithmetic.total(InvoiceInput.of(USD, List.of(lines), List.of()));
    }

    @ParameterizedTest
    @CsvSource({"1, 0.125, 0.13", "-1, 0.125, -0.13", "1, 0.1249999, 0.12", "3, 33.335, 100.01", "-3, 33.335, -100.01"})
    void a_line_net_rounds_once_and_ties_go_away_from_zero(String quantity, String price, String net) {
        assertEquals(List.of(usd(net)), total(line(quantity, price, EXEMPT)).lineNets());
    }

    /** Revenue is posted by service line, so that a total of little may be made of what no account holds. */
    @Test
    void what_the_books_cannot_hold_is_refused_by_the_parts_that_make_it() {
        String most = "999999999999";
        tooLarge(List.of("lines"), total(line("1", most, EXEMPT), line("1", most, EXEMPT), line("-1", most, EXEMPT)));
        InvoiceTotals lowered = InvoiceArithmetic.total(InvoiceInput.of(
                USD,
                List.of(line("1", most, EXEMPT)),
                List.of(new DocumentAdjustment(Adjustment.allowance(usd("5"), "Season"), EXEMPT))));
        tooLarge(List.of("adjustments"), lowered);
        tooLarge(List.of("lines", "adjustments"), total(line("1", most, STANDARD)));
        InvoiceTotals most1 = total(line("1", most, EXEMPT));
        assertEquals(most1, most1.held());
    }

    private static void tooLarge(List<String> fields, InvoiceTotals totals) {
        assertEquals(
                fields, assertThrows(KernelRefusal.TooLarge.class, totals::held).fields());
    }

    @Test
    void tax_is_taken_of_the_sum_of_a_rate_not_of_each_line() {
        // 3 × 0.06 at 8.25 % line by line would be 3 × 0.00; of the sum it is 0.01485.
        InvoiceTotals totals =
                total(line("1", "0.06", STANDARD), line("1", "0.06", STANDARD), line("1", "0.06", STANDARD));
        assertEquals(usd("0.01"), totals.tax());
        assertEquals(usd("0.19"), totals.gross());
    }

    @Test
    void a_tie_of_tax_below_zero_goes_away_from_zero() {
        InvoiceTotals totals = total(line("-1", "50", STANDARD)); // −4.125
        assertEquals(usd("-4.13"), totals.tax());
        assertEquals(usd("-54.13"), totals.due());
    }

    @Test
    void allowances_and_charges_count_on_their_line_and_on_the_document() {
        InvoiceTotals totals = InvoiceArithmetic.total(new InvoiceInput(
                USD,
                List.of(
                        line("2", "50", STANDARD, Adjustment.allowance(usd("10"), "Loyal customer")),
                        line("1", "30", EXEMPT, Adjustment.charge(usd("5"), "Ladder work"))),
                List.of(
                        new DocumentAdjustment(Adjustment.allowance(usd("9"), "Season"), STANDARD),
                        new DocumentAdjustment(Adjustment.charge(usd("4"), "Permit"), EXEMPT)),
                usd("20"),
                usd("-0.01")));
        assertEquals(List.of(usd("90"), usd("35")), totals.lineNets());
        assertEquals(usd("125"), totals.lineSum());
        assertEquals(usd("9"), totals.allowances());
        assertEquals(usd("4"), totals.charges());
        assertEquals(usd("120"), totals.net());
        assertEquals(
                List.of(
                        new TaxSubtotal(STANDARD, usd("81"), usd("6.68")), // 6.6825
                        new TaxSubtotal(EXEMPT, usd("39"), usd("0"))),
                totals.breakdown());
        assertEquals(usd("126.68"), totals.gross());
        assertEquals(usd("106.67"), totals.due());
    }

    @Test
    void a_quantity_may_come_in_another_unit_of_the_price_s_type() {
        Line gallons = new Line(
                Quantity.of("2", Unit.US_GALLON),
                ItemPrice.of(new UnitPrice(USD, new BigDecimal("8"), Quantity.of("128", Unit.US_FLUID_OUNCE))),
                List.of(),
                EXEMPT);
        assertEquals(usd("16"), InvoiceArithmetic.lineNet(gallons));
    }

    @Test
    void currencies_keep_their_own_minor_units() {
        CurrencyUnit jpy = CurrencyUnit.JPY;
        Line yen = new Line(
                Quantity.of("3", Unit.PIECE),
                ItemPrice.of(UnitPrice.perOne(jpy, new BigDecimal("33.5"), Unit.PIECE)),
                List.of(),
                TaxRate.standard("10"));
        InvoiceTotals totals = InvoiceArithmetic.total(InvoiceInput.of(jpy, List.of(yen), List.of()));
        assertEquals(Money.of(jpy, "101"), totals.net()); // 100.5
        assertEquals(Money.of(jpy, "10"), totals.tax()); // 10.1
    }

    @Test
    void what_cannot_be_is_refused() {
        assertThrows(KernelRefusal.NoRows.class, () -> InvoiceInput.of(USD, List.of(), List.of()));
        assertThrows(KernelRefusal.Negative.class, () -> line("1", "-1", EXEMPT));
        assertThrows(
                KernelRefusal.Unfit.class,
                () -> new ItemPrice(UnitPrice.perOne(USD, BigDecimal.ONE, Unit.PIECE), BigDecimal.TWO));
        assertThrows(KernelRefusal.Negative.class, () -> Adjustment.charge(usd("-1"), "Less"));
        assertThrows(InvoiceRefusal.RateNotOfCategory.class, () -> TaxRate.none(TaxCategory.S));
        assertThrows(InvoiceRefusal.RateNotOfCategory.class, () -> new TaxRate(TaxCategory.E, Percent.of("5")));
        assertThrows(KernelRefusal.TooLarge.class, () -> total(line("1000000", "1000000", EXEMPT)));
        assertThrows(
                KernelRefusal.UnlikeCurrencies.class,
                () -> InvoiceInput.of(CurrencyUnit.EUR, List.of(line("1", "1", EXEMPT)), List.of()));
    }

    static Stream<Long> seeds() {
        return new Random(20_261_125).longs(200).boxed();
    }

    /** Whatever the lines, the parts add up: EN 16931 BR-CO-10 and BR-CO-13 to BR-CO-16, BR-S-08. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void the_parts_add_up(long seed) {
        InvoiceInput input = RandomInvoices.input(new Random(seed), USD);
        InvoiceTotals totals = InvoiceArithmetic.total(input);
        assertEquals(totals.lineSum(), Money.sum(USD, totals.lineNets()));
        assertEquals(totals.net(), totals.lineSum().minus(totals.allowances()).plus(totals.charges()));
        assertEquals(
                totals.net(),
                Money.sum(
                        USD,
                        totals.breakdown().stream().map(TaxSubtotal::taxable).toList()));
        assertEquals(
                totals.tax(),
                Money.sum(USD, totals.breakdown().stream().map(TaxSubtotal::tax).toList()));
        assertEquals(totals.gross(), totals.net().plus(totals.tax()));
        assertEquals(totals.due(), totals.gross().minus(input.prepaid()).plus(input.rounding()));
        for (TaxSubtotal subtotal : totals.breakdown()) {
            BigDecimal exact = subtotal.taxable()
                    .amount()
                    .multiply(subtotal.rate().rate().value())
                    .movePointLeft(2);
            BigDecimal off = subtotal.tax().amount().subtract(exact).abs();
            assertEquals(-1, off.compareTo(new BigDecimal("0.0050001")), subtotal + " is off by more than half a cent");
        }
        List<Line> reordered = new ArrayList<>(input.lines());
        Collections.shuffle(reordered, new Random(seed));
        InvoiceTotals again = InvoiceArithmetic.total(
                new InvoiceInput(USD, reordered, input.adjustments(), input.prepaid(), input.rounding()));
        assertEquals(totals.due(), again.due(), "the order of lines does not matter");
    }
}
