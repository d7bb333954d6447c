package eaveside.web.settings;

import eaveside.access.ReadAudit;
import eaveside.access.Role;
import eaveside.kernel.Slice;
import eaveside.web.Page;
import eaveside.web.security.For;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import org.jspecify.annotations.Nullable;

/** Who did what, newest first. */
@Path("/settings/trail")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For(Role.OWNER)
public class AuditResource {
    private static final int PAGE = 100;

    private final ReadAudit readAudit;

    @Inject
    public AuditResource(ReadAudit readAudit) {
        this.readAudit = readAudit;
    }

    public record TrailPage(Slice<ReadAudit.Line> lines) implements Page {
        @Override
        public String template() {
            return "settings/trail.jte";
        }
    }

    @GET
    @Transactional
    public TrailPage trail(@QueryParam("after") @Nullable String after) {
        return new TrailPage(readAudit.lines(ReadAudit.Filter.everything(), after, PAGE));
    }
}
