package eaveside.web.visits;

import eaveside.kernel.VisitId;
import eaveside.ledger.ReverseDocument.Reversal;
import eaveside.visits.CancelVisit;
import eaveside.visits.Cancellation;
import eaveside.visits.CloseUnbilled;
import eaveside.visits.DecideScopeChange;
import eaveside.visits.ReadSheets;
import eaveside.visits.RescheduleVisit;
import eaveside.visits.Rescheduling;
import eaveside.visits.ReverseJobSheet;
import eaveside.visits.ScopeChangeDecision;
import eaveside.web.forms.Fields;
import eaveside.web.forms.Form;
import eaveside.web.forms.Respond;
import eaveside.web.security.Roles;
import eaveside.web.security.WebRefusal;
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
import java.util.function.Consumer;

/** A visit, and what the office does with it: reschedule, cancel, decide scope changes, close, reverse its job sheet. */
@Path("/visits/{visit: [0-9a-fA-F-]{36}}")
@Dependent
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class VisitResource {
    @Inject
    VisitPages visitPages;

    @Inject
    ReadSheets readSheets;

    @Inject
    RescheduleVisit rescheduleVisit;

    @Inject
    CancelVisit cancelVisit;

    @Inject
    DecideScopeChange decideScopeChange;

    @Inject
    CloseUnbilled closeUnbilled;

    @Inject
    ReverseJobSheet reverseJobSheet;

    @GET
    @Transactional
    public VisitPage visit(@PathParam("visit") VisitId visit) {
        return visitPages.of(visit, "", Fields.empty());
    }

    @POST
    @Path("reschedule")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response reschedule(@PathParam("visit") VisitId visit, Form<Rescheduling> form) {
        return answer(visit, "reschedule", form, "rescheduled", rescheduleVisit::reschedule);
    }

    @POST
    @Path("cancel")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response cancel(@PathParam("visit") VisitId visit, Form<Cancellation> form) {
        return answer(visit, "cancel", form, "canceled", cancelVisit::cancel);
    }

    @POST
    @Path("scope-changes/{scopeChange}")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response decide(
            @PathParam("visit") VisitId visit,
            @PathParam("scopeChange") String scopeChange,
            Form<ScopeChangeDecision> form) {
        return answer(visit, "scope-changes/" + scopeChange, form, "decided", decideScopeChange::decide);
    }

    @POST
    @Path("close")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response close(@PathParam("visit") VisitId visit, Form<CloseUnbilled.Closing> form) {
        return answer(visit, "close", form, "closed", closeUnbilled::close);
    }

    @POST
    @Path("close/reverse")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response reopen(@PathParam("visit") VisitId visit, Form<CloseUnbilled.Reopening> form) {
        return answer(visit, "close/reverse", form, "reopened", closeUnbilled::reverse);
    }

    @POST
    @Path("sheet/reverse")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response reverseSheet(@PathParam("visit") VisitId visit, Form<Reversal> form) {
        return answer(visit, "sheet/reverse", form, "sheet-reversed", reversal -> {
            if (!readSheets.sheet(reversal.original()).visit().equals(visit)) {
                throw new WebRefusal.NoSuchPage();
            }
            reverseJobSheet.reverse(reversal);
        });
    }

    /** Back to the visit with a word about what was done, or the visit as it is now with what is in the way. */
    private <C extends Record> Response answer(
            VisitId visit, String about, Form<C> form, String done, Consumer<C> useCase) {
        return form.labeled("visits").run(useCase)
                ? Respond.to("/visits/" + visit, "visits." + done)
                : Respond.again(form.fields(), visitPages.of(visit, about, form.fields()));
    }
}
