package eaveside.visits.internal;

import eaveside.kernel.DocumentId;
import eaveside.kernel.Money;
import eaveside.kernel.Shared;
import eaveside.pricing.PriceWork;
import eaveside.visits.BillableLine;
import jakarta.inject.Inject;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What the work of a visit comes to when it is billed, kept with the visit, so that the worklist adds up what is not billed without
 * pricing it anew. The invoice is priced for itself.
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

    /** By that sheet; null where it is not known. A value that no book can hold is as good as none: the sheet is signed all the same. */
    public @Nullable BigDecimal of(VisitRow visit, DocumentId sheet, LocalDate completedOn) {
        List<BillableLine> lines = billableLines.soFar(visit, sheet);
        return lines.isEmpty()
                ? BigDecimal.ZERO
                : priceWork
                        .worth(
                                visit.priceBook(),
                                completedOn,
                                lines.stream().map(ValueToBill::done).toList(),
                                billableLines.borneBefore(visit))
                        .filter(Money::isHeld)
                        .map(Money::amount)
                        .orElse(null);
    }

    /** Once more, of a visit with a sheet; tells whether it comes to something else now. */
    public boolean keep(VisitRow visit) {
        return visit.becomesWorth(of(visit, visit.sheet(), visit.day()));
    }

    private static PriceWork.DoneLine done(BillableLine line) {
        return new PriceWork.DoneLine(
                line.line(), line.serviceItem(), line.quantity(), line.surface(), line.quoteLine(), line.noCharge());
    }
}
