package eaveside.invoicing;

import eaveside.kernel.FindingId;
import eaveside.kernel.VisitLineId;
import org.jspecify.annotations.Nullable;

/**
 * Where a line that bills a visit came from; edits of the line touch no more than the reason of its price.
 *
 * @param  finding     that the quote of the work came from
 * @param  noCharge    no-charge work: the line shows its value and takes all of it off again
 * @param  priceReason one sentence on how the price came about; empty once somebody has changed the price or quantity
 */
public record LineOrigin(VisitLineId visitLine, @Nullable FindingId finding, boolean noCharge, String priceReason) {
    /** The same work at a price that somebody wrote by hand. */
    public LineOrigin repriced() {
        return new LineOrigin(visitLine, finding, noCharge, "");
    }
}
