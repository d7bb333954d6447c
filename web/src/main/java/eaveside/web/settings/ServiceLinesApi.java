package eaveside.web.settings;

import eaveside.access.Role;
import eaveside.catalog.Catalog;
import eaveside.catalog.SaveServiceLine;
import eaveside.catalog.ServiceLine;
import eaveside.kernel.ServiceLineId;
import eaveside.web.Json;
import eaveside.web.security.AuditLog;
import eaveside.web.security.For;
import eaveside.web.security.Viewer;
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
import org.jspecify.annotations.Nullable;

/** Service lines, the parts of the business whose margin the owner reads, for scripts. */
@Path("/api/service-lines")
@Dependent
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@For({Role.OWNER, Role.OFFICE})
@Tag(name = "ServiceItems")
public class ServiceLinesApi {
    private final Catalog catalog;
    private final SaveServiceLine saveServiceLine;
    private final Viewer viewer;
    private final AuditLog auditLog;

    @Inject
    public ServiceLinesApi(Catalog catalog, SaveServiceLine saveServiceLine, Viewer viewer, AuditLog auditLog) {
        this.catalog = catalog;
        this.saveServiceLine = saveServiceLine;
        this.viewer = viewer;
        this.auditLog = auditLog;
    }

    /**
     * A service line.
     *
     * @param  code    capitals, digits and hyphens, at most 20
     * @param  active  true where absent
     * @param  version as read; absent for a new one
     */
    public record Line(
            @Nullable String id,
            @Nullable String code,
            @Nullable String name,
            @Nullable Boolean active,
            @Nullable Integer version) {
        static Line of(ServiceLine line) {
            return new Line(line.id().toString(), line.code(), line.name(), line.active(), line.version());
        }

        ServiceLine read(ServiceLineId line) {
            return new ServiceLine(
                    line,
                    Json.required("code", code),
                    Json.required("name", name),
                    active == null || active,
                    version == null ? 0 : version);
        }
    }

    @GET
    @Transactional
    @Operation(summary = "Service lines by code")
    public List<Line> lines() {
        return catalog.lines().stream().map(Line::of).toList();
    }

    @GET
    @Path("{id}")
    @Transactional
    @Operation(summary = "A service line")
    public Line line(@PathParam("id") String id) {
        return Line.of(catalog.line(ServiceLineId.of(id)));
    }

    @PUT
    @Path("{id}")
    @Operation(summary = "Adds a service line, or changes the version named; the same again changes nothing")
    public Line save(@PathParam("id") String id, @Nullable Line body) {
        ServiceLineId line = ServiceLineId.of(id);
        ServiceLine saved = saveServiceLine.save(Json.required("body", body).read(line), viewer.id());
        auditLog.done("line.save", saved.code());
        return Line.of(saved);
    }
}
