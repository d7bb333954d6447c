package eaveside.inventory;

import eaveside.access.Edits;
import eaveside.inventory.internal.StockQueries;
import eaveside.inventory.internal.VehicleRow;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import eaveside.kernel.VehicleId;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.List;

/** Keeps the list of vehicles. */
@Shared
public class KeepVehicles {
    private final Edits edits;
    private final StockQueries queries;

    @Inject
    public KeepVehicles(Edits edits, StockQueries queries) {
        this.edits = edits;
        this.queries = queries;
    }

    /** Adds a vehicle or changes one; refuses a name that another vehicle has, and what {@link Edits} refuses. */
    @Transactional
    public Vehicle save(Vehicle vehicle, UserId by) {
        return edits.save(VehicleRow.class, vehicle.id(), vehicle, by, stored -> {
            if (!queries.otherVehiclesNamed(vehicle.name(), vehicle.id().value())
                    .isEmpty()) {
                throw new KernelRefusal.Taken("vehicle", "name", vehicle.name());
            }
        });
    }

    @Transactional
    public Vehicle vehicle(VehicleId id) {
        return edits.read(VehicleRow.class, id, "vehicle");
    }

    /** By name, active ones first. A company has few, so the list comes whole. */
    @Transactional
    public List<Vehicle> vehicles() {
        return queries.vehicles().stream().map(VehicleRow::content).toList();
    }
}
