package eaveside.pricing;

import eaveside.customers.SurfaceAttribute;
import eaveside.kernel.Percent;
import eaveside.kernel.UnitPrice;
import eaveside.pricing.internal.UnitAmounts;

/**
 * What is added to the unit price of surfaces whose attribute reaches a threshold: for height, pitch, neglect. Of
 * several thresholds of one attribute the highest that is reached counts; different attributes add up, each worked out
 * on the book's price and not on one another.
 *
 * @param  atLeast the least value of the attribute that is charged
 */
public record Surcharge(SurfaceAttribute attribute, int atLeast, Rate rate) {
    /** How much is added. */
    public sealed interface Rate {}

    /** A share of the book's price: above 0 %, at most 500 %. */
    public record OfPrice(Percent percent) implements Rate {
        private static final Percent MOST = Percent.of("500");

        public OfPrice {
            if (percent.value().signum() <= 0 || percent.compareTo(MOST) > 0) {
                throw new PricingRefusal.BadPriceList(
                        "percent", "A surcharge is above zero and at most 500 per cent of the price");
            }
        }
    }

    /** A fixed amount per base quantity of the service's price, above zero, at most four decimals. */
    public record PerUnit(UnitPrice amount) implements Rate {
        public PerUnit {
            if (amount.amount().signum() <= 0) {
                throw new PricingRefusal.BadPriceList("perUnit", "A surcharge is greater than zero");
            }
            amount = UnitAmounts.canonical("perUnit", amount);
        }
    }
}
