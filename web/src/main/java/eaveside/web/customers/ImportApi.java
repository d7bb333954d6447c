package eaveside.web.customers;

import eaveside.customers.ImportCustomers;
import eaveside.customers.ImportReport;
import eaveside.customers.ImportReport.BadRow;
import eaveside.customers.ImportReport.DuplicateRow;
import eaveside.kernel.Records;
import eaveside.web.security.Roles;
import eaveside.web.security.Viewer;
import eaveside.web.security.WebRefusal;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** Customers from a CSV file for scripts, all or nothing; a file is known by its content, so it can be sent again. */
@Path("/api/customers/import")
@Dependent
@Produces(MediaType.APPLICATION_JSON)
@Consumes("text/csv")
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
@Tag(name = "Customers")
public class ImportApi {
    @Inject
    ImportCustomers importCustomers;

    @Inject
    Viewer viewer;

    /** What the file holds; see {@link ImportReport}. */
    public record Report(
            boolean dryRun,
            int rows,
            int customers,
            int sites,
            int surfaces,
            List<BadRow> badRows,
            @Nullable Instant importedBefore,
            int unchanged,
            List<DuplicateRow> duplicateRows) {
        static Report of(ImportReport report, boolean dryRun) {
            Map<String, @Nullable Object> parts = Records.values(report);
            parts.put("dryRun", dryRun);
            return Records.make(Report.class, parts);
        }
    }

    @POST
    @Operation(
            summary = "Imports customers with sites and surfaces from a CSV file, all or nothing",
            description =
                    "With dryRun=true it stores nothing and answers every bad row. The columns are those of the "
                            + "sample at /customers/import/sample.csv, and of the list at /customers/list.csv. The same file again "
                            + "changes nothing, nor does a customer who is here already and says the same. With duplicates=allow "
                            + "new customers who may be here already (same phone, email, or name and address) come in all the same.")
    public Report run(
            @QueryParam("dryRun") boolean dryRun,
            @QueryParam("duplicates") @DefaultValue("refuse") Duplicates duplicates,
            byte @Nullable [] body) {
        if (body == null) {
            throw new WebRefusal.Unreadable("'body' is missing");
        }
        return Report.of(
                dryRun
                        ? importCustomers.tryOut(body)
                        : importCustomers.run(body, viewer.id(), duplicates == Duplicates.ALLOW),
                dryRun);
    }
}
