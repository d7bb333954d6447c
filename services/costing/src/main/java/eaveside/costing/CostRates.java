package eaveside.costing;

import eaveside.kernel.Check;
import eaveside.kernel.KernelRefusal;
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
        Unit distance = travelPerDistance.base().unit();
        Check check = new Check();
        notNegative(check, "laborPerHour", laborPerHour.signum());
        notNegative(check, "travelPerDistance", travelPerDistance.amount().signum());
        notNegative(check, "overheadPerHour", overheadPerHour.signum());
        check.that(
                distance.isLike(Unit.KILOMETER),
                () -> new KernelRefusal.WrongUnit("travelPerDistance", distance, Effort.DISTANCES));
        check.that(
                laborPerHour.currency().equals(travelPerDistance.currency())
                        && laborPerHour.currency().equals(overheadPerHour.currency()),
                CostingRefusal.MixedCurrencies::new);
        check.done();
    }

    private static void notNegative(Check check, String field, int signum) {
        check.that(signum >= 0, () -> new KernelRefusal.Negative(field));
    }
}
