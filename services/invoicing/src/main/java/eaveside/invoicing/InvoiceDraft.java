package eaveside.invoicing;

import eaveside.kernel.CustomerId;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.InvoiceLineId;
import eaveside.kernel.VisitId;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * A stored draft with what follows from it. It has no number, nothing is owed on it, and it may be discarded.
 *
 * @param  content with the version to be named by the next edit or the issue
 * @param  visit   that it bills; null for a freely written one
 * @param  origins of the lines that came from the visit
 * @param  totals  as they would be if it were issued as it is
 */
public record InvoiceDraft(
        Draft content, @Nullable VisitId visit, Map<InvoiceLineId, LineOrigin> origins, InvoiceTotals totals) {
    public InvoiceDraft {
        // In the order of the lines: a copy by Map.copyOf has another order with every start of the program.
        origins = Collections.unmodifiableMap(new LinkedHashMap<>(origins));
    }

    public InvoiceId id() {
        return content.id();
    }

    public int version() {
        return content.version();
    }

    public CustomerId customer() {
        return content.customer();
    }

    /** Whether the line bills no-charge work: it shows its value and takes all of it off again. */
    public boolean isNoCharge(InvoiceLineId line) {
        LineOrigin origin = origins.get(line);
        return origin != null && origin.noCharge();
    }
}
