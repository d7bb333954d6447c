package eaveside.pricing;

import eaveside.costing.Effort;
import eaveside.kernel.Default;
import eaveside.kernel.Quantity;
import eaveside.kernel.Unit;

/**
 * The driving that a quote expects for its visit, there and back; it changes the expected cost, never the price.
 *
 * @param  drivingMinutes labor minutes of the whole crew
 * @param  distance       in miles or kilometers; none where it is left out
 */
public record ExpectedTravel(
        @Default("0") int drivingMinutes, @Default Quantity distance) {
    public static final ExpectedTravel NONE = new ExpectedTravel(0, Quantity.zero(Unit.MILE));

    public ExpectedTravel {
        distance = distance == null ? Quantity.zero(Unit.MILE) : distance;
        toEffort(0, drivingMinutes, distance);
    }

    /** With so many minutes of work on site. */
    public Effort withWork(int onSiteMinutes) {
        return toEffort(onSiteMinutes, drivingMinutes, distance);
    }

    private static Effort toEffort(int onSiteMinutes, int drivingMinutes, Quantity distance) {
        return new Effort(onSiteMinutes, drivingMinutes, 0, distance);
    }
}
