package eaveside.inventory;

import eaveside.inventory.internal.StockItemRow;
import eaveside.inventory.internal.StockQueries;
import eaveside.kernel.LocationId;
import eaveside.kernel.Quantity;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.LockModeType;
import jakarta.transaction.Transactional;
import java.util.Map;

/** Adds a consumable, or changes one that was read before. */
@Dependent
public class SaveStockItem {
    private final EntityManager entities;
    private final StockQueries queries;
    private final SetReorderPoint setReorderPoint;

    @Inject
    public SaveStockItem(EntityManager entities, StockQueries queries, SetReorderPoint setReorderPoint) {
        this.entities = entities;
        this.queries = queries;
        this.setReorderPoint = setReorderPoint;
    }

    /**
     * The item with how much of it locations should hold at least, all or nothing. Locations that are not named keep their
     * minimum, and zero removes one; refuses as {@link #save(StockItem)} and {@link SetReorderPoint} do.
     *
     * @param  reorderPoints in the item's base unit or one like it
     */
    @Transactional
    public StockItem save(StockItem item, Map<LocationId, Quantity> reorderPoints) {
        StockItem saved = save(item);
        reorderPoints.forEach((location, least) -> setReorderPoint.set(saved.id(), location, least));
        return saved;
    }

    /**
     * The item as stored, with its new version; the same content again is a retry. Refuses a stale version, a code that
     * is taken, and another type or base unit once there are lots, mixes or minimums of it.
     */
    @Transactional
    public StockItem save(StockItem item) {
        StockItemRow row = entities.find(StockItemRow.class, item.id().value(), LockModeType.PESSIMISTIC_WRITE);
        if (row == null && item.version() != null) {
            throw new InventoryRefusal.NoSuchItem(item.id().toString());
        }
        if (row != null && row.says(item)) {
            return row.toItem();
        }
        if (!queries.otherItemsCoded(item.code(), item.id().value()).isEmpty()) {
            throw new InventoryRefusal.NameTaken("code", item.code());
        }
        if (row == null) {
            row = new StockItemRow(item);
            entities.persist(row);
        } else {
            Versions.require(
                    item.version(), row.version(), item.id(), row.toItem().name());
            if (!row.isKept(item) && queries.usesOfItem(item.id().value()) > 0) {
                throw new InventoryRefusal.TypeFixed(row.toItem().name());
            }
            row.change(item);
        }
        entities.flush();
        return row.toItem();
    }
}
