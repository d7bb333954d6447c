package eaveside.invoicing;

import eaveside.kernel.Check;
import eaveside.kernel.Elements;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import java.math.BigDecimal;
import java.util.List;
import org.joda.money.CurrencyUnit;
import org.jspecify.annotations.Nullable;

/**
 * What the arithmetic of an invoice needs to know: nothing of customers, documents or storage.
 *
 * @param  prepaid  paid before (BT-113), not below zero; null for nothing
 * @param  rounding added to the amount due (BT-114), such as cash rounding; may be below zero, and is at most a hundred
 *                 of the currency's smallest unit either way; null for none
 */
public record InvoiceInput(
        CurrencyUnit currency,
        List<Line> lines,
        List<DocumentAdjustment> adjustments,
        @Nullable Money prepaid,
        @Nullable Money rounding) {
    /** Rounding evens an amount out to coins; more would be an allowance without a name. */
    private static final int MOST_ROUNDING = 100;

    /**
     * One line.
     *
     * @param  quantity may be below zero: goods or work taken back; of a unit like that of the price
     */
    public record Line(Quantity quantity, ItemPrice price, List<Adjustment> adjustments, TaxRate tax) {
        public Line {
            adjustments = List.copyOf(adjustments);
            price.requireFor(quantity);
        }
    }

    /** An allowance or charge on the whole invoice, in the tax category and rate that it belongs to. */
    public record DocumentAdjustment(Adjustment.Type type, Money amount, String reason, TaxRate tax) {
        public DocumentAdjustment {
            reason = new Adjustment(type, amount, reason).reason();
        }

        public DocumentAdjustment(Adjustment adjustment, TaxRate tax) {
            this(adjustment.type(), adjustment.amount(), adjustment.reason(), tax);
        }

        public Adjustment adjustment() {
            return new Adjustment(type, amount, reason);
        }
    }

    public InvoiceInput {
        lines = List.copyOf(lines);
        adjustments = List.copyOf(adjustments);
        Check check = new Check();
        check.that(!lines.isEmpty(), () -> new KernelRefusal.NoRows("lines"));
        payable(check, prepaid, rounding);
        check.done();
        Elements.each("lines", lines, (line, i) -> {
            line.price().gross().in(currency, "price.gross");
            Elements.each(
                    "adjustments",
                    line.adjustments(),
                    (adjustment, j) -> adjustment.amount().in(currency, "amount"));
        });
        Elements.each(
                "adjustments",
                adjustments,
                (adjustment, i) -> adjustment.amount().in(currency, "amount"));
        if (prepaid != null) {
            prepaid.in(currency, "prepaid");
        }
        if (rounding != null) {
            rounding.in(currency, "rounding");
        }
    }

    /** One rule for what is computed and what is drafted. */
    static void payable(Check check, @Nullable Money prepaid, @Nullable Money rounding) {
        check.that(prepaid == null || !prepaid.isNegative(), () -> new KernelRefusal.Negative("prepaid"));
        if (rounding != null) {
            BigDecimal most =
                    BigDecimal.valueOf(MOST_ROUNDING, rounding.currency().getDecimalPlaces());
            check.that(
                    rounding.amount().abs().compareTo(most) <= 0,
                    () -> new InvoiceRefusal.RoundingTooLarge(
                            Money.of(rounding.currency(), most).toString()));
        }
    }

    /** The amount, zero where there is none. */
    Money orNone(@Nullable Money amount) {
        return amount == null ? Money.zero(currency) : amount;
    }

    /** Nothing prepaid, nothing rounded. */
    public static InvoiceInput of(CurrencyUnit currency, List<Line> lines, List<DocumentAdjustment> adjustments) {
        return new InvoiceInput(currency, lines, adjustments, null, null);
    }
}
