package eaveside.web.customers;

import eaveside.customers.CustomersRefusal;
import eaveside.customers.ImportColumn;
import eaveside.customers.ImportCustomers;
import eaveside.customers.ImportReport;
import eaveside.customers.SurfaceAttribute;
import eaveside.web.Csv;
import eaveside.web.Page;
import eaveside.web.View;
import eaveside.web.forms.Fields;
import eaveside.web.forms.Respond;
import eaveside.web.forms.SentParts;
import eaveside.web.security.Roles;
import eaveside.web.security.Viewer;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.EntityPart;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Customers from a file: first tried out, then imported, all or nothing. */
@Path("/customers/import")
@Dependent
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class ImportResource {
    @Inject
    ImportCustomers importCustomers;

    @Inject
    Viewer viewer;

    /**
     * The upload, and once a file was tried out, what it holds.
     *
     * @param  packed the file itself, to be sent back for the import
     */
    public record ImportPage(@Nullable ImportReport report, String packed, Fields fields) implements Page {
        /** What a column holds: in words of its own, else under the label of its field, with the choices that it has. */
        public String meaning(View view, ImportColumn column) {
            String key = "customers.import.column." + column.title();
            String own = view.t(key);
            if (!own.equals(key)) {
                return own;
            }
            return Stream.of(SurfaceAttribute.values())
                    .filter(attribute -> attribute.name().equalsIgnoreCase(column.title()))
                    .findFirst()
                    .map(attribute -> Known.meaning(view, attribute))
                    .orElseGet(() -> {
                        String label = view.t("customers." + column.component());
                        return column.choices().isEmpty()
                                ? label
                                : view.t("customers.import.attribute", label, String.join(", ", column.choices()));
                    });
        }
    }

    @GET
    public ImportPage form() {
        return new ImportPage(null, "", Fields.empty());
    }

    @GET
    @Path("sample.csv")
    @Produces("text/csv")
    public Response sample() {
        return Csv.download(
                "customers-sample",
                Objects.requireNonNull(ImportResource.class.getResourceAsStream("/customers-sample.csv")));
    }

    /** The dry run: stores nothing. */
    @POST
    @Consumes(MediaType.MULTIPART_FORM_DATA)
    public Response tryOut(List<EntityPart> parts) {
        Fields fields = Fields.empty();
        byte[] sent = new SentParts(parts).bytes("file");
        byte[] file = sent == null ? new byte[0] : sent;
        if (file.length == 0) {
            fields.wrong("file", "customers.import.no-file");
        }
        ImportReport report = file.length == 0 ? null : fields.made("file", () -> importCustomers.tryOut(file));
        return Respond.again(fields, new ImportPage(report, report == null ? "" : PackedFile.pack(file), fields));
    }

    /** A customer may have been entered since the dry run: then the page says what the file holds now. */
    @POST
    @Path("run")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response run(Fields fields) {
        String packed = fields.typed("packed");
        byte[] file = PackedFile.unpack(packed);
        try {
            importCustomers.run(file, viewer.id(), fields.ticked("allowDuplicates"));
            return Respond.to("/customers", "customers.imported");
        } catch (CustomersRefusal.NotImported refusal) {
            fields.refused(refusal);
            return Respond.again(fields, new ImportPage(refusal.report(), packed, fields));
        }
    }
}
