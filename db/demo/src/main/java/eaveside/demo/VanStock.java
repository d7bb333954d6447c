package eaveside.demo;

import eaveside.inventory.LotLevel;
import eaveside.inventory.StockLevel;
import eaveside.kernel.LocationId;
import eaveside.kernel.LotId;
import eaveside.kernel.Quantity;
import eaveside.kernel.StockItemId;
import java.util.List;
import java.util.Optional;

/**
 * What a van holds as a crew sets out.
 *
 * @param  singles canisters and brushes, oldest first
 */
record VanStock(LocationId van, List<StockLevel> levels, List<LotLevel> singles) {
    VanStock {
        levels = List.copyOf(levels);
        singles = List.copyOf(singles);
    }

    boolean holds(StockItemId item, Quantity needed) {
        return levels.stream()
                .anyMatch(level ->
                        level.item().id().equals(item) && level.quantity().compareTo(needed) >= 0);
    }

    /** The oldest canister or brush that still lasts for so much. */
    Optional<LotId> lasting(StockItemId item, Quantity needed) {
        return singles.stream()
                .filter(lot -> lot.item().id().equals(item) && lot.quantity().compareTo(needed) >= 0)
                .map(LotLevel::lot)
                .findFirst();
    }
}
