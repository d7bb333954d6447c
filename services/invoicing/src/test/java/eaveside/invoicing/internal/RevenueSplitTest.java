package eaveside.invoicing.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import eaveside.catalog.TaxCategory;
import eaveside.invoicing.Adjustment;
import eaveside.invoicing.InvoiceArithmetic;
import eaveside.invoicing.InvoiceInput;
import eaveside.invoicing.InvoiceInput.DocumentAdjustment;
import eaveside.invoicing.InvoiceTotals;
import eaveside.invoicing.RandomInvoices;
import eaveside.invoicing.TaxRate;
import eaveside.invoicing.internal.RevenueSplit.Part;
import eaveside.invoicing.internal.RevenueSplit.Share;
import eaveside.kernel.FindingId;
import eaveside.kernel.Money;
import eaveside.kernel.ServiceLineId;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.joda.money.CurrencyUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class RevenueSplitTest {
    private static final CurrencyUnit USD = CurrencyUnit.USD;
    private static final TaxRate STANDARD = TaxRate.standard("8.25");
    private static final TaxRate EXEMPT = TaxRate.none(TaxCategory.E);

    private final Share arrays = new Share(ServiceLineId.next(), null);
    private final Share windows = new Share(ServiceLineId.next(), null);
    private final Share roofs = new Share(ServiceLineId.next(), null);

    private static Money usd(String amount) {
        return Money.of(USD, amount);
    }

    private static DocumentAdjustment allowance(String amount, TaxRate tax) {
        return new DocumentAdjustment(Adjustment.allowance(usd(amount), "Season"), tax);
    }

    @Test
    void an_allowance_is_shared_within_its_rate_by_net_and_loses_no_cent() {
        List<Part> parts = List.of(
                new Part(arrays, STANDARD, usd("100")),
                new Part(windows, STANDARD, usd("100")),
                new Part(roofs, STANDARD, usd("100")),
                new Part(roofs, EXEMPT, usd("500")));
        assertEquals(
                Map.of(arrays, usd("96.66"), windows, usd("96.67"), roofs, usd("596.67")),
                RevenueSplit.split(parts, List.of(allowance("10", STANDARD))));
    }

    @Test
    void a_rate_without_lines_is_shared_over_all_of_them() {
        List<Part> parts = List.of(new Part(arrays, STANDARD, usd("75")), new Part(windows, STANDARD, usd("25")));
        assertEquals(
                Map.of(arrays, usd("67.50"), windows, usd("22.50")),
                RevenueSplit.split(parts, List.of(allowance("10", EXEMPT))));
    }

    @Test
    void lines_below_zero_weigh_nothing() {
        List<Part> parts = List.of(new Part(arrays, STANDARD, usd("-40")), new Part(windows, STANDARD, usd("25")));
        assertEquals(
                Map.of(arrays, usd("-40"), windows, usd("15")),
                RevenueSplit.split(parts, List.of(allowance("10", STANDARD))));
    }

    @Test
    void work_from_a_finding_is_kept_apart() {
        Share found = new Share(arrays.serviceLine(), FindingId.next());
        List<Part> parts = List.of(new Part(arrays, STANDARD, usd("60")), new Part(found, STANDARD, usd("40")));
        assertEquals(
                Map.of(arrays, usd("54"), found, usd("36")),
                RevenueSplit.split(parts, List.of(allowance("10", STANDARD))));
    }

    static Stream<Long> seeds() {
        return new Random(20_261_125).longs(300).boxed();
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void the_shares_add_up_to_the_net_total_to_the_cent(long seed) {
        Random random = new Random(seed);
        InvoiceInput input = RandomInvoices.input(random, USD);
        InvoiceTotals totals = InvoiceArithmetic.total(input);
        List<Share> shares = List.of(arrays, windows, roofs, new Share(roofs.serviceLine(), FindingId.next()));
        List<Part> parts = IntStream.range(0, input.lines().size())
                .mapToObj(i -> new Part(
                        shares.get(random.nextInt(shares.size())),
                        input.lines().get(i).tax(),
                        totals.lineNets().get(i)))
                .toList();
        Map<Share, Money> split = RevenueSplit.split(parts, input.adjustments());
        assertEquals(totals.net(), Money.sum(USD, split.values()));
    }
}
