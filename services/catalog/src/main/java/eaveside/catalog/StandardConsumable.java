package eaveside.catalog;

import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Quantity;
import eaveside.kernel.StockItemId;

/**
 * What one unit of a service uses up by the company's own standard.
 *
 * @param  perUnit above zero, in any unit like the item's own
 */
public record StandardConsumable(StockItemId item, Quantity perUnit) {
    public StandardConsumable {
        if (!perUnit.isPositive()) {
            throw new KernelRefusal.NotPositive("perUnit");
        }
    }
}
