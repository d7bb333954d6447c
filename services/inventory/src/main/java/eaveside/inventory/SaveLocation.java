package eaveside.inventory;

import eaveside.access.ReadUsers;
import eaveside.inventory.internal.LocationRow;
import eaveside.inventory.internal.StockQueries;
import eaveside.kernel.UserId;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.LockModeType;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Set;

/** Adds a store room or van, or changes one that was read before: its name, its technicians, whether it is in use. */
@Dependent
public class SaveLocation {
    private final EntityManager entities;
    private final StockQueries queries;
    private final ReadUsers readUsers;

    @Inject
    public SaveLocation(EntityManager entities, StockQueries queries, ReadUsers readUsers) {
        this.entities = entities;
        this.queries = queries;
        this.readUsers = readUsers;
    }

    /**
     * The location as stored, with its new version; the same content again is a retry. Refuses a stale version, a name that
     * is taken, an unknown technician or one who has another van, and putting a location out of use while it holds goods.
     */
    @Transactional
    public Location save(Location location) {
        LocationRow row = entities.find(LocationRow.class, location.id().value(), LockModeType.PESSIMISTIC_WRITE);
        if (row == null && location.version() != null) {
            throw new InventoryRefusal.NoSuchLocation(location.id().toString());
        }
        if (row != null && row.says(location)) {
            return row.toLocation();
        }
        requireFree(location);
        if (row == null) {
            row = new LocationRow(location);
            entities.persist(row);
        } else {
            Versions.require(
                    location.version(),
                    row.version(),
                    location.id(),
                    row.toLocation().name());
            if (!location.active() && queries.stockedLots(location.id().value()) > 0) {
                throw new InventoryRefusal.LocationNotEmpty(location.name());
            }
            if (location.type() == LocationType.STORE && row.leave()) {
                // The database lets only vans have technicians, so they leave before it becomes a store room.
                entities.flush();
            }
            row.change(location);
        }
        entities.flush();
        return row.toLocation();
    }

    private void requireFree(Location location) {
        if (!queries.otherLocationsNamed(location.name(), location.id().value()).isEmpty()) {
            throw new InventoryRefusal.NameTaken("name", location.name());
        }
        Set<UserId> known = readUsers.namesOf(location.technicians()).keySet();
        for (UserId technician : location.technicians()) {
            if (!known.contains(technician)) {
                throw new InventoryRefusal.NoSuchTechnician(technician.toString());
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
