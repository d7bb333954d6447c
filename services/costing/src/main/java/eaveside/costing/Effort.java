package eaveside.costing;

import eaveside.catalog.StandardMinutes;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Quantity;
import eaveside.kernel.Unit;
import java.math.BigDecimal;
import java.util.List;

/**
 * What a crew put into a visit. Minutes are labor minutes: two people for an hour are 120.
 *
 * @param  drivingMinutes there and back
 * @param  loadingMinutes loading, filling and cleaning up at the base
 * @param  distance       driven by the van, there and back, in miles or kilometers
 */
public record Effort(int onSiteMinutes, int drivingMinutes, int loadingMinutes, Quantity distance) {
    /** The most that a crew can put into one visit; more is a slip of the finger. */
    public static final int MOST_MINUTES = StandardMinutes.MOST.value().intValueExact();

    /** In miles or kilometers, likewise. */
    public static final int MOST_DISTANCE = 10_000;

    public Effort {
        within("onSiteMinutes", onSiteMinutes);
        within("drivingMinutes", drivingMinutes);
        within("loadingMinutes", loadingMinutes);
        if (distance.isNegative()) {
            throw new KernelRefusal.Negative("distance");
        }
        if (distance.value().compareTo(BigDecimal.valueOf(MOST_DISTANCE)) > 0) {
            throw new KernelRefusal.TooLarge("distance", distance.said());
        }
        if (!distance.unit().isLike(Unit.KILOMETER)) {
            throw new KernelRefusal.WrongUnit("distance", distance.unit(), DISTANCES);
        }
    }

    /** What distances are counted in. */
    static final List<Unit> DISTANCES = List.of(Unit.MILE, Unit.KILOMETER);

    private static void within(String field, int minutes) {
        if (minutes < 0) {
            throw new KernelRefusal.Negative(field);
        }
        if (minutes > MOST_MINUTES) {
            throw new KernelRefusal.OutOfRange(field, minutes, 0, MOST_MINUTES);
        }
    }

    /** All labor minutes. */
    public int laborMinutes() {
        return onSiteMinutes + drivingMinutes + loadingMinutes;
    }
}
