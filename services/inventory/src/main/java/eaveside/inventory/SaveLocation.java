package eaveside.inventory;

import eaveside.access.Edits;
import eaveside.access.ReadUsers;
import eaveside.inventory.internal.LocationRow;
import eaveside.inventory.internal.StockOnHand;
import eaveside.inventory.internal.StockQueries;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.LocationId;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Set;

/** Adds a store room or van, or edits one: its name, its technicians, whether it is active. */
@Shared
public class SaveLocation {
    private final Edits edits;
    private final EntityManager entities;
    private final StockQueries queries;
    private final StockOnHand stockOnHand;
    private final ReadUsers readUsers;

    @Inject
    public SaveLocation(
            Edits edits, EntityManager entities, StockQueries queries, StockOnHand stockOnHand, ReadUsers readUsers) {
        this.edits = edits;
        this.entities = entities;
        this.queries = queries;
        this.stockOnHand = stockOnHand;
        this.readUsers = readUsers;
    }

    /**
     * The location as stored, with its new version. Refuses what {@link Edits} refuses, a name that is taken, an unknown
     * technician or one who has another van, and deactivating a location that holds goods.
     */
    @Transactional
    public Location save(Location location, UserId by) {
        return edits.save(LocationRow.class, location.id(), location, by, stored -> {
            requireFree(location);
            if (stored != null) {
                // The lock of its goods, so that none come in between.
                stockOnHand.lock(List.of(location.id()));
                if (!location.active() && queries.stockedLots(location.id().value()) > 0) {
                    throw new InventoryRefusal.LocationNotEmpty(location.name());
                }
                if (location.type() == LocationType.STORE) {
                    leave(location.id());
                }
            }
        });
    }

    /** The database lets only vans have technicians, so they leave before it becomes a store room. */
    private void leave(LocationId id) {
        LocationRow row = entities.find(LocationRow.class, id.value());
        if (row != null && row.leave()) {
            entities.flush();
        }
    }

    private void requireFree(Location location) {
        if (!queries.otherLocationsNamed(location.name(), location.id().value()).isEmpty()) {
            throw new KernelRefusal.Taken("location", "name", location.name());
        }
        Set<UserId> known = readUsers.namesOf(location.technicians()).keySet();
        for (UserId technician : location.technicians()) {
            if (!known.contains(technician)) {
                throw new KernelRefusal.NotFound("technician", technician).namedBy("technicians");
            }
        }
        if (!known.isEmpty()) {
            List<String> vans = queries.otherVansOf(
                    location.technicians().stream().map(UserId::value).toList(),
                    location.id().value());
            if (!vans.isEmpty()) {
                throw new InventoryRefusal.TechnicianHasVan(vans.getFirst());
            }
        }
    }
}
