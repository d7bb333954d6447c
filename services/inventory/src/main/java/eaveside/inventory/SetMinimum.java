package eaveside.inventory;

import eaveside.inventory.internal.Catalogue;
import eaveside.inventory.internal.MinimumKey;
import eaveside.inventory.internal.MinimumRow;
import eaveside.inventory.internal.PlaceRow;
import eaveside.inventory.internal.StockItemRow;
import eaveside.kernel.PlaceId;
import eaveside.kernel.Quantity;
import eaveside.kernel.StockItemId;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.LockModeType;
import jakarta.transaction.Transactional;

/** Sets how much of an item a place should hold at least. */
@Dependent
public class SetMinimum {
    private final EntityManager entities;
    private final Catalogue catalogue;

    @Inject
    public SetMinimum(EntityManager entities, Catalogue catalogue) {
        this.entities = entities;
        this.catalogue = catalogue;
    }

    /** The quantity in the item's base unit or one like it; zero removes the minimum. */
    @Transactional
    public void set(StockItemId item, PlaceId place, Quantity least) {
        Limits.notNegative("minimum", least);
        // The item's lock, so that of two first minimums at once the second finds the first.
        entities.find(StockItemRow.class, item.value(), LockModeType.PESSIMISTIC_WRITE);
        Quantity base = catalogue.item(item).inBaseUnit(least);
        if (entities.find(PlaceRow.class, place.value()) == null) {
            throw new InventoryRefusal.NoSuchPlace(place.toString());
        }
        MinimumKey key = new MinimumKey(item.value(), place.value());
        MinimumRow row = entities.find(MinimumRow.class, key);
        if (row == null && base.isPositive()) {
            entities.persist(new MinimumRow(key, base));
        } else if (row != null && base.isPositive()) {
            row.change(base);
        } else if (row != null) {
            entities.remove(row);
        }
    }
}
