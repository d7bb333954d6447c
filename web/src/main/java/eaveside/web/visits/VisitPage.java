package eaveside.web.visits;

import eaveside.access.User;
import eaveside.customers.Customer;
import eaveside.customers.Site;
import eaveside.kernel.DocumentId;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.Money;
import eaveside.kernel.PhotoId;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.VisitLineId;
import eaveside.ledger.AccountCode;
import eaveside.ledger.CostType;
import eaveside.visits.ReadSheets.Cost;
import eaveside.visits.ScopeChange;
import eaveside.visits.ScopeDecision;
import eaveside.visits.SentSheet;
import eaveside.visits.SignedSheet;
import eaveside.visits.Visit;
import eaveside.visits.VisitStatus;
import eaveside.web.Names;
import eaveside.web.Page;
import eaveside.web.forms.Fields;
import eaveside.web.visits.ExtraWorth.Worth;
import eaveside.web.visits.SheetFacts.Facts;
import eaveside.web.visits.SheetFacts.Work;
import jakarta.ws.rs.core.Response;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * A visit for the office.
 *
 * @param  plan    while there is no sheet in force
 * @param  facts   of the sheet in force; null without one
 * @param  cost    what that sheet put into work in progress; nothing for who may not see it
 * @param  worth   of its extras
 * @param  earlier sheets that were reversed
 * @param  photos  that no finding shows
 * @param  sent    what was sent as its sheet and did not become it
 * @param  soap    what to know about the planned soap: item, surface, manufacturer
 * @param  draft   of its invoice; null while there is none
 * @param  nextId  for a document that this page may post
 * @param  about   which form the fields were typed into; empty at first
 */
public record VisitPage(
        Visit visit,
        Customer customer,
        Site site,
        @Nullable Long quoteNumber,
        List<Work> plan,
        @Nullable Facts facts,
        List<Cost> cost,
        Map<VisitLineId, Worth> worth,
        List<SignedSheet> earlier,
        List<PhotoId> photos,
        List<SentSheet> sent,
        List<List<String>> soap,
        @Nullable InvoiceId draft,
        List<User> staff,
        Names names,
        AccountCode workInProgress,
        DocumentId nextId,
        String about,
        Fields fields)
        implements Page {
    @Override
    public String template() {
        return "visits/visit.jte";
    }

    public String here() {
        return "/visits/" + visit.id();
    }

    public boolean is(VisitStatus status) {
        return visit.status() == status;
    }

    /** The fields of one of the page's forms; another form's are empty. */
    public Fields fieldsOf(String form, Fields atFirst) {
        return about.equals(form) ? fields : atFirst;
    }

    /** The id that a form posts its document under; the one sent before where it is shown again. */
    public String idOf(String form) {
        return about.equals(form) && !fields.typed("id").isEmpty() ? fields.typed("id") : nextId.toString();
    }

    public String crewNames() {
        return visit.crew().stream().map(names::user).collect(Collectors.joining(", "));
    }

    public List<ScopeChange> scopeChanges() {
        return visit.scopeChanges();
    }

    /** The id of a form's field in the page; the errors of the form that was sent lead to its fields by their names. */
    public String at(String form, String name) {
        return about.equals(form) ? name : form.replace('/', '-') + "-" + name;
    }

    /** Whether another user was faster than whoever sent that form. */
    public boolean isStale(String form) {
        return about.equals(form) && fields.status() == Response.Status.CONFLICT.getStatusCode();
    }

    public long undecided() {
        return scopeChanges().stream().filter(d -> !d.decision().isSettled()).count();
    }

    /** Whether skipped work waits for a visit that comes back for it. */
    public boolean comesBack() {
        return scopeChanges().stream().anyMatch(d -> d.decision() == ScopeDecision.RETURN_VISIT);
    }

    public List<ScopeDecision> answersTo(ScopeChange scopeChange) {
        return Arrays.stream(ScopeDecision.values())
                .filter(d -> d != ScopeDecision.OPEN && d.suits(scopeChange.type()))
                .toList();
    }

    /** What the scope change is about. */
    public String work(VisitLineId line) {
        return facts == null
                ? ""
                : facts.work().stream()
                        .filter(w -> w.id().equals(line))
                        .map(Work::what)
                        .findFirst()
                        .orElse("");
    }

    public List<ServiceLineId> costLines() {
        return cost.stream().map(Cost::serviceLine).distinct().toList();
    }

    public Optional<Cost> cost(ServiceLineId line, CostType type) {
        return cost.stream()
                .filter(c -> c.serviceLine().equals(line) && c.type() == type)
                .findFirst();
    }

    public Optional<Money> costOf(ServiceLineId line) {
        return cost.stream()
                .filter(c -> c.serviceLine().equals(line))
                .map(Cost::amount)
                .reduce(Money::plus);
    }

    public Optional<Money> costOfAll() {
        return cost.stream().map(Cost::amount).reduce(Money::plus);
    }

    /** The entries behind the cost of a service line. */
    public String entriesOf(ServiceLineId line) {
        return is(VisitStatus.COMPLETED) ? Entries.of(workInProgress, visit.id(), line) : entries(null);
    }

    /** The entries behind a cost while it waits in work in progress; afterwards they are on the sheet's document. */
    public String entries(@Nullable Cost of) {
        if (!is(VisitStatus.COMPLETED)) {
            return "/documents/" + visit.sheet();
        }
        return of == null ? Entries.of(workInProgress, visit.id()) : Entries.of(workInProgress, visit.id(), of);
    }
}
