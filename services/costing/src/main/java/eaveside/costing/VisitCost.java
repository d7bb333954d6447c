package eaveside.costing;

import eaveside.costing.AppliedCost.SharedBy;
import eaveside.kernel.Decision;
import eaveside.kernel.Exact;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.UnitPrice;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Decides what a visit cost and who carries it; knows nothing of a database.
 *
 * <p>Labor is (on site + loading) × the labor rate. Travel is driving × the labor rate + distance × the travel rate.
 * Overhead is all labor minutes × the overhead rate. Each of the three is rounded once, HALF_UP to the minor unit,
 * and then shared over the service lines by standard minutes, the cents by largest remainder.
 */
@Decision
final class VisitCost {
    private static final BigDecimal MINUTES_PER_HOUR = BigDecimal.valueOf(60);

    private VisitCost() {}

    static AppliedCost of(CostRates rates, Effort effort, List<LineWork> done, List<LineWork> planned) {
        Money labor = rounded(rates, hours(effort.onSiteMinutes() + effort.loadingMinutes(), rates.laborPerHour()));
        Money travel = rounded(
                rates,
                hours(effort.drivingMinutes(), rates.laborPerHour())
                        .add(distance(effort.distance(), rates.travelPerDistance())));
        Money overhead = rounded(rates, hours(effort.laborMinutes(), rates.overheadPerHour()));

        Map<ServiceLineId, BigDecimal> ofDone = byLine(done);
        Map<ServiceLineId, BigDecimal> ofPlanned = byLine(planned);
        SharedBy sharedBy =
                hasMinutes(ofDone) ? SharedBy.DONE : hasMinutes(ofPlanned) ? SharedBy.PLANNED : SharedBy.EVENLY;
        Map<ServiceLineId, BigDecimal> weights =
                sharedBy == SharedBy.DONE || sharedBy == SharedBy.EVENLY && !done.isEmpty() ? ofDone : ofPlanned;
        return new AppliedCost(
                rates, effort, labor, travel, overhead, sharedBy, shared(weights, labor, travel, overhead));
    }

    private static List<LineCost> shared(
            Map<ServiceLineId, BigDecimal> weights, Money labor, Money travel, Money overhead) {
        if (weights.isEmpty()) {
            throw new CostingRefusal.NoLines();
        }
        List<BigDecimal> minutes = List.copyOf(weights.values());
        List<Money> labors = labor.split(minutes);
        List<Money> travels = travel.split(minutes);
        List<Money> overheads = overhead.split(minutes);
        List<LineCost> lines = new ArrayList<>();
        for (ServiceLineId line : weights.keySet()) {
            int i = lines.size();
            lines.add(new LineCost(line, labors.get(i), travels.get(i), overheads.get(i)));
        }
        return lines;
    }

    /** Minutes by service line, in the order that the lines first appear. */
    private static Map<ServiceLineId, BigDecimal> byLine(List<LineWork> work) {
        Map<ServiceLineId, BigDecimal> minutes = new LinkedHashMap<>();
        for (LineWork line : work) {
            minutes.merge(line.serviceLine(), line.minutes().value(), BigDecimal::add);
        }
        return minutes;
    }

    private static boolean hasMinutes(Map<ServiceLineId, BigDecimal> minutes) {
        return minutes.values().stream().anyMatch(m -> m.signum() > 0);
    }

    private static BigDecimal hours(int minutes, Money perHour) {
        return Exact.ratio(perHour.amount(), BigDecimal.valueOf(minutes), MINUTES_PER_HOUR);
    }

    private static BigDecimal distance(Quantity distance, UnitPrice rate) {
        return Exact.ratio(
                rate.amount(),
                distance.exactlyIn(rate.base().unit()),
                rate.base().value());
    }

    private static Money rounded(CostRates rates, BigDecimal exact) {
        return Money.rounded(rates.laborPerHour().currency(), exact);
    }
}
