package eaveside.costing;

import eaveside.kernel.Quantity;
import eaveside.kernel.Unit;

/**
 * What a crew put into a visit. Minutes are labor minutes: two people for an hour are 120.
 *
 * @param  drivingMinutes there and back
 * @param  loadingMinutes loading, filling and cleaning up at the base
 * @param  distance       driven by the van, there and back, in miles or kilometers
 */
public record Effort(int onSiteMinutes, int drivingMinutes, int loadingMinutes, Quantity distance) {
    /** More than a crew can put into one visit: a slip of the finger. */
    public static final int MOST_MINUTES = 100_000;

    public Effort {
        within("onSiteMinutes", onSiteMinutes);
        within("drivingMinutes", drivingMinutes);
        within("loadingMinutes", loadingMinutes);
        if (distance.isNegative()) {
            throw new CostingRefusal.Negative("distance");
        }
        if (!distance.unit().isLike(Unit.KILOMETER)) {
            throw new CostingRefusal.NotADistance("distance", distance.unit());
        }
    }

    private static void within(String field, int minutes) {
        if (minutes < 0) {
            throw new CostingRefusal.Negative(field);
        }
        if (minutes > MOST_MINUTES) {
            throw new CostingRefusal.TooManyMinutes(field, MOST_MINUTES);
        }
    }

    /** All labor minutes. */
    public int personMinutes() {
        return onSiteMinutes + drivingMinutes + loadingMinutes;
    }
}
