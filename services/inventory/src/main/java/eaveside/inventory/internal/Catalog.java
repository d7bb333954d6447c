package eaveside.inventory.internal;

import eaveside.inventory.InventoryRefusal;
import eaveside.inventory.StockItem;
import eaveside.kernel.StockItemId;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;

/** Finds the consumables that a document names. */
@Dependent
public class Catalog {
    private final EntityManager entities;

    @Inject
    public Catalog(EntityManager entities) {
        this.entities = entities;
    }

    /** Refuses an unknown id. */
    public StockItem item(StockItemId id) {
        StockItemRow row = entities.find(StockItemRow.class, id.value());
        if (row == null) {
            throw new InventoryRefusal.NoSuchItem(id.toString());
        }
        return row.toItem();
    }

    /** Refuses an item that is out of use as well. */
    public StockItem itemInUse(StockItemId id) {
        StockItem item = item(id);
        if (!item.active()) {
            throw new InventoryRefusal.Inactive(item.name(), "item");
        }
        return item;
    }
}
