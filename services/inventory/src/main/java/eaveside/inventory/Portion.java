package eaveside.inventory;

import eaveside.kernel.LotId;
import eaveside.kernel.Quantity;
import eaveside.kernel.StockItemId;
import org.jspecify.annotations.Nullable;

/**
 * Goods to be moved or thrown away.
 *
 * @param  lot      the one lot that is meant; null takes the oldest first. Canisters and brushes are always named
 * @param  quantity in the item's base unit or one like it; null for all that the books hold. A canister or brush goes whole
 */
public record Portion(
        StockItemId item, @Nullable LotId lot, @Nullable Quantity quantity) {
    public Portion {
        if (quantity != null) {
            Limits.positive("quantity", quantity);
        }
    }

    public static Portion of(StockItemId item, Quantity quantity) {
        return new Portion(item, null, quantity);
    }

    /** All that is left of one lot. */
    public static Portion whole(StockItemId item, LotId lot) {
        return new Portion(item, lot, null);
    }
}
