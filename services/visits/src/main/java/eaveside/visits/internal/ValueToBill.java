package eaveside.visits.internal;

import eaveside.kernel.Money;
import eaveside.kernel.Shared;
import eaveside.pricing.PriceWork;
import eaveside.visits.BillableLine;
import jakarta.inject.Inject;
import java.math.BigDecimal;
import java.util.List;

/**
 * Keeps with a visit what its work comes to when it is billed, so that the worklist adds up what is not billed without pricing
 * it anew. The invoice is priced for itself.
 */
@Shared
public class ValueToBill {
    private final BillableLines billableLines;
    private final PriceWork priceWork;

    @Inject
    public ValueToBill(BillableLines billableLines, PriceWork priceWork) {
        this.billableLines = billableLines;
        this.priceWork = priceWork;
    }

    /** Of a visit with a sheet. A value that no book can hold is as good as none: the sheet is signed all the same. */
    public void keep(VisitRow visit) {
        List<BillableLine> lines = billableLines.soFar(visit);
        visit.isWorth(
                lines.isEmpty()
                        ? BigDecimal.ZERO
                        : priceWork
                                .worth(
                                        visit.priceBook(),
                                        visit.day(),
                                        lines.stream().map(ValueToBill::done).toList(),
                                        billableLines.borneBefore(visit))
                                .filter(Money::isHeld)
                                .map(Money::amount)
                                .orElse(null));
    }

    private static PriceWork.DoneLine done(BillableLine line) {
        return new PriceWork.DoneLine(
                line.line(), line.serviceItem(), line.quantity(), line.surface(), line.quoteLine(), line.noCharge());
    }
}
