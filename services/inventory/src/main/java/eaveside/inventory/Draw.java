package eaveside.inventory;

import eaveside.kernel.LotId;
import eaveside.kernel.Quantity;
import eaveside.kernel.StockItemId;
import org.jspecify.annotations.Nullable;

/**
 * A wish to take goods out of a place.
 *
 * @param lot      the one lot to take from; null takes the oldest first. Canisters and brushes are always named
 * @param quantity in the item's base unit or one like it; nothing is drawn for zero
 */
public record Draw(StockItemId item, @Nullable LotId lot, Quantity quantity) {
    public Draw {
        Limits.notNegative("quantity", quantity);
    }
}
