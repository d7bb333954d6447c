package eaveside.invoicing;

import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import java.math.BigDecimal;
import java.util.List;
import java.util.stream.Stream;
import org.joda.money.CurrencyUnit;

/**
 * What the arithmetic of an invoice needs to know: nothing of customers, documents or storage.
 *
 * @param  prepaid  paid before (BT-113); not below zero
 * @param  rounding added to the amount due (BT-114), such as cash rounding; may be below zero, and is at most a hundred
 *                 of the currency's smallest unit either way
 */
public record InvoiceInput(
        CurrencyUnit currency, List<Line> lines, List<DocumentAdjustment> adjustments, Money prepaid, Money rounding) {
    /** Rounding evens an amount out to coins; more would be an allowance without a name. */
    private static final int MOST_ROUNDING = 100;

    /**
     * One line.
     *
     * @param  quantity may be below zero: goods or work taken back
     */
    public record Line(Quantity quantity, ItemPrice price, List<Adjustment> adjustments, TaxRate tax) {
        public Line {
            adjustments = List.copyOf(adjustments);
        }
    }

    /** An allowance or charge on the whole invoice, in the tax category and rate that it belongs to. */
    public record DocumentAdjustment(Adjustment adjustment, TaxRate tax) {}

    public InvoiceInput {
        lines = List.copyOf(lines);
        adjustments = List.copyOf(adjustments);
        if (lines.isEmpty()) {
            throw new InvoiceRefusal.NoLines();
        }
        requirePayable(prepaid, rounding);
        Stream.of(
                        lines.stream().map(l -> l.price().gross().currency()),
                        lines.stream()
                                .flatMap(l -> l.adjustments().stream())
                                .map(a -> a.amount().currency()),
                        adjustments.stream().map(a -> a.adjustment().amount().currency()),
                        Stream.of(prepaid.currency(), rounding.currency()))
                .flatMap(s -> s)
                .filter(c -> !c.equals(currency))
                .findFirst()
                .ifPresent(c -> {
                    throw new KernelRefusal.UnlikeCurrencies(currency.getCode(), c.getCode());
                });
    }

    /** One rule for what is computed and what is drafted. */
    static void requirePayable(Money prepaid, Money rounding) {
        if (prepaid.isNegative()) {
            throw new InvoiceRefusal.NegativePrepaid(prepaid.toString());
        }
        BigDecimal most = BigDecimal.valueOf(MOST_ROUNDING, rounding.currency().getDecimalPlaces());
        if (rounding.amount().abs().compareTo(most) > 0) {
            throw new InvoiceRefusal.RoundingTooLarge(
                    rounding.toString(), Money.of(rounding.currency(), most).toString());
        }
    }

    /** Nothing prepaid, nothing rounded. */
    public static InvoiceInput of(CurrencyUnit currency, List<Line> lines, List<DocumentAdjustment> adjustments) {
        return new InvoiceInput(currency, lines, adjustments, Money.zero(currency), Money.zero(currency));
    }
}
