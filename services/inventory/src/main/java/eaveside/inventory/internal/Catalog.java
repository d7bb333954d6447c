package eaveside.inventory.internal;

import eaveside.inventory.StockItem;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Shared;
import eaveside.kernel.StockItemId;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;

/** Finds the items that a document names. */
@Shared
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
            throw new KernelRefusal.NotFound("stock item", id);
        }
        return row.content();
    }

    /** Refuses an item that is not active as well. */
    public StockItem activeItem(StockItemId id) {
        StockItem item = item(id);
        if (!item.active()) {
            throw new KernelRefusal.NotActive("item", item.name(), "item");
        }
        return item;
    }
}
