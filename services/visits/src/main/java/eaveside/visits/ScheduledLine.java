package eaveside.visits;

import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Quantity;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.VisitLineId;
import org.jspecify.annotations.Nullable;

/**
 * Planned work.
 *
 * @param  quantity more than zero, in any unit of the service's type
 */
public record ScheduledLine(
        VisitLineId id, ServiceItemId serviceItem, @Nullable SurfaceId surface, Quantity quantity) {
    public ScheduledLine {
        if (!quantity.isPositive()) {
            throw new KernelRefusal.NotPositive("quantity");
        }
    }
}
