package eaveside.visits;

import eaveside.kernel.Quantity;
import eaveside.kernel.QuoteLineId;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.VisitLineId;
import org.jspecify.annotations.Nullable;

/**
 * Work that was done.
 *
 * @param  quoteLine whose unit price stands for it; null for extras and unquoted work
 * @param  noCharge  not billed, its value recorded
 */
public record BillableLine(
        VisitLineId line,
        ServiceItemId serviceItem,
        ServiceLineId serviceLine,
        @Nullable SurfaceId surface,
        Quantity quantity,
        @Nullable QuoteLineId quoteLine,
        boolean noCharge) {}
