package eaveside.invoicing;

import eaveside.invoicing.InvoiceInput.DocumentAdjustment;
import eaveside.invoicing.InvoiceInput.Line;
import eaveside.invoicing.InvoiceTotals.TaxSubtotal;
import eaveside.kernel.Decision;
import eaveside.kernel.Elements;
import eaveside.kernel.Money;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The arithmetic of an invoice after EN 16931-1: line net amounts, sums, the breakdown by tax category and rate, total
 * tax, gross and amount due. Every amount is in the invoice's currency at its minor unit; a line net and a category's
 * tax are each rounded once, ties away from zero (HALF_UP, for amounts below zero too), and everything else is a sum.
 */
@Decision
public final class InvoiceArithmetic {
    private InvoiceArithmetic() {}

    /** Refuses lines, prepaid amounts, allowances and charges that each alone are more than the books hold. */
    public static InvoiceTotals total(InvoiceInput input) {
        List<Money> lineNets = new ArrayList<>();
        Elements.each("lines", input.lines(), (line, i) -> lineNets.add(lineNet(line)));
        Money none = Money.zero(input.currency());
        Money lineSum = Money.sum(input.currency(), lineNets); // BR-CO-10
        Money allowances = sum(input, Adjustment.Type.ALLOWANCE); // BR-CO-11
        Money charges = sum(input, Adjustment.Type.CHARGE); // BR-CO-12
        Money net = lineSum.minus(allowances).plus(charges); // BR-CO-13
        List<TaxSubtotal> breakdown = breakdown(input, lineNets);
        Money tax = breakdown.stream().map(TaxSubtotal::tax).reduce(none, Money::plus); // BR-CO-14
        Money gross = net.plus(tax); // BR-CO-15
        Money prepaid = input.orNone(input.prepaid()).bounded("prepaid");
        Money rounding = input.orNone(input.rounding());
        Money due = gross.minus(prepaid).plus(rounding); // BR-CO-16
        return new InvoiceTotals(
                lineNets, lineSum, allowances, charges, net, breakdown, tax, gross, prepaid, rounding, due);
    }

    /** (Net price ÷ base quantity) × quantity + charges − allowances of the line; the product rounded once. */
    public static Money lineNet(Line line) {
        Money net = line.price().net().times(line.quantity()).held("quantity", "price.gross");
        for (Adjustment adjustment : line.adjustments()) {
            net = net.plus(adjustment.signed()).held("quantity", "adjustments");
        }
        return net;
    }

    private static Money sum(InvoiceInput input, Adjustment.Type type) {
        return Money.sum(
                input.currency(),
                input.adjustments().stream()
                        .map(DocumentAdjustment::adjustment)
                        .filter(a -> a.type() == type)
                        .map(a -> a.amount().bounded("adjustments"))
                        .toList());
    }

    /** Taxable amount = lines + charges − allowances of the category and rate (BR-S-08); tax on that sum (BR-CO-17). */
    private static List<TaxSubtotal> breakdown(InvoiceInput input, List<Money> lineNets) {
        Map<TaxRate, Money> taxable = new LinkedHashMap<>();
        for (int i = 0; i < lineNets.size(); i++) {
            taxable.merge(input.lines().get(i).tax(), lineNets.get(i), Money::plus);
        }
        for (DocumentAdjustment adjustment : input.adjustments()) {
            taxable.merge(adjustment.tax(), adjustment.adjustment().signed(), Money::plus);
        }
        List<TaxSubtotal> breakdown = new ArrayList<>();
        taxable.forEach((rate, amount) ->
                breakdown.add(new TaxSubtotal(rate, amount, rate.rate().of(amount))));
        return breakdown;
    }
}
