package eaveside.inventory;

import eaveside.access.ReadUsers;
import eaveside.inventory.internal.PlaceRow;
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
public class SavePlace {
    private final EntityManager entities;
    private final StockQueries queries;
    private final ReadUsers readUsers;

    @Inject
    public SavePlace(EntityManager entities, StockQueries queries, ReadUsers readUsers) {
        this.entities = entities;
        this.queries = queries;
        this.readUsers = readUsers;
    }

    /**
     * The place as stored, with its new version; the same content again is a retry. Refuses a stale version, a name that
     * is taken, an unknown technician or one who has another van, and putting a place out of use while it holds goods.
     */
    @Transactional
    public Place save(Place place) {
        PlaceRow row = entities.find(PlaceRow.class, place.id().value(), LockModeType.PESSIMISTIC_WRITE);
        if (row == null && place.version() != null) {
            throw new InventoryRefusal.NoSuchPlace(place.id().toString());
        }
        if (row != null && row.says(place)) {
            return row.toPlace();
        }
        requireFree(place);
        if (row == null) {
            row = new PlaceRow(place);
            entities.persist(row);
        } else {
            Versions.require(
                    place.version(), row.version(), place.id(), row.toPlace().name());
            if (!place.active() && queries.stockedLots(place.id().value()) > 0) {
                throw new InventoryRefusal.PlaceNotEmpty(place.name());
            }
            if (place.kind() == PlaceKind.STORE && row.leave()) {
                // The database lets only vans have technicians, so they leave before it becomes a store room.
                entities.flush();
            }
            row.change(place);
        }
        entities.flush();
        return row.toPlace();
    }

    private void requireFree(Place place) {
        if (!queries.otherPlacesNamed(place.name(), place.id().value()).isEmpty()) {
            throw new InventoryRefusal.NameTaken("name", place.name());
        }
        Set<UserId> known = readUsers.namesOf(place.technicians()).keySet();
        for (UserId technician : place.technicians()) {
            if (!known.contains(technician)) {
                throw new InventoryRefusal.NoSuchTechnician(technician.toString());
            }
        }
        if (!known.isEmpty()) {
            List<String> vans = queries.otherVansOf(
                    place.technicians().stream().map(UserId::value).toList(),
                    place.id().value());
            if (!vans.isEmpty()) {
                throw new InventoryRefusal.TechnicianHasVan(vans.getFirst());
            }
        }
    }
}
