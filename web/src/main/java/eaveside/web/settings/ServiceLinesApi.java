package eaveside.web.settings;

import eaveside.catalog.Catalog;
import eaveside.catalog.SaveServiceLine;
import eaveside.catalog.ServiceLine;
import eaveside.kernel.ServiceLineId;
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
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** Service lines, the parts of the business whose margin the owner reads, for scripts. */
@Path("/api/service-lines")
@Dependent
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
@Tag(name = "Services")
public class ServiceLinesApi {
    @Inject
    Catalog catalog;

    @Inject
    SaveServiceLine saveServiceLine;

    @Inject
    Viewer viewer;

    /** All of them, those that nothing new is sold under too. */
    public record ServiceLines(List<ServiceLine> serviceLines) {}

    @GET
    @Transactional
    @Operation(summary = "Service lines by code")
    public ServiceLines lines() {
        return new ServiceLines(catalog.lines());
    }

    @GET
    @Path("{id}")
    @Transactional
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
