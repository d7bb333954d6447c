package eaveside.invoicing;

import eaveside.kernel.Check;
import eaveside.kernel.Default;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Quantity;
import eaveside.kernel.UnitPrice;
import java.math.BigDecimal;

/**
 * The price of an item: gross price (EN 16931 BT-148) less a discount on it (BT-147), both for the same base quantity
 * (BT-149) and in the same currency. The difference is the net price (BT-146), never below zero (BR-27).
 */
public record ItemPrice(UnitPrice gross, @Default("0") BigDecimal discount) {
    public ItemPrice {
        Check check = new Check();
        check.that(gross.amount().signum() >= 0, () -> new KernelRefusal.Negative("gross"));
        check.that(
                discount.signum() >= 0 && discount.compareTo(gross.amount().max(BigDecimal.ZERO)) <= 0,
                () -> new KernelRefusal.Unfit("discount", "{field} must be between zero and the price"));
        check.done();
        // One canonical form, so that a stored price equals the one that was entered.
        discount = discount.signum() == 0 ? BigDecimal.ZERO : discount.stripTrailingZeros();
        gross = new UnitPrice(gross.currency(), gross.amount().stripTrailingZeros(), gross.base());
    }

    public static ItemPrice of(UnitPrice price) {
        return new ItemPrice(price, BigDecimal.ZERO);
    }

    /** The quantity that is sold at it; refuses one of another unit than the price goes by. */
    Quantity requireFor(Quantity quantity) {
        if (!quantity.unit().isLike(gross.base().unit())) {
            throw new KernelRefusal.Unfit("quantity", "{field} must have a unit that the price goes by");
        }
        return quantity;
    }

    public UnitPrice net() {
        return new UnitPrice(gross.currency(), gross.amount().subtract(discount), gross.base());
    }
}
