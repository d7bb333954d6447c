package eaveside.visits.internal;

import eaveside.catalog.StandardConsumable;
import eaveside.catalog.StandardMinutes;
import eaveside.costing.LineWork;
import eaveside.kernel.Decision;
import eaveside.kernel.Quantity;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.StockItemId;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.Unit;
import java.math.BigDecimal;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A line of work with what the catalog says about it: the measure by which a visit's cost is shared.
 *
 * @param  planned        zero for work beyond the plan
 * @param  done           in the same unit, the service's
 * @param  minutesPerUnit standard minutes
 * @param  consumables    what one unit of the work takes by standard
 */
@Decision
public record WorkLine(
        ServiceLineId serviceLine,
        @Nullable SurfaceId surface,
        Quantity planned,
        Quantity done,
        StandardMinutes minutesPerUnit,
        List<StandardConsumable> consumables) {
    public WorkLine {
        consumables = List.copyOf(consumables);
    }

    public boolean isDone() {
        return done.isPositive();
    }

    public LineWork workDone() {
        return new LineWork(serviceLine, minutesDone());
    }

    public LineWork workPlanned() {
        return new LineWork(serviceLine, minutesPlanned());
    }

    StandardMinutes minutesDone() {
        return minutesPerUnit.times(done);
    }

    StandardMinutes minutesPlanned() {
        return minutesPerUnit.times(planned);
    }

    /** What the units done take of the item by standard; none where the standard counts it in another type of unit. */
    BigDecimal standardUseOf(StockItemId item, Unit unit) {
        return consumables.stream()
                .filter(c -> c.item().equals(item) && c.perUnit().unit().isLike(unit))
                .map(c -> c.perUnit().exactlyIn(unit).multiply(done.value()))
                .reduce(BigDecimal.ZERO, BigDecimal::add);
    }
}
