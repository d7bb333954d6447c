package eaveside.costing;

import eaveside.kernel.Money;
import eaveside.kernel.Unit;
import eaveside.kernel.UnitPrice;
import java.time.LocalDate;

/**
 * What an hour of work and a distance driven cost the company from a day on.
 *
 * @param  from              first day that they apply on
 * @param  laborPerHour     loaded cost of a labor hour: wage, payroll taxes, insurance
 * @param  travelPerDistance cost of the van per mile or kilometer, without the driver
 * @param  overheadPerHour   share of rent, office and insurance that a labor hour carries
 */
public record CostRates(LocalDate from, Money laborPerHour, UnitPrice travelPerDistance, Money overheadPerHour) {
    public CostRates {
        // One canonical form, so that 0.7 and 0.70 a mile are the same rates.
        travelPerDistance = new UnitPrice(
                travelPerDistance.currency(),
                travelPerDistance.amount().stripTrailingZeros(),
                travelPerDistance.base());
        notNegative("laborPerHour", laborPerHour.signum());
        notNegative("travelPerDistance", travelPerDistance.amount().signum());
        notNegative("overheadPerHour", overheadPerHour.signum());
        if (!travelPerDistance.base().unit().isLike(Unit.KILOMETER)) {
            throw new CostingRefusal.NotADistance(
                    "travelPerDistance", travelPerDistance.base().unit());
        }
        if (!laborPerHour.currency().equals(travelPerDistance.currency())
                || !laborPerHour.currency().equals(overheadPerHour.currency())) {
            throw new CostingRefusal.MixedCurrencies();
        }
    }

    private static void notNegative(String field, int signum) {
        if (signum < 0) {
            throw new CostingRefusal.Negative(field);
        }
    }
}
