package eaveside.web.visits;

import eaveside.kernel.CustomerId;
import eaveside.kernel.Slice;
import eaveside.kernel.VisitId;
import eaveside.ledger.Posted;
import eaveside.visits.CancelVisit;
import eaveside.visits.Cancellation;
import eaveside.visits.CloseWithoutBilling;
import eaveside.visits.DecideScopeChange;
import eaveside.visits.ReadVisits;
import eaveside.visits.RescheduleVisit;
import eaveside.visits.Rescheduling;
import eaveside.visits.ScheduleVisit;
import eaveside.visits.Scheduling;
import eaveside.visits.ScopeChangeDecision;
import eaveside.visits.Visit;
import eaveside.visits.VisitQuery;
import eaveside.visits.VisitsShown;
import eaveside.web.forms.Created;
import eaveside.web.security.Roles;
import jakarta.annotation.security.RolesAllowed;
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
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** Visits for scripts. */
@Path("/api/visits")
@Dependent
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
@Tag(name = "Visits")
public class VisitsApi {
    private static final int PAGE = 100;

    @Inject
    ReadVisits readVisits;

    @Inject
    ScheduleVisit scheduleVisit;

    @Inject
    RescheduleVisit rescheduleVisit;

    @Inject
    CancelVisit cancelVisit;

    @Inject
    DecideScopeChange decideScopeChange;

    @Inject
    CloseWithoutBilling closeWithoutBilling;

    /** A page of the list; ask for more with {@code after=next}. */
    public record Listed(
            List<Visit.Summary> visits, @Nullable String next) {}

    @GET
    @Transactional
    @Operation(
            summary = "Lists visits",
            description =
                    "'show' is SCHEDULED (the earliest first), TODAY, COMPLETED (not billed, the oldest work first) or"
                            + " ALL (the latest first). Without it, SCHEDULED; with a customer, ALL. Narrowed by a customer, and by"
                            + " beginnings of words of customer, site, address or crew as 'q'.")
    public Listed visits(
            @QueryParam("show") @Nullable VisitsShown show,
            @QueryParam("customer") @Nullable CustomerId customer,
            @QueryParam("q") @DefaultValue("") String search,
            @QueryParam("after") @Nullable String after) {
        Slice<Visit.Summary> page = readVisits.list(VisitQuery.asked(show, customer, search), after, PAGE);
        return new Listed(page.rows(), page.next());
    }

    @GET
    @Path("{visit}")
    @Transactional
    @Operation(summary = "Reads a visit with its planned work, what was changed about it, and its scope changes")
    public Visit visit(@PathParam("visit") VisitId visit) {
        return readVisits.visit(visit);
    }

    @POST
    @Operation(
            summary = "Schedules a visit; the same again changes nothing",
            description =
                    "Of an accepted 'quote', to return for skipped work of the visit 'returnsTo', or without either"
                            + " with a 'site' and 'lines'.")
    public Created<Visit> schedule(Scheduling scheduling) {
        Visit visit = scheduleVisit.schedule(scheduling);
        return Created.at("/api/visits/" + visit.id(), visit);
    }

    @POST
    @Path("{visit}/reschedule")
    @Operation(summary = "Reschedules a visit for another day or crew, and keeps why; the same again changes nothing")
    public Visit reschedule(Rescheduling rescheduling) {
        return rescheduleVisit.reschedule(rescheduling);
    }

    @POST
    @Path("{visit}/cancel")
    @Operation(summary = "Cancels a scheduled visit for good, and keeps why; the same again changes nothing")
    public Visit cancel(Cancellation cancellation) {
        return cancelVisit.cancel(cancellation);
    }

    @POST
    @Path("{visit}/scope-changes/{scopeChange}")
    @Operation(
            summary = "Decides a scope change; the same again changes nothing",
            description = "Extra work: BILL, NO_CHARGE or ASK. Skipped work: RETURN_VISIT or CANCEL.")
    public Visit decide(ScopeChangeDecision decision) {
        decideScopeChange.decide(decision);
        return readVisits.visit(decision.visit());
    }

    @POST
    @Path("{visit}/closing")
    @Operation(
            summary =
                    "Closes a completed visit without an invoice: its work is no-charge work; the same again is a retry")
    public Created<Posted> close(CloseWithoutBilling.Closing closing) {
        return Created.document(closeWithoutBilling.close(closing));
    }

    @POST
    @Path("{visit}/closing/reversal")
    @Operation(
            summary = "Reverses the closing in full, once: the visit can be billed again; the same again is a retry",
            description =
                    "'closing' may name the closing document that is meant; another one in force is then refused.")
    public Created<Posted> reopen(CloseWithoutBilling.Reopening reopening) {
        return Created.document(closeWithoutBilling.reverse(reopening));
    }
}
