package eaveside.web.settings;

import eaveside.customers.PanelManufacturer;
import eaveside.customers.ReadPanelManufacturers;
import eaveside.customers.SavePanelManufacturer;
import eaveside.web.security.Roles;
import eaveside.web.security.Viewer;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** What manufacturers of solar panels allow when their panels are washed, for scripts. */
@Path("/api/settings/manufacturers")
@Dependent
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
@Tag(name = "Settings")
public class ManufacturersApi {
    @Inject
    ReadPanelManufacturers readPanelManufacturers;

    @Inject
    SavePanelManufacturer savePanelManufacturer;

    @Inject
    Viewer viewer;

    /** All of them. */
    public record Manufacturers(List<PanelManufacturer> manufacturers) {}

    @GET
    @Transactional
    @Operation(summary = "Panel manufacturers by name; a limit that the manual does not give is absent")
    public Manufacturers manufacturers() {
        return new Manufacturers(readPanelManufacturers.all());
    }

    /** The name is in the body: it may hold what an address cannot, such as a slash. */
    @PUT
    @Operation(summary = "Adds the manufacturer named, or changes the version named; the same again changes nothing")
    public PanelManufacturer save(PanelManufacturer manufacturer) {
        return savePanelManufacturer.save(manufacturer, viewer.id());
    }
}
