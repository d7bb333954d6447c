package eaveside.inventory;

import eaveside.access.Edits;
import eaveside.inventory.internal.Catalog;
import eaveside.inventory.internal.MixRow;
import eaveside.inventory.internal.StockQueries;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;

/** Adds a mix, or edits one; sheets signed off earlier keep what they drew. */
@Shared
public class SaveMix {
    private final Edits edits;
    private final Catalog catalog;
    private final StockQueries queries;

    @Inject
    public SaveMix(Edits edits, Catalog catalog, StockQueries queries) {
        this.edits = edits;
        this.catalog = catalog;
        this.queries = queries;
    }

    /**
     * The mix as stored, with its new version. Refuses what {@link Edits} refuses, an item that is unknown or not a
     * concentrate, and a name that is taken.
     */
    @Transactional
    public Mix save(Mix mix, UserId by) {
        return edits.save(MixRow.class, mix.id(), mix, by, stored -> {
            StockItem concentrate = catalog.item(mix.concentrate());
            if (concentrate.type() != StockType.CONCENTRATE) {
                throw new InventoryRefusal.NotAConcentrate(concentrate.name());
            }
            if (!queries.otherMixesNamed(mix.name(), mix.id().value()).isEmpty()) {
                throw new KernelRefusal.Taken("mix", "name", mix.name());
            }
        });
    }
}
