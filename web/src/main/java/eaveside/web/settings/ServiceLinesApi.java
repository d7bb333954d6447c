package eaveside.web.settings;

import eaveside.catalog.Catalog;
import eaveside.catalog.SaveServiceLine;
import eaveside.catalog.ServiceLine;
import eaveside.kernel.ServiceLineId;
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

/** Service lines, the parts of the business whose margin the owner reads, for scripts. */
@Path("/api/service-lines")
@Dependent
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
@Tag(name = "Services")
public class ServiceLinesApi extends JsonResource {
    @Inject
    Catalog catalog;

    @Inject
    SaveServiceLine saveServiceLine;

    /** All of them, those that nothing new is sold under too. */
    public record ServiceLines(List<ServiceLine> serviceLines) {}

    @GET
    @Operation(summary = "Service lines by code")
    public ServiceLines lines() {
        return new ServiceLines(catalog.lines());
    }

    @GET
    @Path("{id}")
    @Operation(summary = "A service line")
    public ServiceLine line(@PathParam("id") ServiceLineId id) {
        return catalog.line(id);
    }

    @PUT
    @Path("{id}")
    @Operation(summary = "Adds a service line, or changes the version named; the same again changes nothing")
    public ServiceLine save(ServiceLine line) {
        return saveServiceLine.save(line, viewer.id());
    }
}
