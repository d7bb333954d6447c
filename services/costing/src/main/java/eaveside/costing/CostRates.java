package eaveside.costing;

import eaveside.kernel.Money;
import eaveside.kernel.Unit;
import eaveside.kernel.UnitPrice;
import java.time.LocalDate;

/**
 * What an hour of work and a distance driven cost the company from a day on.
 *
 * @param from              first day that they apply on
 * @param labourPerHour     loaded cost of a person-hour: wage, payroll taxes, insurance
 * @param travelPerDistance cost of the van per mile or kilometre, without the driver
 * @param overheadPerHour   share of rent, office and insurance that a person-hour carries
 */
public record CostRates(LocalDate from, Money labourPerHour, UnitPrice travelPerDistance, Money overheadPerHour) {
    public CostRates {
        // One canonical form, so that 0.7 and 0.70 a mile are the same rates.
        travelPerDistance = new UnitPrice(
                travelPerDistance.currency(),
                travelPerDistance.amount().stripTrailingZeros(),
                travelPerDistance.base());
        notNegative("labourPerHour", labourPerHour.signum());
        notNegative("travelPerDistance", travelPerDistance.amount().signum());
        notNegative("overheadPerHour", overheadPerHour.signum());
        if (!travelPerDistance.base().unit().isLike(Unit.KILOMETRE)) {
            throw new CostingRefusal.NotADistance(
                    "travelPerDistance", travelPerDistance.base().unit());
        }
        if (!labourPerHour.currency().equals(travelPerDistance.currency())
                || !labourPerHour.currency().equals(overheadPerHour.currency())) {
            throw new CostingRefusal.MixedCurrencies();
        }
    }

    private static void notNegative(String field, int signum) {
        if (signum < 0) {
            throw new CostingRefusal.Negative(field);
        }
    }
}
