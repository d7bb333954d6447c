package eaveside.pricing;

import eaveside.customers.SurfaceAttribute;
import eaveside.kernel.Id;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Quantity;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.UnitPrice;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Work to be priced.
 *
 * @param  key            what the caller knows the line by; it comes back on the priced line
 * @param  quantity       above zero, in a unit of the service's type
 * @param  attributes     of the surface; empty where none is known
 * @param  fixedUnitPrice the quoted price, which is then kept; null to price from the book
 * @param  noCharge       its value is calculated, but it is not billed, and minimums neither count nor reach it
 */
public record WorkLine(
        Id key,
        ServiceItemId serviceItem,
        Quantity quantity,
        Map<SurfaceAttribute, Integer> attributes,
        @Nullable UnitPrice fixedUnitPrice,
        boolean noCharge) {
    public WorkLine {
        if (!quantity.isPositive()) {
            throw new KernelRefusal.NotPositive("quantity");
        }
        if (fixedUnitPrice != null && fixedUnitPrice.amount().signum() < 0) {
            throw new KernelRefusal.Negative("fixedUnitPrice");
        }
        attributes = Map.copyOf(attributes);
    }

    /** Work that is billed. */
    public WorkLine(
            Id key,
            ServiceItemId serviceItem,
            Quantity quantity,
            Map<SurfaceAttribute, Integer> attributes,
            @Nullable UnitPrice fixedUnitPrice) {
        this(key, serviceItem, quantity, attributes, fixedUnitPrice, false);
    }
}
