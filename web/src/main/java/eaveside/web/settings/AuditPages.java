package eaveside.web.settings;

import eaveside.access.AuditFilter;
import eaveside.access.AuditLine;
import eaveside.access.ReadAudit;
import eaveside.access.ReadUsers;
import eaveside.kernel.Slice;
import eaveside.ledger.Books;
import eaveside.web.Csv;
import eaveside.web.Page;
import eaveside.web.forms.Form;
import eaveside.web.security.Roles;
import eaveside.web.security.Viewer;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriBuilder;
import jakarta.ws.rs.core.UriInfo;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The audit log, newest first. */
@Path("/settings/audit-log")
@Dependent
@Produces(MediaType.TEXT_HTML)
@RolesAllowed(Roles.OWNER)
public class AuditPages {
    private static final int PAGE = 100;
    private static final int EXPORT = 20_000;

    @Inject
    ReadAudit readAudit;

    @Inject
    ReadUsers readUsers;

    @Inject
    Books books;

    @Inject
    Viewer viewer;

    /**
     * A page of the audit log.
     *
     * @param  csv  the address of the same lines as a file
     * @param  more the address of the next page, or null
     */
    public record AuditLogPage(
            List<AuditLine> lines,
            Map<String, String> users,
            Form<ReadAudit.Asked> form,
            String csv,
            @Nullable String more)
            implements Page {
        @Override
        public String template() {
            return "settings/audit-log.jte";
        }
    }

    @GET
    @Transactional
    public AuditLogPage auditLog(@Context UriInfo asked, @QueryParam("after") @Nullable String after) {
        Form<ReadAudit.Asked> form = form(asked);
        Slice<AuditLine> lines = readAudit.lines(filter(form), after, PAGE);
        Map<String, String> users = new LinkedHashMap<>();
        readUsers.all().forEach(user -> users.put(user.id().toString(), user.name()));
        return new AuditLogPage(
                lines.rows(),
                users,
                form,
                link(asked, "/settings/audit-log/list.csv", null),
                lines.next() == null ? null : link(asked, "/settings/audit-log", lines.next()));
    }

    @GET
    @Path("list.csv")
    @Produces("text/csv")
    @Transactional
    public Response csv(@Context UriInfo asked) {
        return Csv.download(
                "audit-log",
                List.of("at", "user", "action", "subject", "detail", "outcome", "address"),
                readAudit.lines(filter(form(asked)), null, EXPORT).rows().stream()
                        .map(line -> List.of(
                                line.at().toString(),
                                line.byName(),
                                line.action(),
                                line.subject(),
                                line.detail(),
                                line.outcome().name(),
                                line.address()))
                        .toList());
    }

    private Form<ReadAudit.Asked> form(UriInfo asked) {
        return Form.sent(ReadAudit.Asked.class, viewer.fields(asked.getQueryParameters()))
                .labeled("settings.audit-log");
    }

    /** Everything where what was asked for is wrong, which the form then says. */
    private AuditFilter filter(Form<ReadAudit.Asked> form) {
        ReadAudit.Asked asked = form.read();
        return asked == null ? AuditFilter.everything() : asked.in(books.zone());
    }

    private static String link(UriInfo asked, String path, @Nullable String after) {
        UriBuilder link = asked.getRequestUriBuilder().replacePath(path).replaceQueryParam("after");
        return (after == null ? link : link.queryParam("after", after)).build().toString();
    }
}
