package eaveside.pricing;

import eaveside.kernel.Check;
import eaveside.kernel.Default;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Quantity;
import eaveside.kernel.UnitPrice;
import eaveside.pricing.internal.UnitAmounts;

/**
 * The unit price from a quantity on. It holds for the whole quantity, not only for what lies above the step, so that a
 * line has one unit price.
 *
 * @param  from  the least quantity; zero for the first step, and where it is left out
 * @param  price per base quantity of the same unit, at most four decimals, above zero
 */
public record QuantityStep(@Default Quantity from, UnitPrice price) {
    public QuantityStep {
        from = from == null ? Quantity.zero(price.base().unit()) : from;
        Quantity begins = from;
        UnitPrice typed = price;
        Check check = new Check();
        check.that(!from.isNegative(), () -> new KernelRefusal.Negative("from"));
        check.that(
                from.unit() == price.base().unit(),
                () -> new KernelRefusal.Unfit(
                        "from",
                        "{field} is counted in " + typed.base().unit().code() + " like its price, not in "
                                + begins.unit().code()));
        check.that(price.amount().signum() > 0, () -> new KernelRefusal.NotPositive("price"));
        price = check.value(() -> UnitAmounts.canonical("price", typed), typed);
        check.done();
    }
}
