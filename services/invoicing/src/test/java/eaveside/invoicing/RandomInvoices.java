package eaveside.invoicing;

import eaveside.catalog.TaxCategory;
import eaveside.invoicing.InvoiceInput.DocumentAdjustment;
import eaveside.invoicing.InvoiceInput.Line;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.Unit;
import eaveside.kernel.UnitPrice;
import java.math.BigDecimal;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.joda.money.CurrencyUnit;

/** Invoices out of a seeded generator: awkward prices, base quantities, quantities below zero, several rates. */
public final class RandomInvoices {
    private static final List<TaxRate> RATES = List.of(
            TaxRate.standard("8.25"),
            TaxRate.standard("6.25"),
            TaxRate.standard("0.375"),
            TaxRate.none(TaxCategory.E),
            TaxRate.none(TaxCategory.Z));

    private RandomInvoices() {}

    public static InvoiceInput input(Random random, CurrencyUnit currency) {
        return new InvoiceInput(
                currency,
                IntStream.rangeClosed(0, random.nextInt(12))
                        .mapToObj(i -> line(random, currency))
                        .toList(),
                IntStream.range(0, random.nextInt(4))
                        .mapToObj(i -> new DocumentAdjustment(adjustment(random, currency), rate(random)))
                        .toList(),
                money(random, currency),
                Money.of(currency, BigDecimal.valueOf(random.nextInt(-4, 5), 2)));
    }

    public static TaxRate rate(Random random) {
        return RATES.get(random.nextInt(RATES.size()));
    }

    public static Adjustment adjustment(Random random, CurrencyUnit currency) {
        return new Adjustment(
                random.nextBoolean() ? Adjustment.Type.ALLOWANCE : Adjustment.Type.CHARGE,
                money(random, currency),
                "Of a random test");
    }

    public static Money money(Random random, CurrencyUnit currency) {
        return Money.of(currency, BigDecimal.valueOf(random.nextInt(100_000), 2));
    }

    private static Line line(Random random, CurrencyUnit currency) {
        BigDecimal gross = BigDecimal.valueOf(random.nextInt(1_000_000), random.nextInt(7));
        BigDecimal discount = random.nextInt(3) == 0 ? gross.multiply(new BigDecimal("0.125")) : BigDecimal.ZERO;
        return new Line(
                Quantity.of(BigDecimal.valueOf(random.nextInt(-2_000, 20_000), random.nextInt(4)), Unit.PIECE),
                new ItemPrice(
                        new UnitPrice(
                                currency,
                                gross,
                                Quantity.of(new long[] {1, 1, 7, 12, 100}[random.nextInt(5)], Unit.PIECE)),
                        discount),
                IntStream.range(0, random.nextInt(3))
                        .mapToObj(i -> adjustment(random, currency))
                        .toList(),
                rate(random));
    }
}
