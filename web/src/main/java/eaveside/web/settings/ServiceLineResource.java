package eaveside.web.settings;

import eaveside.access.Role;
import eaveside.catalog.Catalog;
import eaveside.catalog.SaveServiceLine;
import eaveside.catalog.ServiceLine;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.ServiceLineId;
import eaveside.web.Page;
import eaveside.web.forms.Fields;
import eaveside.web.security.AuditLog;
import eaveside.web.security.For;
import eaveside.web.security.Viewer;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Service lines: the parts of the business whose margin the owner reads. */
@Path("/settings/service-lines")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For({Role.OWNER, Role.OFFICE})
public class ServiceLineResource {
    private final Catalog catalog;
    private final SaveServiceLine saveServiceLine;
    private final Viewer viewer;
    private final AuditLog auditLog;

    @Inject
    public ServiceLineResource(Catalog catalog, SaveServiceLine saveServiceLine, Viewer viewer, AuditLog auditLog) {
        this.catalog = catalog;
        this.saveServiceLine = saveServiceLine;
        this.viewer = viewer;
        this.auditLog = auditLog;
    }

    public record LinesPage(List<ServiceLine> lines) implements Page {
        @Override
        public String template() {
            return "settings/service-lines.jte";
        }
    }

    public record LineFormPage(Fields fields, boolean isNew) implements Page {
        @Override
        public String template() {
            return "settings/line-form.jte";
        }
    }

    @GET
    @Transactional
    public LinesPage lines() {
        return new LinesPage(catalog.lines());
    }

    @GET
    @Path("new")
    public LineFormPage fresh() {
        return new LineFormPage(
                Fields.showing(Map.of("id", ServiceLineId.next().toString(), "version", "0", "active", "yes")), true);
    }

    @GET
    @Path("{id}")
    @Transactional
    public LineFormPage edit(@PathParam("id") String id) {
        ServiceLine line = catalog.line(ServiceLineId.of(id));
        Map<String, String> values = values(line);
        values.put("id", line.id().toString());
        values.put("version", String.valueOf(line.version()));
        return new LineFormPage(Fields.showing(values), false);
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response save(MultivaluedMap<String, String> form) {
        Fields fields = viewer.fields(form);
        ServiceLineId id = new ServiceLineId(fields.id("id"));
        int version = fields.integer("version", 0, Integer.MAX_VALUE);
        String code = fields.text("code");
        String name = fields.text("name");
        boolean saved = fields.run(
                () -> saveServiceLine.save(
                        new ServiceLine(id, code, name, fields.ticked("active"), version), viewer.id()),
                refusal -> refusal instanceof KernelRefusal.Stale other && other.theirs() instanceof ServiceLine theirs
                        ? Optional.of(new Fields.Stored(theirs.version(), values(theirs)))
                        : Optional.empty());
        if (!saved) {
            return Response.status(fields.status())
                    .entity(new LineFormPage(fields, version == 0))
                    .build();
        }
        auditLog.done("line.save", code);
        return Response.seeOther(URI.create("/settings/service-lines?done=settings.saved"))
                .build();
    }

    private static Map<String, String> values(ServiceLine line) {
        Map<String, String> values = new HashMap<>();
        values.put("code", line.code());
        values.put("name", line.name());
        values.put("active", line.active() ? "yes" : "");
        return values;
    }
}
