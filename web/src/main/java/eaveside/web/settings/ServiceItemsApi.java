package eaveside.web.settings;

import eaveside.catalog.Catalog;
import eaveside.catalog.SaveServiceItem;
import eaveside.catalog.ServiceItem;
import eaveside.kernel.ServiceItemId;
import eaveside.web.forms.JsonResource;
import eaveside.web.security.Roles;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** What the company sells, with its standards, for scripts. */
@Path("/api/services")
@Dependent
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
@Tag(name = "Services")
public class ServiceItemsApi extends JsonResource {
    @Inject
    Catalog catalog;

    @Inject
    SaveServiceItem saveServiceItem;

    /** All of them, those no longer sold too. */
    public record Services(List<ServiceItem> services) {}

    @GET
    @Operation(summary = "Services by code")
    public Services services() {
        return new Services(catalog.serviceItems());
    }

    @GET
    @Path("{id}")
    @Operation(summary = "A service")
    public ServiceItem service(@PathParam("id") ServiceItemId id) {
        return catalog.serviceItem(id);
    }

    @PUT
    @Path("{id}")
    @Operation(summary = "Adds a service, or changes the version named; the same again changes nothing")
    public ServiceItem save(ServiceItem service) {
        return saveServiceItem.save(service, viewer.id());
    }
}
