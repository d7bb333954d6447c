package eaveside.web.visits;

import eaveside.access.Role;
import eaveside.kernel.DocumentId;
import eaveside.kernel.ScopeChangeId;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import eaveside.ledger.Books;
import eaveside.ledger.ReverseDocument.Reversal;
import eaveside.visits.CancelVisit;
import eaveside.visits.CloseUnbilled;
import eaveside.visits.DecideScopeChange;
import eaveside.visits.ReadSheets;
import eaveside.visits.RescheduleVisit;
import eaveside.visits.ReverseJobSheet;
import eaveside.visits.ScopeDecision;
import eaveside.web.forms.Fields;
import eaveside.web.security.AuditLog;
import eaveside.web.security.For;
import eaveside.web.security.Viewer;
import eaveside.web.security.WebRefusal;
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
import java.time.LocalDate;
import java.util.List;

/** A visit, and what the office does with it: move, cancel, decide its differences, close it, reverse its sheet. */
@Path("/visits/{visit: [0-9a-fA-F-]{36}}")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For({Role.OWNER, Role.OFFICE})
public class VisitResource {
    private final VisitPages visitPages;
    private final ReadSheets readSheets;
    private final RescheduleVisit rescheduleVisit;
    private final CancelVisit cancelVisit;
    private final DecideScopeChange decideScopeChange;
    private final CloseUnbilled closeUnbilled;
    private final ReverseJobSheet reverseJobSheet;
    private final Books books;
    private final Viewer viewer;
    private final AuditLog auditLog;

    @Inject
    public VisitResource(
            VisitPages visitPages,
            ReadSheets readSheets,
            RescheduleVisit rescheduleVisit,
            CancelVisit cancelVisit,
            DecideScopeChange decideScopeChange,
            CloseUnbilled closeUnbilled,
            ReverseJobSheet reverseJobSheet,
            Books books,
            Viewer viewer,
            AuditLog auditLog) {
        this.visitPages = visitPages;
        this.readSheets = readSheets;
        this.rescheduleVisit = rescheduleVisit;
        this.cancelVisit = cancelVisit;
        this.decideScopeChange = decideScopeChange;
        this.closeUnbilled = closeUnbilled;
        this.reverseJobSheet = reverseJobSheet;
        this.books = books;
        this.viewer = viewer;
        this.auditLog = auditLog;
    }

    @GET
    @Transactional
    public VisitPage visit(@PathParam("visit") String visit) {
        return visitPages.of(VisitId.of(visit), "", Fields.empty());
    }

    @POST
    @Path("reschedule")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response move(@PathParam("visit") String visit, MultivaluedMap<String, String> form) {
        VisitId id = VisitId.of(visit);
        Fields fields = viewer.fields(form);
        int version = fields.integer("version", 0, Integer.MAX_VALUE);
        LocalDate to = fields.date("date", books.today());
        List<UserId> crew = fields.all("crew").stream().map(UserId::of).toList();
        if (crew.isEmpty()) {
            fields.wrong("crew", "visits.crew.missing");
        }
        String reason = fields.text("reason");
        return answer(
                id,
                "move",
                fields,
                "visits.moved",
                () -> rescheduleVisit.reschedule(
                        new RescheduleVisit.Rescheduling(id, version, to, crew, reason, viewer.id())));
    }

    @POST
    @Path("cancel")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response cancel(@PathParam("visit") String visit, MultivaluedMap<String, String> form) {
        VisitId id = VisitId.of(visit);
        Fields fields = viewer.fields(form);
        int version = fields.integer("version", 0, Integer.MAX_VALUE);
        String reason = fields.text("cancel-reason");
        return answer(
                id,
                "cancel",
                fields,
                "visits.canceled",
                () -> cancelVisit.cancel(new CancelVisit.Cancellation(id, version, reason, viewer.id())));
    }

    @POST
    @Path("scope-changes/{scopeChange}")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response decide(
            @PathParam("visit") String visit,
            @PathParam("scopeChange") String scopeChange,
            MultivaluedMap<String, String> form) {
        VisitId id = VisitId.of(visit);
        ScopeChangeId about = ScopeChangeId.of(scopeChange);
        Fields fields = viewer.fields(form);
        int version = fields.integer("version", 0, Integer.MAX_VALUE);
        ScopeDecision decision = fields.choice("decision", ScopeDecision.class);
        String note = fields.optional("note");
        if (decision == null) {
            return again(id, "scope-changes/" + about, fields);
        }
        return answer(
                id,
                "scope-changes/" + about,
                fields,
                "visits.decided",
                () -> decideScopeChange.decide(
                        new DecideScopeChange.Decision(about, version, decision, note, viewer.id())));
    }

    @POST
    @Path("close")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response close(@PathParam("visit") String visit, MultivaluedMap<String, String> form) {
        VisitId id = VisitId.of(visit);
        Fields fields = viewer.fields(form);
        DocumentId document = new DocumentId(fields.id("id"));
        String reason = fields.text("close-reason");
        return answer(
                id,
                "close",
                fields,
                "visits.closed",
                () -> closeUnbilled.close(new CloseUnbilled.Closing(document, id, null, reason, viewer.id())));
    }

    @POST
    @Path("close/reverse")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response reopen(@PathParam("visit") String visit, MultivaluedMap<String, String> form) {
        VisitId id = VisitId.of(visit);
        Fields fields = viewer.fields(form);
        Reversal reversal = reversal(fields);
        return answer(id, "close/reverse", fields, "visits.reopened", () -> closeUnbilled.reverse(id, reversal));
    }

    @POST
    @Path("sheet/reverse")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response reverseSheet(@PathParam("visit") String visit, MultivaluedMap<String, String> form) {
        VisitId id = VisitId.of(visit);
        Fields fields = viewer.fields(form);
        Reversal reversal = reversal(fields);
        if (!readSheets.sheet(reversal.original()).visit().equals(id)) {
            throw new WebRefusal.NoSuchPage();
        }
        return answer(id, "sheet/reverse", fields, "visits.sheet-reversed", () -> reverseJobSheet.reverse(reversal));
    }

    private Reversal reversal(Fields fields) {
        return new Reversal(
                new DocumentId(fields.id("id")),
                new DocumentId(fields.id("original")),
                null,
                fields.text("reverse-reason"),
                viewer.id());
    }

    private Response answer(VisitId id, String deed, Fields fields, String done, Runnable useCase) {
        if (!fields.run(useCase)) {
            return again(id, deed, fields);
        }
        auditLog.done(done.replace("visits.", "visit."), id);
        return Response.seeOther(URI.create("/visits/" + id + "?done=" + done)).build();
    }

    private Response again(VisitId id, String deed, Fields fields) {
        return Response.status(fields.status())
                .entity(visitPages.of(id, deed, fields))
                .build();
    }
}
