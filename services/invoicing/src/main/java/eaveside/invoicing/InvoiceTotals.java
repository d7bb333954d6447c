package eaveside.invoicing;

import eaveside.kernel.Money;
import java.util.ArrayList;
import java.util.List;

/**
 * The amounts of an invoice, named as EN 16931 names them.
 *
 * @param  lineNets   net amount of each line, in order (BT-131)
 * @param  lineSum    their sum (BT-106)
 * @param  allowances sum of the document's allowances (BT-107)
 * @param  charges    sum of the document's charges (BT-108)
 * @param  net        total without tax (BT-109)
 * @param  breakdown  by tax category and rate (BG-23), in the order of first use
 * @param  tax        total tax (BT-110)
 * @param  gross      total with tax (BT-112)
 * @param  prepaid    BT-113
 * @param  rounding   BT-114
 * @param  due        amount due (BT-115)
 */
public record InvoiceTotals(
        List<Money> lineNets,
        Money lineSum,
        Money allowances,
        Money charges,
        Money net,
        List<TaxSubtotal> breakdown,
        Money tax,
        Money gross,
        Money prepaid,
        Money rounding,
        Money due) {
    public InvoiceTotals {
        lineNets = List.copyOf(lineNets);
        breakdown = List.copyOf(breakdown);
    }

    /** What is paid in all, what was prepaid included: total with tax, and its rounding (BT-112 + BT-114). */
    public Money payable() {
        return gross.plus(rounding);
    }

    /**
     * These totals, of what was entered; refuses what the books cannot hold, whichever of its parts are added up, since
     * revenue is posted by service line.
     */
    public InvoiceTotals held() {
        List<Money> parts = new ArrayList<>(lineNets);
        sumOfSizes(parts).held("lines");
        parts.addAll(List.of(allowances, charges));
        sumOfSizes(parts).held("adjustments");
        breakdown.forEach(subtotal -> parts.add(subtotal.tax()));
        sumOfSizes(parts).held("lines", "adjustments");
        return this;
    }

    private Money sumOfSizes(List<Money> parts) {
        return Money.sum(
                gross.currency(),
                parts.stream()
                        .map(part -> part.isNegative() ? part.negated() : part)
                        .toList());
    }

    /** What is taxed at one rate (BT-116) and the tax on it (BT-117). */
    public record TaxSubtotal(TaxRate rate, Money taxable, Money tax) {}
}
