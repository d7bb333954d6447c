package eaveside.web.sheets;

import eaveside.access.Role;
import eaveside.customers.ReadCustomer;
import eaveside.kernel.SentSheetId;
import eaveside.kernel.VisitId;
import eaveside.visits.AcknowledgeSentSheet;
import eaveside.visits.ReadSentSheets;
import eaveside.visits.ReadVisits;
import eaveside.visits.SentSheet;
import eaveside.visits.Visit;
import eaveside.web.Names;
import eaveside.web.Page;
import eaveside.web.forms.Fields;
import eaveside.web.security.AuditLog;
import eaveside.web.security.For;
import eaveside.web.security.Viewer;
import eaveside.web.security.WebRefusal;
import eaveside.web.sheets.SentWords.Part;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;

/** What somebody sent as a visit's sheet and what did not become it, for the office to read and to say so. */
@Path("/visits/{visit: [0-9a-fA-F-]{36}}/sent/{sent: [0-9a-fA-F-]{36}}")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For({Role.OWNER, Role.OFFICE})
public class SentSheetResource {
    private final ReadSentSheets readSentSheets;
    private final ReadVisits readVisits;
    private final ReadCustomer readCustomer;
    private final AcknowledgeSentSheet acknowledgeSentSheet;
    private final SentWords sentWords;
    private final Names names;
    private final Viewer viewer;
    private final AuditLog auditLog;

    @Inject
    public SentSheetResource(
            ReadSentSheets readSentSheets,
            ReadVisits readVisits,
            ReadCustomer readCustomer,
            AcknowledgeSentSheet acknowledgeSentSheet,
            SentWords sentWords,
            Names names,
            Viewer viewer,
            AuditLog auditLog) {
        this.readSentSheets = readSentSheets;
        this.readVisits = readVisits;
        this.readCustomer = readCustomer;
        this.acknowledgeSentSheet = acknowledgeSentSheet;
        this.sentWords = sentWords;
        this.names = names;
        this.viewer = viewer;
        this.auditLog = auditLog;
    }

    /** What was sent, in words. */
    public record SentPage(Visit visit, String customer, SentSheet sheet, List<Part> parts, Names names, Fields fields)
            implements Page {
        @Override
        public String template() {
            return "sheets/sent.jte";
        }

        public String here() {
            return "/visits/" + visit.id() + "/sent/" + sheet.id();
        }
    }

    @GET
    @Transactional
    public SentPage sent(@PathParam("visit") String visit, @PathParam("sent") String sent) {
        return page(sheet(visit, sent), Fields.empty());
    }

    @POST
    @Path("acknowledge")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response acknowledge(
            @PathParam("visit") String visit, @PathParam("sent") String sent, MultivaluedMap<String, String> form) {
        SentSheet sheet = sheet(visit, sent);
        Fields fields = viewer.fields(form);
        String note = fields.optional("note");
        if (!fields.run(() -> acknowledgeSentSheet.acknowledge(
                new AcknowledgeSentSheet.Acknowledgment(sheet.id(), note, viewer.id())))) {
            return Response.status(fields.status()).entity(page(sheet, fields)).build();
        }
        auditLog.done("visit.sheet-read", sheet.id());
        return Response.seeOther(URI.create("/visits/" + sheet.visit() + "?done=sheets.read"))
                .build();
    }

    private SentSheet sheet(String visit, String sent) {
        SentSheet sheet = readSentSheets.sheet(SentSheetId.of(sent));
        if (!sheet.visit().equals(VisitId.of(visit))) {
            throw new WebRefusal.NoSuchPage();
        }
        return sheet;
    }

    private SentPage page(SentSheet sheet, Fields fields) {
        Visit visit = readVisits.visit(sheet.visit());
        return new SentPage(
                visit,
                readCustomer.customer(visit.customer()).name(),
                sheet,
                sentWords.of(visit, sheet, viewer.view()),
                names,
                fields);
    }
}
