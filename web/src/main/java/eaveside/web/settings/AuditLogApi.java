package eaveside.web.settings;

import eaveside.access.AuditEvent;
import eaveside.access.ReadAudit;
import eaveside.access.Role;
import eaveside.kernel.Slice;
import eaveside.kernel.UserId;
import eaveside.ledger.Books;
import eaveside.web.Json;
import eaveside.web.security.For;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** Who did what, newest first, for scripts; the owner's alone. */
@Path("/api/audit-log")
@Dependent
@Produces(MediaType.APPLICATION_JSON)
@For(Role.OWNER)
@Tag(name = "AuditLog")
public class AuditLogApi {
    private static final int PAGE = 100;

    private final ReadAudit readAudit;
    private final Books books;

    @Inject
    public AuditLogApi(ReadAudit readAudit, Books books) {
        this.readAudit = readAudit;
        this.books = books;
    }

    /**
     * A line.
     *
     * @param  at      in UTC
     * @param  by      who; absent for nobody signed in, and for the command line
     * @param  outcome DONE or REFUSED
     * @param  address the network address that it came from; empty where there is none
     */
    public record Line(
            String at,
            @Nullable String by,
            String byName,
            String action,
            String subject,
            String detail,
            String outcome,
            String address) {
        static Line of(ReadAudit.Line line) {
            AuditEvent event = line.event();
            UserId by = event.by();
            return new Line(
                    line.at().toString(),
                    by == null ? null : by.toString(),
                    line.byName(),
                    event.action(),
                    event.subject(),
                    event.detail(),
                    event.outcome().name(),
                    event.address());
        }
    }

    /** A page of the audit log; ask for more with {@code after=next}. */
    public record Lines(List<Line> lines, @Nullable String next) {}

    @GET
    @Transactional
    @Operation(
            summary = "Who did what, the newest first",
            description =
                    "'by' is a person's id; 'action' an action, or the beginning of one that ends with a dot, such "
                            + "as 'invoice.'; 'outcome' DONE or REFUSED; 'from' and 'to' are days, both included.")
    public Lines lines(
            @QueryParam("by") @Nullable String by,
            @QueryParam("action") @Nullable String action,
            @QueryParam("outcome") @Nullable String outcome,
            @QueryParam("from") @Nullable String from,
            @QueryParam("to") @Nullable String to,
            @QueryParam("after") @Nullable String after) {
        Slice<Line> page = readAudit
                .lines(
                        AuditLogDays.filter(
                                by == null ? null : UserId.of(by),
                                action,
                                outcome == null ? null : Json.choice("outcome", AuditEvent.Outcome.class, outcome),
                                from == null ? null : Json.date("from", from),
                                to == null ? null : Json.date("to", to),
                                books.zone()),
                        after,
                        PAGE)
                .map(Line::of);
        return new Lines(page.rows(), page.next());
    }
}
