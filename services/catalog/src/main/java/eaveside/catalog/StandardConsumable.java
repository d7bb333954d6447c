package eaveside.catalog;

import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Quantity;
import eaveside.kernel.StockItemId;
import jakarta.persistence.AttributeOverride;
import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import jakarta.persistence.Embedded;

/**
 * What one unit of a service uses up by the company's own standard.
 *
 * @param  perUnit above zero, in any unit like the item's own
 */
@Embeddable
public record StandardConsumable(
        @Column(name = "stock_item_id") StockItemId item,

        @Embedded @AttributeOverride(name = "value", column = @Column(name = "quantity"))
        Quantity perUnit) {
    public StandardConsumable {
        if (!perUnit.isPositive()) {
            throw new KernelRefusal.NotPositive("perUnit");
        }
    }
}
