package eaveside.web.customers;

import eaveside.access.Role;
import eaveside.customers.CustomersRefusal;
import eaveside.customers.ImportCustomers;
import eaveside.customers.ImportReport;
import eaveside.web.Json;
import eaveside.web.security.For;
import eaveside.web.security.Trail;
import eaveside.web.security.Viewer;
import eaveside.web.security.WebRefusal;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** Customers from a CSV file for scripts, all or nothing; a file is known by its content, so it can be sent again. */
@Path("/api/customers/import")
@Dependent
@Produces(MediaType.APPLICATION_JSON)
@Consumes("text/csv")
@For({Role.OWNER, Role.OFFICE})
@Tag(name = "Customers")
public class ImportApi {
    private final ImportCustomers importCustomers;
    private final Viewer viewer;
    private final Trail trail;

    @Inject
    public ImportApi(ImportCustomers importCustomers, Viewer viewer, Trail trail) {
        this.importCustomers = importCustomers;
        this.viewer = viewer;
        this.trail = trail;
    }

    /**
     * A row that cannot be imported.
     *
     * @param line of the file, counted from 1 with the header
     */
    public record BadRow(long line, String reason) {}

    /**
     * What the file holds.
     *
     * @param rows           below the header, without empty lines
     * @param importedBefore when this very file came in, in UTC; absent where it had not
     */
    public record Report(
            boolean dryRun,
            int rows,
            int customers,
            int sites,
            int surfaces,
            List<BadRow> badRows,
            @Nullable String importedBefore) {
        static Report of(ImportReport report, boolean dryRun) {
            return new Report(
                    dryRun,
                    report.rows(),
                    report.customers(),
                    report.sites(),
                    report.surfaces(),
                    bad(report),
                    report.importedBefore() == null
                            ? null
                            : report.importedBefore().toString());
        }

        private static List<BadRow> bad(ImportReport report) {
            return report.badRows().stream()
                    .map(row -> new BadRow(row.line(), row.reason()))
                    .toList();
        }
    }

    /** Problem details (RFC 9457) of a file with bad rows, of which nothing was imported. */
    public record NotImported(
            String type, String title, int status, List<String> fields, int rows, List<BadRow> badRows) {
        static NotImported of(CustomersRefusal.BadRows refusal) {
            return new NotImported(
                    "urn:eaveside:refusal:" + refusal.code(),
                    refusal.text(),
                    refusal.kind().status(),
                    refusal.fields(),
                    refusal.report().rows(),
                    Report.bad(refusal.report()));
        }
    }

    @POST
    @Operation(
            summary = "Imports customers with sites and surfaces from a CSV file, all or nothing",
            description = "With dryRun=true it stores nothing and answers every bad row. The columns are those of the "
                    + "sample at /customers/import/sample.csv. The same file again changes nothing.")
    public Response run(@QueryParam("dryRun") @DefaultValue("false") String dryRun, byte @Nullable [] body) {
        byte[] file = Json.required("body", body);
        if (isDry(dryRun)) {
            return Response.ok(Report.of(importCustomers.tryOut(file), true)).build();
        }
        try {
            ImportReport report = importCustomers.run(file, viewer.id());
            trail.done("customers.import", report.customers() + " customers");
            return Response.ok(Report.of(report, false)).build();
        } catch (CustomersRefusal.BadRows refusal) {
            return Response.status(refusal.kind().status())
                    .type("application/problem+json")
                    .entity(NotImported.of(refusal))
                    .build();
        }
    }

    /** A word that is neither is refused: a dry run that was misspelt would import. */
    private static boolean isDry(String dryRun) {
        return switch (dryRun) {
            case "true" -> true;
            case "false" -> false;
            default -> throw new WebRefusal.Unreadable("'dryRun' is true or false");
        };
    }
}
