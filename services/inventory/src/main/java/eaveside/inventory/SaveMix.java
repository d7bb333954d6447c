package eaveside.inventory;

import eaveside.inventory.internal.MixRow;
import eaveside.inventory.internal.StockItemRow;
import eaveside.inventory.internal.StockQueries;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.LockModeType;
import jakarta.transaction.Transactional;

/** Adds a mix, or changes one that was read before; sheets signed off earlier keep what they drew. */
@Dependent
public class SaveMix {
    private final EntityManager entities;
    private final StockQueries queries;

    @Inject
    public SaveMix(EntityManager entities, StockQueries queries) {
        this.entities = entities;
        this.queries = queries;
    }

    /**
     * The mix as stored, with its new version; the same content again is a retry. Refuses a stale version, a name that is
     * taken, and an item that is not a concentrate.
     */
    @Transactional
    public Mix save(Mix mix) {
        MixRow row = entities.find(MixRow.class, mix.id().value(), LockModeType.PESSIMISTIC_WRITE);
        if (row == null && mix.version() != null) {
            throw new InventoryRefusal.NoSuchMix(mix.id().toString());
        }
        if (row != null && row.says(mix)) {
            return row.toMix();
        }
        StockItemRow concentrate =
                entities.find(StockItemRow.class, mix.concentrate().value());
        if (concentrate == null) {
            throw new InventoryRefusal.NoSuchItem(mix.concentrate().toString());
        }
        if (concentrate.toItem().type() != StockType.CONCENTRATE) {
            throw new InventoryRefusal.NotAConcentrate(concentrate.toItem().name());
        }
        if (!queries.otherMixesNamed(mix.name(), mix.id().value()).isEmpty()) {
            throw new InventoryRefusal.NameTaken("name", mix.name());
        }
        if (row == null) {
            row = new MixRow(mix);
            entities.persist(row);
        } else {
            Versions.require(mix.version(), row.version(), mix.id(), row.toMix().name());
            row.change(mix);
        }
        entities.flush();
        return row.toMix();
    }
}
