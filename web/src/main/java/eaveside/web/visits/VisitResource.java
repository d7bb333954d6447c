package eaveside.web.visits;

import eaveside.access.ReadUsers;
import eaveside.access.Role;
import eaveside.access.Sight;
import eaveside.access.User;
import eaveside.customers.Customer;
import eaveside.customers.ReadCustomer;
import eaveside.invoicing.ReadInvoices;
import eaveside.kernel.DocumentId;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import eaveside.ledger.ReadLedger;
import eaveside.ledger.ReverseDocument.Reversal;
import eaveside.pricing.ReadQuotes;
import eaveside.visits.CancelVisit;
import eaveside.visits.Cancellation;
import eaveside.visits.CloseWithoutBilling;
import eaveside.visits.DecideScopeChange;
import eaveside.visits.ReadSentSheets;
import eaveside.visits.ReadSheets;
import eaveside.visits.ReadVisits;
import eaveside.visits.RescheduleVisit;
import eaveside.visits.Rescheduling;
import eaveside.visits.ReverseJobSheet;
import eaveside.visits.ScopeChangeDecision;
import eaveside.visits.SignedSheet;
import eaveside.visits.Visit;
import eaveside.visits.VisitStatus;
import eaveside.web.Names;
import eaveside.web.Page;
import eaveside.web.forms.Fields;
import eaveside.web.forms.Form;
import eaveside.web.forms.Respond;
import eaveside.web.security.Roles;
import eaveside.web.security.Viewer;
import eaveside.web.security.WebRefusal;
import eaveside.web.visits.SheetFacts.Facts;
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
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;

/** A visit, and what the office does with it: reschedule, cancel, decide scope changes, close, reverse its job sheet. */
@Path("/visits/{visit: [0-9a-fA-F-]{36}}")
@Dependent
@Produces(MediaType.TEXT_HTML)
@Consumes(MediaType.APPLICATION_FORM_URLENCODED)
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class VisitResource {
    @Inject
    ReadVisits readVisits;

    @Inject
    ReadSheets readSheets;

    @Inject
    ReadSentSheets readSentSheets;

    @Inject
    ReadCustomer readCustomer;

    @Inject
    ReadQuotes readQuotes;

    @Inject
    ReadInvoices readInvoices;

    @Inject
    ReadLedger readLedger;

    @Inject
    ReadUsers readUsers;

    @Inject
    SheetFacts sheetFacts;

    @Inject
    ExtraWorth extraWorth;

    @Inject
    RescheduleVisit rescheduleVisit;

    @Inject
    CancelVisit cancelVisit;

    @Inject
    DecideScopeChange decideScopeChange;

    @Inject
    CloseWithoutBilling closeWithoutBilling;

    @Inject
    ReverseJobSheet reverseJobSheet;

    @Inject
    Names names;

    @Inject
    Viewer viewer;

    @GET
    @Transactional
    public VisitPage visit(@PathParam("visit") VisitId visit) {
        return page(visit, "", Fields.empty());
    }

    /** A sheet that was reversed: nothing of it counts, and it stays readable. */
    public record ReversedSheetPage(Visit visit, Customer customer, Facts facts, Names names) implements Page {}

    @GET
    @Path("sheets/{sheet}")
    @Transactional
    public ReversedSheetPage reversed(@PathParam("visit") VisitId id, @PathParam("sheet") DocumentId sheet) {
        SignedSheet reversed = readSheets.sheet(sheet);
        if (!reversed.visit().equals(id) || reversed.reversedBy() == null) {
            throw new WebRefusal.NoSuchPage();
        }
        Visit visit = readVisits.visit(id);
        return new ReversedSheetPage(
                visit, readCustomer.customer(visit.customer()), sheetFacts.of(visit, reversed), names);
    }

    @POST
    @Path("reschedule")
    public Response reschedule(@PathParam("visit") VisitId visit, Form<Rescheduling> form) {
        return answer(visit, "reschedule", form, "rescheduled", rescheduleVisit::reschedule);
    }

    @POST
    @Path("cancel")
    public Response cancel(@PathParam("visit") VisitId visit, Form<Cancellation> form) {
        return answer(visit, "cancel", form, "canceled", cancelVisit::cancel);
    }

    @POST
    @Path("scope-changes/{scopeChange}")
    public Response decide(
            @PathParam("visit") VisitId visit,
            @PathParam("scopeChange") String scopeChange,
            Form<ScopeChangeDecision> form) {
        return answer(visit, "scope-changes/" + scopeChange, form, "decided", decideScopeChange::decide);
    }

    @POST
    @Path("close")
    public Response close(@PathParam("visit") VisitId visit, Form<CloseWithoutBilling.Closing> form) {
        return answer(visit, "close", form, "closed", closeWithoutBilling::close);
    }

    @POST
    @Path("close/reverse")
    public Response reopen(@PathParam("visit") VisitId visit, Form<CloseWithoutBilling.Reopening> form) {
        return answer(visit, "close/reverse", form, "reopened", closeWithoutBilling::reverse);
    }

    @POST
    @Path("sheet/reverse")
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
                : Respond.again(form.fields(), page(visit, about, form.fields()));
    }

    private VisitPage page(VisitId id, String about, Fields fields) {
        Visit visit = readVisits.visit(id);
        List<SignedSheet> sheets = readSheets.ofVisit(id);
        SignedSheet inForce = sheets.stream()
                .filter(s -> s.posted().id().equals(visit.sheet()))
                .findFirst()
                .orElse(null);
        Facts facts = inForce == null ? null : sheetFacts.of(visit, inForce);
        return new VisitPage(
                visit,
                readCustomer.customer(visit.customer()),
                readCustomer.site(visit.site()),
                visit.quote() == null
                        ? null
                        : Long.valueOf(readQuotes.quote(visit.quote()).number()),
                facts == null ? sheetFacts.plan(visit) : facts.work(),
                facts,
                inForce == null || !viewer.sees(Sight.COSTS)
                        ? List.of()
                        : readSheets.costOf(inForce.posted().id()),
                VisitListPages.entries(readLedger) + id,
                inForce == null || visit.status() != VisitStatus.COMPLETED ? Map.of() : extraWorth.of(visit, inForce),
                sheets.stream().filter(s -> s.reversedBy() != null).toList(),
                sheetFacts.otherPhotos(id, facts),
                readSentSheets.ofVisit(id),
                readInvoices.draftOf(id).orElse(null),
                visit.status() == VisitStatus.SCHEDULED ? staff(readUsers, visit.crew()) : List.of(),
                names,
                DocumentId.next(),
                about,
                fields);
    }

    /** Who may be in a crew, and who is; those who usually climb first. */
    static List<User> staff(ReadUsers readUsers, List<UserId> crew) {
        return readUsers.all().stream()
                .filter(user -> user.active() || crew.contains(user.id()))
                .sorted(Comparator.comparing((User user) -> user.role() != Role.TECHNICIAN))
                .toList();
    }
}
