package eaveside.inventory;

import eaveside.kernel.LotId;
import eaveside.kernel.Quantity;
import eaveside.kernel.StockItemId;
import org.jspecify.annotations.Nullable;

/**
 * A wish to take goods out of a location.
 *
 * @param  lot      the one lot to take from; null takes the oldest first. Canisters and brushes are always named
 * @param  quantity in the item's base unit or one like it; nothing is drawn for zero
 * @param  reading  what was read at the canister that is drawn from. Where it shows pure water, the canister is not empty,
 *                 whatever the books estimate; absent for everything else
 */
public record Draw(
        StockItemId item,
        @Nullable LotId lot,
        Quantity quantity,
        @Nullable WaterReading reading) {
    public Draw {
        Limits.held("quantity", quantity);
    }

    public Draw(StockItemId item, @Nullable LotId lot, Quantity quantity) {
        this(item, lot, quantity, null);
    }
}
