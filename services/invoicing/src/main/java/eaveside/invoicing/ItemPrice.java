package eaveside.invoicing;

import eaveside.kernel.UnitPrice;
import java.math.BigDecimal;

/**
 * The price of an item: gross price (EN 16931 BT-148) less a discount on it (BT-147), both for the same base quantity
 * (BT-149) and in the same currency. The difference is the net price (BT-146), never below zero (BR-27).
 */
public record ItemPrice(UnitPrice gross, BigDecimal discount) {
    public ItemPrice {
        if (discount.signum() < 0) {
            throw new InvoiceRefusal.NegativePrice("discount");
        }
        if (gross.amount().compareTo(discount) < 0) {
            throw new InvoiceRefusal.NegativePrice("price");
        }
        // One canonical form, so that a stored price equals the one that was entered.
        discount = discount.signum() == 0 ? BigDecimal.ZERO : discount.stripTrailingZeros();
        gross = new UnitPrice(gross.currency(), gross.amount().stripTrailingZeros(), gross.base());
    }

    public static ItemPrice of(UnitPrice price) {
        return new ItemPrice(price, BigDecimal.ZERO);
    }

    public UnitPrice net() {
        return new UnitPrice(gross.currency(), gross.amount().subtract(discount), gross.base());
    }
}
