package eaveside.web.settings;

import eaveside.access.AuditEvent;
import eaveside.access.ReadAudit;
import eaveside.access.ReadUsers;
import eaveside.access.Role;
import eaveside.kernel.Slice;
import eaveside.kernel.UserId;
import eaveside.ledger.Books;
import eaveside.web.Csv;
import eaveside.web.Page;
import eaveside.web.forms.Fields;
import eaveside.web.security.For;
import eaveside.web.security.Viewer;
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
import jakarta.ws.rs.core.UriInfo;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Who did what, newest first. */
@Path("/settings/audit-log")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For(Role.OWNER)
public class AuditResource {
    private static final int PAGE = 100;
    private static final int EXPORT = 20_000;

    private final ReadAudit readAudit;
    private final ReadUsers readUsers;
    private final Books books;
    private final Viewer viewer;

    @Context
    UriInfo uri;

    @Inject
    public AuditResource(ReadAudit readAudit, ReadUsers readUsers, Books books, Viewer viewer) {
        this.readAudit = readAudit;
        this.readUsers = readUsers;
        this.books = books;
        this.viewer = viewer;
    }

    /**
     * A page of the audit log.
     *
     * @param  csv  the address of the same lines as a file
     * @param  more the address of the next page, or null
     */
    public record AuditLogPage(
            Slice<ReadAudit.Line> lines,
            Map<String, String> people,
            Map<String, String> outcomes,
            Fields fields,
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
    public AuditLogPage auditLog(@QueryParam("after") @Nullable String after) {
        Fields fields = viewer.fields(uri.getQueryParameters());
        Slice<ReadAudit.Line> lines = readAudit.lines(filter(fields), after, PAGE);
        Map<String, String> people = new LinkedHashMap<>();
        readUsers.all().forEach(user -> people.put(user.id().toString(), user.name()));
        Map<String, String> outcomes = new LinkedHashMap<>();
        for (AuditEvent.Outcome outcome : AuditEvent.Outcome.values()) {
            outcomes.put(outcome.name(), viewer.view().t("settings.outcome", outcome));
        }
        return new AuditLogPage(
                lines,
                people,
                outcomes,
                fields,
                uri.getRequestUriBuilder()
                        .replacePath("/settings/audit-log/list.csv")
                        .replaceQueryParam("after")
                        .build()
                        .toString(),
                lines.next() == null
                        ? null
                        : uri.getRequestUriBuilder()
                                .replaceQueryParam("after", lines.next())
                                .build()
                                .toString());
    }

    private ReadAudit.Filter filter(Fields fields) {
        String by = fields.optional("by");
        String action = fields.optional("action");
        AuditEvent.Outcome outcome =
                fields.optional("outcome").isEmpty() ? null : fields.choice("outcome", AuditEvent.Outcome.class);
        LocalDate from = day(fields, "from");
        LocalDate to = day(fields, "to");
        ReadAudit.Filter filter = fields.made(
                "action",
                () -> AuditLogDays.filter(
                        by.isEmpty() ? null : UserId.of(by),
                        action.isEmpty() ? null : action,
                        outcome,
                        from,
                        to,
                        books.zone()));
        return filter == null ? ReadAudit.Filter.everything() : filter;
    }

    private @Nullable LocalDate day(Fields fields, String name) {
        return fields.optional(name).isEmpty() ? null : fields.date(name, books.today());
    }

    @GET
    @Path("list.csv")
    @Produces("text/csv")
    @Transactional
    public Response csv() {
        List<List<String>> rows =
                readAudit.lines(filter(viewer.fields(uri.getQueryParameters())), null, EXPORT).rows().stream()
                        .map(line -> List.of(
                                line.at().toString(),
                                line.byName(),
                                line.event().action(),
                                line.event().subject(),
                                line.event().detail(),
                                line.event().outcome().name(),
                                line.event().address()))
                        .toList();
        return Csv.download("auditLog", List.of("at", "who", "what", "on", "detail", "outcome", "address"), rows);
    }
}
