package eaveside.web.sheets;

import eaveside.kernel.SentSheetId;
import eaveside.kernel.VisitId;
import eaveside.visits.AcknowledgeSentSheet;
import eaveside.visits.Acknowledgment;
import eaveside.visits.ReadSentSheets;
import eaveside.visits.ReadVisits;
import eaveside.visits.SentSheet;
import eaveside.visits.Visit;
import eaveside.web.Names;
import eaveside.web.Page;
import eaveside.web.forms.Fields;
import eaveside.web.forms.Form;
import eaveside.web.forms.Respond;
import eaveside.web.security.Roles;
import eaveside.web.security.Viewer;
import eaveside.web.security.WebRefusal;
import eaveside.web.sheets.SentWords.Part;
import jakarta.annotation.security.RolesAllowed;
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
import jakarta.ws.rs.core.Response;
import java.util.List;

/** What a user sent as a visit's job sheet and what did not become it, for the office to read and to say so. */
@Path("/visits/{visit: [0-9a-fA-F-]{36}}/sent/{sheet: [0-9a-fA-F-]{36}}")
@Dependent
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class SentSheetResource {
    @Inject
    ReadSentSheets readSentSheets;

    @Inject
    ReadVisits readVisits;

    @Inject
    AcknowledgeSentSheet acknowledgeSentSheet;

    @Inject
    SentWords sentWords;

    @Inject
    Names names;

    @Inject
    Viewer viewer;

    /** What was sent, in words. */
    public record SentPage(Visit visit, String customer, SentSheet sheet, List<Part> parts, Names names, Fields fields)
            implements Page {
        public String here() {
            return "/visits/" + visit.id() + "/sent/" + sheet.id();
        }
    }

    @GET
    @Transactional
    public SentPage sent(@PathParam("visit") VisitId visit, @PathParam("sheet") SentSheetId sheet) {
        return page(sheet(visit, sheet), Fields.empty());
    }

    @POST
    @Path("acknowledge")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response acknowledge(
            @PathParam("visit") VisitId visit,
            @PathParam("sheet") SentSheetId sheet,
            Form<Acknowledgment> acknowledgment) {
        SentSheet sent = sheet(visit, sheet);
        return acknowledgment.labeled("sheets").run(acknowledgeSentSheet::acknowledge)
                ? Respond.to("/visits/" + visit, "sheets.read")
                : Respond.again(acknowledgment.fields(), page(sent, acknowledgment.fields()));
    }

    private SentSheet sheet(VisitId visit, SentSheetId id) {
        SentSheet sheet = readSentSheets.sheet(id);
        if (!sheet.visit().equals(visit)) {
            throw new WebRefusal.NoSuchPage();
        }
        return sheet;
    }

    private SentPage page(SentSheet sheet, Fields fields) {
        Visit visit = readVisits.visit(sheet.visit());
        return new SentPage(
                visit,
                names.customer(visit.customer()),
                sheet,
                sentWords.of(visit, sheet, viewer.view()),
                names,
                fields);
    }
}
