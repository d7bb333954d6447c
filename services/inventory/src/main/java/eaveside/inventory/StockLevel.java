package eaveside.inventory;

import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import org.jspecify.annotations.Nullable;

/**
 * What a location holds of an item, in its base unit.
 *
 * @param  value        at the cost of the lots
 * @param  reorderPoint null where none is set
 */
public record StockLevel(
        StockItem item,
        Quantity quantity,
        Money value,
        @Nullable Quantity reorderPoint) {
    public boolean isBelowReorderPoint() {
        return reorderPoint != null && quantity.compareTo(reorderPoint) < 0;
    }
}
