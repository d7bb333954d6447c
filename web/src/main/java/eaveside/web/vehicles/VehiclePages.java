package eaveside.web.vehicles;

import eaveside.inventory.KeepVehicles;
import eaveside.inventory.Vehicle;
import eaveside.kernel.VehicleId;
import eaveside.web.forms.EditResource;
import eaveside.web.forms.Listing;
import eaveside.web.security.Roles;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.ws.rs.Path;

/** The list of vehicles and its form. */
@Path("/vehicles")
@Dependent
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class VehiclePages extends EditResource<Vehicle, VehicleId> {
    @Inject
    KeepVehicles keepVehicles;

    public VehiclePages() {
        super(Vehicle.class, "vehicles", "/vehicles");
    }

    @Override
    protected Listing<Vehicle> list() {
        return rows(keepVehicles::vehicles)
                .opening("name", vehicle -> at(vehicle.id()))
                .columns("licensePlate", "note", "active");
    }

    @Override
    protected Vehicle stored(VehicleId id) {
        return keepVehicles.vehicle(id);
    }

    @Override
    protected void save(Vehicle vehicle) {
        keepVehicles.save(vehicle, viewer.id());
    }
}
