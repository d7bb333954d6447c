package eaveside.web.visits;

import eaveside.access.Role;
import eaveside.kernel.CustomerId;
import eaveside.kernel.DocumentId;
import eaveside.kernel.QuoteId;
import eaveside.kernel.ScopeChangeId;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.SiteId;
import eaveside.kernel.Slice;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import eaveside.kernel.VisitLineId;
import eaveside.ledger.Books;
import eaveside.ledger.ReverseDocument.Reversal;
import eaveside.visits.CancelVisit;
import eaveside.visits.CloseUnbilled;
import eaveside.visits.DecideScopeChange;
import eaveside.visits.ReadSheets;
import eaveside.visits.ReadVisits;
import eaveside.visits.RescheduleVisit;
import eaveside.visits.ScheduleVisit;
import eaveside.visits.ScopeDecision;
import eaveside.visits.Visit;
import eaveside.web.Json;
import eaveside.web.Json.Measured;
import eaveside.web.security.AuditLog;
import eaveside.web.security.For;
import eaveside.web.security.Viewer;
import eaveside.web.visits.VisitJson.Shown;
import eaveside.web.visits.VisitJson.Summary;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import java.time.LocalDate;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** Visits for scripts. */
@Path("/api/visits")
@Dependent
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@For({Role.OWNER, Role.OFFICE})
@Tag(name = "Visits")
public class VisitsApi {
    private static final int PAGE = 100;

    private final ReadVisits readVisits;
    private final ReadSheets readSheets;
    private final ScheduleVisit scheduleVisit;
    private final RescheduleVisit rescheduleVisit;
    private final CancelVisit cancelVisit;
    private final DecideScopeChange decideScopeChange;
    private final CloseUnbilled closeUnbilled;
    private final Books books;
    private final Viewer viewer;
    private final AuditLog auditLog;

    @Inject
    public VisitsApi(
            ReadVisits readVisits,
            ReadSheets readSheets,
            ScheduleVisit scheduleVisit,
            RescheduleVisit rescheduleVisit,
            CancelVisit cancelVisit,
            DecideScopeChange decideScopeChange,
            CloseUnbilled closeUnbilled,
            Books books,
            Viewer viewer,
            AuditLog auditLog) {
        this.readVisits = readVisits;
        this.readSheets = readSheets;
        this.scheduleVisit = scheduleVisit;
        this.rescheduleVisit = rescheduleVisit;
        this.cancelVisit = cancelVisit;
        this.decideScopeChange = decideScopeChange;
        this.closeUnbilled = closeUnbilled;
        this.books = books;
        this.viewer = viewer;
        this.auditLog = auditLog;
    }

    /** A page of the list; ask for more with {@code after=next}. */
    public record Summaries(List<Summary> visits, @Nullable String next) {}

    /** @param  quantity in any unit of the service's type */
    public record NewLine(
            @Nullable String id,
            @Nullable String serviceItem,
            @Nullable String surface,
            @Nullable Measured quantity) {}

    /** A booking: of an agreed quote, of a return to an earlier visit, or with a site and lines of its own. */
    public record NewVisit(
            @Nullable String id,
            @Nullable String quote,
            @Nullable String returnTo,
            @Nullable String customer,
            @Nullable String site,
            @Nullable String date,
            @Nullable List<String> crew,
            @Nullable List<NewLine> lines,
            @Nullable String note) {}

    /** @param  version of the visit as it was read */
    public record NewDay(
            @Nullable Integer version,
            @Nullable String date,
            @Nullable List<String> crew,
            @Nullable String reason) {}

    /** @param  version of the visit as it was read */
    public record NewCancellation(
            @Nullable Integer version, @Nullable String reason) {}

    /** @param  version of the difference as it was read */
    public record NewDecision(
            @Nullable Integer version,
            @Nullable String decision,
            @Nullable String note) {}

    /** @param  id of the closing document */
    public record NewClosing(@Nullable String id, @Nullable String reason) {}

    /**
     * A closing to take back.
     *
     * @param  id      of the reversing document
     * @param  closing the closing document, as the visit names it
     */
    public record NewReopening(
            @Nullable String id,
            @Nullable String closing,
            @Nullable String reason) {}

    @GET
    @Transactional
    @Operation(summary = "Visits: planned (the earliest first), done and not billed, or all of a customer")
    public Summaries visits(
            @QueryParam("show") @DefaultValue("planned") String show,
            @QueryParam("customer") @Nullable String customer,
            @QueryParam("after") @Nullable String after) {
        Slice<Visit.Summary> page = customer != null
                ? readVisits.ofCustomer(CustomerId.of(customer), after, PAGE)
                : show.equals("done") ? readVisits.doneUnbilled(after, PAGE) : readVisits.planned(after, PAGE);
        return new Summaries(page.rows().stream().map(Summary::of).toList(), page.next());
    }

    @GET
    @Path("{id}")
    @Transactional
    @Operation(summary = "A visit with its plan, moves and differences")
    public Shown visit(@PathParam("id") String id) {
        return shown(VisitId.of(id));
    }

    private Shown shown(VisitId id) {
        Visit visit = readVisits.visit(id);
        return Shown.of(
                visit,
                visit.sheet() == null
                        ? List.of()
                        : readSheets.sheet(visit.sheet()).scopeChanges());
    }

    @POST
    @Operation(summary = "Books a visit; the same again changes nothing")
    public Shown book(@Nullable NewVisit body) {
        NewVisit visit = Json.required("body", body);
        VisitId id = VisitId.of(Json.required("id", visit.id()));
        LocalDate date = Json.date("date", visit.date());
        List<UserId> crew = crew(visit.crew());
        String note = visit.note() == null ? "" : visit.note();
        if (visit.quote() != null) {
            scheduleVisit.schedule(
                    new ScheduleVisit.FromQuote(id, QuoteId.of(visit.quote()), date, crew, note, viewer.id()));
        } else if (visit.returnTo() != null) {
            scheduleVisit.schedule(
                    new ScheduleVisit.Return(id, VisitId.of(visit.returnTo()), date, crew, note, viewer.id()));
        } else {
            scheduleVisit.schedule(new ScheduleVisit.Scheduling(
                    id,
                    CustomerId.of(Json.required("customer", visit.customer())),
                    SiteId.of(Json.required("site", visit.site())),
                    date,
                    crew,
                    Json.required("lines", visit.lines()).stream()
                            .map(VisitsApi::line)
                            .toList(),
                    note,
                    viewer.id()));
        }
        auditLog.done("visit.schedule", id);
        return shown(id);
    }

    private static ScheduleVisit.Line line(NewLine line) {
        return new ScheduleVisit.Line(
                VisitLineId.of(Json.required("lines.id", line.id())),
                ServiceItemId.of(Json.required("lines.serviceItem", line.serviceItem())),
                line.surface() == null ? null : SurfaceId.of(line.surface()),
                Json.quantity("lines.quantity", line.quantity()));
    }

    private static List<UserId> crew(@Nullable List<String> crew) {
        return Json.required("crew", crew).stream().map(UserId::of).toList();
    }

    @POST
    @Path("{id}/reschedule")
    @Operation(summary = "Moves a planned visit to another day or crew, and keeps why")
    public Shown move(@PathParam("id") String id, @Nullable NewDay body) {
        NewDay move = Json.required("body", body);
        VisitId visit = VisitId.of(id);
        rescheduleVisit.reschedule(new RescheduleVisit.Rescheduling(
                visit,
                Json.required("version", move.version()),
                Json.date("date", move.date()),
                crew(move.crew()),
                Json.required("reason", move.reason()),
                viewer.id()));
        auditLog.done("visit.moved", visit);
        return shown(visit);
    }

    @POST
    @Path("{id}/cancel")
    @Operation(summary = "Cancels a planned visit for good, and keeps why")
    public Shown cancel(@PathParam("id") String id, @Nullable NewCancellation body) {
        NewCancellation cancel = Json.required("body", body);
        VisitId visit = VisitId.of(id);
        cancelVisit.cancel(new CancelVisit.Cancellation(
                visit,
                Json.required("version", cancel.version()),
                Json.required("reason", cancel.reason()),
                viewer.id()));
        auditLog.done("visit.canceled", visit);
        return shown(visit);
    }

    @POST
    @Path("{id}/scope-changes/{scopeChange}")
    @Operation(summary = "Decides a scopeChange between plan and sheet: BILL, NO_CHARGE, ASK, RETURN_VISIT or CANCEL")
    public Shown decide(
            @PathParam("id") String id, @PathParam("scopeChange") String scopeChange, @Nullable NewDecision body) {
        NewDecision decision = Json.required("body", body);
        VisitId visit = VisitId.of(id);
        decideScopeChange.decide(new DecideScopeChange.Decision(
                ScopeChangeId.of(scopeChange),
                Json.required("version", decision.version()),
                Json.choice("decision", ScopeDecision.class, decision.decision()),
                decision.note() == null ? "" : decision.note(),
                viewer.id()));
        auditLog.done("visit.decided", visit);
        return shown(visit);
    }

    @POST
    @Path("{id}/closing")
    @Operation(summary = "Closes a done visit without an invoice; the work counts as no-charge work")
    public Shown close(@PathParam("id") String id, @Nullable NewClosing body) {
        NewClosing closing = Json.required("body", body);
        VisitId visit = VisitId.of(id);
        closeUnbilled.close(new CloseUnbilled.Closing(
                DocumentId.of(Json.required("id", closing.id())),
                visit,
                null,
                Json.required("reason", closing.reason()),
                viewer.id()));
        return shown(visit);
    }

    @POST
    @Path("{id}/closing/reversal")
    @Operation(summary = "Takes a closing back in full, once: the visit is done and unbilled again")
    public Shown reopen(@PathParam("id") String id, @Nullable NewReopening body) {
        NewReopening reopening = Json.required("body", body);
        VisitId visit = VisitId.of(id);
        closeUnbilled.reverse(
                visit,
                new Reversal(
                        DocumentId.of(Json.required("id", reopening.id())),
                        DocumentId.of(Json.required("closing", reopening.closing())),
                        null,
                        Json.required("reason", reopening.reason()),
                        viewer.id()));
        return shown(visit);
    }
}
