package eaveside.web.vehicles;

import eaveside.inventory.KeepVehicles;
import eaveside.inventory.Vehicle;
import eaveside.kernel.VehicleId;
import eaveside.web.forms.EditPage;
import eaveside.web.forms.Form;
import eaveside.web.forms.ListResource;
import eaveside.web.forms.Listing;
import eaveside.web.security.Roles;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;

/** The list of vehicles and its form. */
@Path("/vehicles")
@Dependent
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class VehiclePages extends ListResource<Vehicle> {
    @Inject
    KeepVehicles keepVehicles;

    @Override
    protected Listing<Vehicle> list() {
        return Listing.edited("vehicles", "/vehicles", keepVehicles::vehicles)
                .columns("licensePlate", "note", "active");
    }

    @GET
    @Path("new")
    public EditPage fresh() {
        return page(viewer.fresh(Vehicle.class));
    }

    @GET
    @Path("{id}")
    public EditPage edit(@PathParam("id") VehicleId id) {
        return page(viewer.form(keepVehicles.vehicle(id)));
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response save(Form<Vehicle> form) {
        return page(form).saved(form.run(vehicle -> keepVehicles.save(vehicle, viewer.id())));
    }

    private static EditPage page(Form<Vehicle> form) {
        return EditPage.of(form, "vehicles", "/vehicles");
    }
}
