package eaveside.web.customers;

import eaveside.access.Role;
import eaveside.customers.CustomersRefusal;
import eaveside.customers.ImportColumn;
import eaveside.customers.ImportCustomers;
import eaveside.customers.ImportReport;
import eaveside.customers.SurfaceAttribute;
import eaveside.web.Csv;
import eaveside.web.Page;
import eaveside.web.View;
import eaveside.web.forms.Fields;
import eaveside.web.security.AuditLog;
import eaveside.web.security.For;
import eaveside.web.security.Viewer;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.EntityPart;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.URI;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Customers from a file: first tried out, then imported, all or nothing. */
@Path("/customers/import")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For({Role.OWNER, Role.OFFICE})
public class ImportResource {
    private final ImportCustomers importCustomers;
    private final Viewer viewer;
    private final AuditLog auditLog;

    @Inject
    public ImportResource(ImportCustomers importCustomers, Viewer viewer, AuditLog auditLog) {
        this.importCustomers = importCustomers;
        this.viewer = viewer;
        this.auditLog = auditLog;
    }

    /**
     * The upload, and once a file was tried out, what it holds.
     *
     * @param  packed the file itself, to be sent back for the import; empty where it cannot be imported
     */
    public record ImportPage(
            List<ImportColumn.Description> columns,
            @Nullable ImportReport report,
            String packed,
            Fields fields) implements Page {
        @Override
        public String template() {
            return "customers/import.jte";
        }

        /** What a column holds; that of an attribute says it in the words of the surface's form. */
        public String meaning(View view, ImportColumn.Description column) {
            return ImportColumn.ofTitle(column.name())
                    .filter(SurfaceAttribute.class::isInstance)
                    .map(SurfaceAttribute.class::cast)
                    .map(attribute -> Known.meaning(view, attribute))
                    .orElse(column.meaning());
        }
    }

    @GET
    public ImportPage form() {
        return page(null, "", Fields.empty());
    }

    private static ImportPage page(@Nullable ImportReport report, String packed, Fields fields) {
        return new ImportPage(ImportColumn.described().toList(), report, packed, fields);
    }

    @GET
    @Path("sample.csv")
    @Produces("text/csv")
    public Response sample() {
        return Csv.download("customers-sample", SampleFile.HEADER, SampleFile.ROWS);
    }

    /** The dry run: stores nothing. */
    @POST
    @Consumes(MediaType.MULTIPART_FORM_DATA)
    public Response tryOut(List<EntityPart> parts) {
        Fields fields = Fields.empty();
        byte[] file = file(parts);
        if (file.length == 0) {
            fields.wrong("file", "customers.import.no-file");
        }
        List<ImportReport> reports = new ArrayList<>(1);
        fields.run(() -> reports.add(importCustomers.tryOut(file)));
        if (reports.isEmpty()) {
            return Response.status(fields.status())
                    .entity(page(null, "", fields))
                    .build();
        }
        ImportReport report = reports.getFirst();
        boolean importable = report.isClean() && report.importedBefore() == null && report.customers() > 0;
        return Response.ok(page(report, importable ? PackedFile.pack(file) : "", fields))
                .build();
    }

    @POST
    @Path("run")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response run(MultivaluedMap<String, String> form) {
        String packed = viewer.fields(form).typed("packed");
        byte[] file = PackedFile.unpack(packed);
        Fields fields = Fields.empty();
        try {
            ImportReport report =
                    importCustomers.run(file, viewer.id(), viewer.fields(form).ticked("alikeToo"));
            auditLog.done("customers.import", report.customers() + " customers");
            return Response.seeOther(URI.create("/customers?done=customers.imported"))
                    .build();
        } catch (CustomersRefusal.BadRows refusal) {
            // Somebody entered one of the customers since the dry run.
            fields.refused(refusal);
            return Response.status(fields.status())
                    .entity(page(refusal.report(), "", fields))
                    .build();
        } catch (CustomersRefusal.AlikeRows refusal) {
            fields.refused(refusal);
            return Response.status(fields.status())
                    .entity(page(refusal.report(), packed, fields))
                    .build();
        }
    }

    private static byte[] file(List<EntityPart> parts) {
        for (EntityPart part : parts) {
            if (part.getName().equals("file")) {
                try (InputStream in = part.getContent()) {
                    return in.readAllBytes();
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
            }
        }
        return new byte[0];
    }
}
