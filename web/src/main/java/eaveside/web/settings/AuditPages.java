package eaveside.web.settings;

import eaveside.access.AuditFilter;
import eaveside.access.AuditLine;
import eaveside.access.ReadAudit;
import eaveside.access.ReadUsers;
import eaveside.access.User;
import eaveside.kernel.Slice;
import eaveside.ledger.Books;
import eaveside.web.Csv;
import eaveside.web.Page;
import eaveside.web.forms.Form;
import eaveside.web.forms.Options;
import eaveside.web.forms.PageResource;
import eaveside.web.security.Roles;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriBuilder;
import jakarta.ws.rs.core.UriInfo;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The audit log, newest first. */
@Path("/settings/audit-log")
@Dependent
@RolesAllowed(Roles.OWNER)
public class AuditPages extends PageResource {
    private static final int PAGE = 100;
    private static final int EXPORT = 20_000;

    @Inject
    ReadAudit readAudit;

    @Inject
    ReadUsers readUsers;

    @Inject
    Books books;

    @Context
    UriInfo asked;

    /**
     * A page of the audit log.
     *
     * @param  csv  the address of the same lines as a file
     * @param  more the address of the next page, or null
     */
    public record AuditLogPage(
            List<AuditLine> lines,
            Form<ReadAudit.Asked> form,
            String csv,
            @Nullable String more) implements Page {}

    @GET
    @Transactional
    public AuditLogPage auditLog(@QueryParam("after") @Nullable String after) {
        Form<ReadAudit.Asked> form = form();
        Slice<AuditLine> lines = readAudit.lines(filter(form), after, PAGE);
        return new AuditLogPage(
                lines.rows(),
                form.choosing("by", Options.of(readUsers.all(), User::id, User::name)),
                link("/settings/audit-log/list.csv", null),
                lines.next() == null ? null : link("/settings/audit-log", lines.next()));
    }

    @GET
    @Path("list.csv")
    @Produces("text/csv")
    @Transactional
    public Response csv() {
        return Csv.download(
                "audit-log",
                List.of("at", "user", "action", "subject", "detail", "outcome", "address"),
                readAudit.lines(filter(form()), null, EXPORT).rows().stream()
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

    private Form<ReadAudit.Asked> form() {
        return Form.sent(ReadAudit.Asked.class, viewer.fields(asked.getQueryParameters()))
                .labeled("settings.audit-log");
    }

    /** Everything where what was asked for is wrong, which the form then says. */
    private AuditFilter filter(Form<ReadAudit.Asked> form) {
        ReadAudit.Asked read = form.read();
        return read == null ? AuditFilter.everything() : read.in(books.zone());
    }

    /** The same lines in another shape, or those after a key. */
    private String link(String path, @Nullable String after) {
        UriBuilder link = asked.getRequestUriBuilder().replacePath(path).replaceQueryParam("after");
        return (after == null ? link : link.queryParam("after", after)).build().toString();
    }
}
