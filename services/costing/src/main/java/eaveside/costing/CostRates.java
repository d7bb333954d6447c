package eaveside.costing;

import eaveside.kernel.Check;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Money;
import eaveside.kernel.Unit;
import eaveside.kernel.UnitPrice;
import java.math.BigDecimal;
import java.time.LocalDate;
import org.joda.money.CurrencyUnit;

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
        BigDecimal travel = travelPerDistance.amount();
        CurrencyUnit travelCurrency = travelPerDistance.currency();
        Check check = new Check();
        notNegative(check, "laborPerHour", laborPerHour.amount());
        notNegative(check, "travelPerDistance", travel);
        notNegative(check, "overheadPerHour", overheadPerHour.amount());
        check.that(
                distance.isLike(Unit.KILOMETER),
                () -> new KernelRefusal.WrongUnit("travelPerDistance", distance, Effort.DISTANCES));
        check.that(
                laborPerHour.currency().equals(travelCurrency)
                        && laborPerHour.currency().equals(overheadPerHour.currency()),
                () -> new CostingRefusal.MixedCurrencies(
                        theOddOne(laborPerHour.currency(), travelCurrency, overheadPerHour.currency())));
        check.done();
    }

    /** The rate that is in another currency than the other two; of three different ones, the last. */
    private static String theOddOne(CurrencyUnit labor, CurrencyUnit travel, CurrencyUnit overhead) {
        return labor.equals(overhead)
                ? "travelPerDistance"
                : travel.equals(overhead) ? "laborPerHour" : "overheadPerHour";
    }

    private static void notNegative(Check check, String field, BigDecimal amount) {
        check.that(amount.signum() >= 0, () -> new KernelRefusal.Negative(field));
    }
}
