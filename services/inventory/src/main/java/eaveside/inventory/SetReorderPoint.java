package eaveside.inventory;

import eaveside.access.Edits;
import eaveside.access.RecordAudit;
import eaveside.inventory.internal.LocationRow;
import eaveside.inventory.internal.ReorderPointKey;
import eaveside.inventory.internal.ReorderPointRow;
import eaveside.inventory.internal.StockItemRow;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.LocationId;
import eaveside.kernel.Quantity;
import eaveside.kernel.Shared;
import eaveside.kernel.StockItemId;
import eaveside.kernel.UserId;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;

/** Sets how much of an item a location should hold at least. */
@Shared
public class SetReorderPoint {
    private final EntityManager entities;
    private final Edits edits;
    private final RecordAudit audit;

    @Inject
    public SetReorderPoint(EntityManager entities, Edits edits, RecordAudit audit) {
        this.entities = entities;
        this.edits = edits;
        this.audit = audit;
    }

    /**
     * How much of an item a location should hold at least.
     *
     * @param  quantity in the item's base unit or one like it; zero for no reorder point
     */
    public record ReorderPoint(StockItemId item, LocationId location, Quantity quantity) {
        public ReorderPoint {
            Limits.notNegative("quantity", quantity);
        }
    }

    /** Answers what is set, in the item's base unit. The same again changes nothing. Refuses an unknown item or location. */
    @Transactional
    public ReorderPoint set(ReorderPoint point, UserId by) {
        // The item's turn, so that of two first reorder points at once the second finds the first.
        StockItemRow item = edits.locked(StockItemRow.class, point.item());
        if (item == null) {
            throw new KernelRefusal.NotFound("stock item", point.item());
        }
        if (entities.find(LocationRow.class, point.location().value()) == null) {
            throw new KernelRefusal.NotFound("location", point.location());
        }
        Quantity least = item.content().inBaseUnit(point.quantity());
        if (write(new ReorderPointKey(point.item().value(), point.location().value()), least)) {
            audit.done("reorder-point.save", by, point.location() + "/" + point.item());
        }
        return new ReorderPoint(point.item(), point.location(), least);
    }

    /** Tells whether it changed. */
    private boolean write(ReorderPointKey key, Quantity least) {
        ReorderPointRow row = entities.find(ReorderPointRow.class, key);
        if (row == null) {
            if (least.isPositive()) {
                entities.persist(new ReorderPointRow(key, least));
            }
            return least.isPositive();
        }
        if (row.least().equals(least)) {
            return false;
        }
        if (least.isPositive()) {
            row.change(least);
        } else {
            entities.remove(row);
        }
        return true;
    }
}
