package eaveside.pricing;

import eaveside.customers.SurfaceAttribute;
import eaveside.kernel.Id;
import eaveside.kernel.OfferingId;
import eaveside.kernel.Quantity;
import eaveside.kernel.UnitPrice;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Work to be priced.
 *
 * @param key            what the caller knows the line by; it comes back on the priced line
 * @param quantity       above zero, in a unit of the offering's kind
 * @param attributes     of the surface; empty where none is known
 * @param fixedUnitPrice the quoted price, which then stands; null to price from the book
 * @param given          goodwill: its value is worked out, but it is not billed, and minimums neither count nor reach it
 */
public record WorkLine(
        Id key,
        OfferingId offering,
        Quantity quantity,
        Map<SurfaceAttribute, Integer> attributes,
        @Nullable UnitPrice fixedUnitPrice,
        boolean given) {
    public WorkLine {
        if (!quantity.isPositive()) {
            throw new PricingRefusal.QuantityNotPositive(quantity.toString());
        }
        if (fixedUnitPrice != null && fixedUnitPrice.amount().signum() < 0) {
            throw new PricingRefusal.BadFixedPrice(fixedUnitPrice.amount().toPlainString());
        }
        attributes = Map.copyOf(attributes);
    }

    /** Work that is billed. */
    public WorkLine(
            Id key,
            OfferingId offering,
            Quantity quantity,
            Map<SurfaceAttribute, Integer> attributes,
            @Nullable UnitPrice fixedUnitPrice) {
        this(key, offering, quantity, attributes, fixedUnitPrice, false);
    }
}
