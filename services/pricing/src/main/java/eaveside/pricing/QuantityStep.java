package eaveside.pricing;

import eaveside.kernel.Quantity;
import eaveside.kernel.UnitPrice;
import eaveside.pricing.internal.UnitAmounts;

/**
 * The unit price from a quantity on. It holds for the whole quantity, not only for what lies above the step, so that a
 * line has one unit price.
 *
 * @param  from  the least quantity; zero for the first step
 * @param  price per base quantity of the same unit, at most four decimals, above zero
 */
public record QuantityStep(Quantity from, UnitPrice price) {
    public QuantityStep {
        if (from.isNegative()) {
            throw new PricingRefusal.BadPriceList("from", "A step cannot begin below zero");
        }
        if (from.unit() != price.base().unit()) {
            throw new PricingRefusal.BadPriceList(
                    "from",
                    "A step counts in the unit of its price, "
                            + price.base().unit().code());
        }
        if (price.amount().signum() <= 0) {
            throw new PricingRefusal.BadPriceList("price", "A price is greater than zero");
        }
        price = UnitAmounts.canonical("price", price);
    }
}
