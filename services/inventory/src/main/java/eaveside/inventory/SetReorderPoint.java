package eaveside.inventory;

import eaveside.inventory.internal.Catalog;
import eaveside.inventory.internal.LocationRow;
import eaveside.inventory.internal.ReorderPointKey;
import eaveside.inventory.internal.ReorderPointRow;
import eaveside.inventory.internal.StockItemRow;
import eaveside.kernel.LocationId;
import eaveside.kernel.Quantity;
import eaveside.kernel.StockItemId;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.LockModeType;
import jakarta.transaction.Transactional;

/** Sets how much of an item a location should hold at least. */
@Dependent
public class SetReorderPoint {
    private final EntityManager entities;
    private final Catalog catalog;

    @Inject
    public SetReorderPoint(EntityManager entities, Catalog catalog) {
        this.entities = entities;
        this.catalog = catalog;
    }

    /** The quantity in the item's base unit or one like it; zero removes the minimum. */
    @Transactional
    public void set(StockItemId item, LocationId location, Quantity least) {
        Limits.notNegative("reorderPoint", least);
        // The item's lock, so that of two first minimums at once the second finds the first.
        entities.find(StockItemRow.class, item.value(), LockModeType.PESSIMISTIC_WRITE);
        Quantity base = catalog.item(item).inBaseUnit(least);
        if (entities.find(LocationRow.class, location.value()) == null) {
            throw new InventoryRefusal.NoSuchLocation(location.toString());
        }
        ReorderPointKey key = new ReorderPointKey(item.value(), location.value());
        ReorderPointRow row = entities.find(ReorderPointRow.class, key);
        if (row == null && base.isPositive()) {
            entities.persist(new ReorderPointRow(key, base));
        } else if (row != null && base.isPositive()) {
            row.change(base);
        } else if (row != null) {
            entities.remove(row);
        }
    }
}
