package eaveside.inventory;

import eaveside.access.Edits;
import eaveside.inventory.SetReorderPoint.ReorderPoint;
import eaveside.inventory.internal.StockItemRow;
import eaveside.inventory.internal.StockQueries;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.List;

/** Adds an item to the stock, or edits one. */
@Shared
public class SaveStockItem {
    private final Edits edits;
    private final StockQueries queries;
    private final SetReorderPoint setReorderPoint;

    @Inject
    public SaveStockItem(Edits edits, StockQueries queries, SetReorderPoint setReorderPoint) {
        this.edits = edits;
        this.queries = queries;
        this.setReorderPoint = setReorderPoint;
    }

    /**
     * The item with its reorder points, all or nothing. Locations that are not named keep theirs; refuses as {@link
     * #save(StockItem, UserId)} and {@link SetReorderPoint} do.
     */
    @Transactional
    public StockItem save(StockItem item, List<ReorderPoint> reorderPoints, UserId by) {
        StockItem saved = save(item, by);
        reorderPoints.forEach(point -> setReorderPoint.set(point, by));
        return saved;
    }

    /**
     * The item as stored, with its new version. Refuses what {@link Edits} refuses, a code that is taken, and another type
     * or base unit once there are lots, mixes or reorder points of it.
     */
    @Transactional
    public StockItem save(StockItem item, UserId by) {
        return edits.save(StockItemRow.class, item.id(), item, by, stored -> {
            if (!queries.otherItemsCoded(item.code(), item.id().value()).isEmpty()) {
                throw new KernelRefusal.Taken("stock item", "code", item.code());
            }
            if (stored != null
                    && !stored.isCountedLike(item)
                    && queries.usesOfItem(item.id().value(), item.id()) > 0) {
                throw new InventoryRefusal.TypeFixed(stored.name());
            }
        });
    }
}
