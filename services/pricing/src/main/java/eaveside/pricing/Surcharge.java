package eaveside.pricing;

import eaveside.customers.SurfaceAttribute;
import eaveside.kernel.Check;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Percent;
import eaveside.kernel.UnitPrice;
import eaveside.pricing.internal.UnitAmounts;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * What is added to the unit price of surfaces whose attribute reaches a threshold: for height, pitch, neglect. Of
 * several thresholds of one attribute the highest that is reached counts; different attributes add up, each taken of the
 * book's price and not of one another. Either a percentage or an amount.
 *
 * @param  atLeast the least value of the attribute that is charged
 * @param  percent of the book's price: above 0 %, at most 500 %
 * @param  amount  per base quantity of the service's price, above zero, at most four decimals
 */
public record Surcharge(
        SurfaceAttribute attribute,
        int atLeast,
        @Nullable Percent percent,
        @Nullable UnitPrice amount) {
    private static final Percent MOST = Percent.of("500");

    public Surcharge {
        Check check = new Check();
        check.between("atLeast", atLeast, attribute.lowest(), attribute.highest());
        check.that(
                (percent == null) != (amount == null),
                () -> new KernelRefusal.Unfit("percent", "Enter either a percentage or an amount"));
        if (percent != null) {
            boolean within = percent.value().signum() > 0 && percent.compareTo(MOST) <= 0;
            check.that(within, () -> new KernelRefusal.Unfit("percent", "{field} must be above zero and at most 500"));
        }
        if (amount != null) {
            UnitPrice typed = amount;
            check.that(typed.amount().signum() > 0, () -> new KernelRefusal.NotPositive("amount"));
            amount = check.value(() -> UnitAmounts.canonical("amount", typed), typed);
        }
        check.done();
    }

    /** A share of the book's price. */
    public static Surcharge ofPrice(SurfaceAttribute attribute, int atLeast, Percent percent) {
        return new Surcharge(attribute, atLeast, percent, null);
    }

    /** A fixed amount. */
    public static Surcharge fixed(SurfaceAttribute attribute, int atLeast, UnitPrice amount) {
        return new Surcharge(attribute, atLeast, null, amount);
    }

    /** What it adds to a price of the book. */
    public UnitPrice addedTo(UnitPrice bookPrice) {
        return percent == null ? Objects.requireNonNull(amount) : UnitAmounts.share(bookPrice, percent);
    }
}
