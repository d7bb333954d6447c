package eaveside.invoicing;

import eaveside.kernel.CustomerId;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.InvoiceLineId;
import eaveside.kernel.VisitId;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * An invoice that is still being written: it has no number, owes nobody anything, and may go away.
 *
 * @param  version to be named by the next edit or the issue
 * @param  visit   that it bills; null for a freely written one
 * @param  origins of the lines that came from the visit
 * @param  totals  as they would be if it were issued as it is
 */
public record InvoiceDraft(
        InvoiceId id,
        int version,
        CustomerId customer,
        @Nullable VisitId visit,
        DraftContent content,
        Map<InvoiceLineId, LineOrigin> origins,
        InvoiceTotals totals) {
    public InvoiceDraft {
        origins = Map.copyOf(origins);
    }
}
