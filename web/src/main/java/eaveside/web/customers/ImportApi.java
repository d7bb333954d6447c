package eaveside.web.customers;

import eaveside.access.Role;
import eaveside.customers.CustomersRefusal;
import eaveside.customers.ImportCustomers;
import eaveside.customers.ImportReport;
import eaveside.web.Json;
import eaveside.web.security.AuditLog;
import eaveside.web.security.For;
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
    private final AuditLog auditLog;

    @Inject
    public ImportApi(ImportCustomers importCustomers, Viewer viewer, AuditLog auditLog) {
        this.importCustomers = importCustomers;
        this.viewer = viewer;
        this.auditLog = auditLog;
    }

    /**
     * A row that cannot be imported.
     *
     * @param  line of the file, counted from 1 with the header
     */
    public record BadRow(long line, String reason) {}

    /**
     * A new customer who may be the same as another.
     *
     * @param  line      of the file, counted from 1 with the header
     * @param  other     the id of a stored customer; absent where it is a new one of this file
     * @param  otherLine of the file; absent where the other is stored
     * @param  because   PHONE, EMAIL or NAME_AND_ADDRESS
     */
    public record AlikeRow(
            long line,
            String name,
            String otherName,
            @Nullable String other,
            @Nullable Long otherLine,
            List<String> because) {
        static List<AlikeRow> of(ImportReport report) {
            return report.alike().stream()
                    .map(row -> new AlikeRow(
                            row.line(),
                            row.name(),
                            row.otherName(),
                            row.other() == null ? null : row.other().toString(),
                            row.otherLine(),
                            Alike.names(row.because())))
                    .toList();
        }
    }

    /**
     * What the file holds.
     *
     * @param  rows           below the header, without empty lines
     * @param  customers      that are new; so are the sites and surfaces
     * @param  unchanged      customers who are here already and say the same
     * @param  importedBefore when this very file came in, in UTC; absent where it had not
     */
    public record Report(
            boolean dryRun,
            int rows,
            int customers,
            int sites,
            int surfaces,
            List<BadRow> badRows,
            @Nullable String importedBefore,
            int unchanged,
            List<AlikeRow> alike) {
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
                            : report.importedBefore().toString(),
                    report.unchanged(),
                    AlikeRow.of(report));
        }

        private static List<BadRow> bad(ImportReport report) {
            return report.badRows().stream()
                    .map(row -> new BadRow(row.line(), row.reason()))
                    .toList();
        }
    }

    /** Problem details (RFC 9457) of a file with bad rows or possible duplicates, of which nothing was imported. */
    public record NotImported(
            String type,
            String title,
            int status,
            List<String> fields,
            int rows,
            List<BadRow> badRows,
            List<AlikeRow> alike) {
        static NotImported of(CustomersRefusal refusal, ImportReport report) {
            return new NotImported(
                    "urn:eaveside:refusal:" + refusal.code(),
                    refusal.text(),
                    refusal.type().status(),
                    refusal.fields(),
                    report.rows(),
                    Report.bad(report),
                    AlikeRow.of(report));
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
    public Response run(
            @QueryParam("dryRun") @DefaultValue("false") String dryRun,
            @QueryParam("duplicates") @DefaultValue("refuse") String duplicates,
            byte @Nullable [] body) {
        byte[] file = Json.required("body", body);
        if (is("dryRun", dryRun, "true", "false")) {
            return Response.ok(Report.of(importCustomers.tryOut(file), true)).build();
        }
        try {
            ImportReport report =
                    importCustomers.run(file, viewer.id(), is("duplicates", duplicates, "allow", "refuse"));
            auditLog.done("customers.import", report.customers() + " customers");
            return Response.ok(Report.of(report, false)).build();
        } catch (CustomersRefusal.BadRows refusal) {
            return notImported(refusal, refusal.report());
        } catch (CustomersRefusal.AlikeRows refusal) {
            return notImported(refusal, refusal.report());
        }
    }

    private static Response notImported(CustomersRefusal refusal, ImportReport report) {
        return Response.status(refusal.type().status())
                .type("application/problem+json")
                .entity(NotImported.of(refusal, report))
                .build();
    }

    /** A word that is neither is refused: a dry run that was misspelt would import. */
    static boolean is(String name, String given, String yes, String no) {
        if (!given.equals(yes) && !given.equals(no)) {
            throw new WebRefusal.Unreadable("'" + name + "' is " + yes + " or " + no);
        }
        return given.equals(yes);
    }
}
