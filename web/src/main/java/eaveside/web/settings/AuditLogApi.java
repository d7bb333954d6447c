package eaveside.web.settings;

import eaveside.access.AuditEvent;
import eaveside.access.AuditLine;
import eaveside.access.ReadAudit;
import eaveside.kernel.Slice;
import eaveside.kernel.UserId;
import eaveside.ledger.Books;
import eaveside.web.forms.JsonResource;
import eaveside.web.security.Roles;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.QueryParam;
import java.time.LocalDate;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** The audit log, newest first, for scripts; the owner's alone. */
@Path("/api/audit-log")
@Dependent
@RolesAllowed(Roles.OWNER)
@Tag(name = "Audit log")
public class AuditLogApi extends JsonResource {
    private static final int PAGE = 100;

    @Inject
    ReadAudit readAudit;

    @Inject
    Books books;

    /** A page of the audit log; ask for more with {@code after=next}. */
    public record AuditLog(
            List<AuditLine> auditLog, @Nullable String next) {}

    @GET
    @Transactional
    @SuppressWarnings("NullAway") // it does not see in a class file that a nested type, the outcome's, may be null
    @Operation(
            summary = "What was done and refused, the newest first",
            description =
                    "'by' is a user's id; 'action' an action, or the beginning of one that ends with a dot, such as "
                            + "'invoice.'; 'from' and 'to' are days, both included.")
    public AuditLog auditLog(
            @QueryParam("by") @Nullable UserId by,
            @QueryParam("action") @Nullable String action,
            @QueryParam("outcome") AuditEvent.@Nullable Outcome outcome,
            @QueryParam("from") @Nullable LocalDate from,
            @QueryParam("to") @Nullable LocalDate to,
            @QueryParam("after") @Nullable String after) {
        ReadAudit.Asked asked = new ReadAudit.Asked(by, action, outcome, from, to);
        Slice<AuditLine> page = readAudit.lines(asked.in(books.zone()), after, PAGE);
        return new AuditLog(page.rows(), page.next());
    }
}
