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
import eaveside.ledger.CostType;
import eaveside.pricing.PricedWork;
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
import eaveside.web.visits.SheetFacts.Facts;
import eaveside.web.visits.SheetFacts.Work;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * A visit for the office.
 *
 * @param  work    planned, and what was done of it where a sheet is in force
 * @param  facts   of the sheet in force; null without one
 * @param  costs   what that sheet put into work in progress; nothing for who may not see it
 * @param  entries the address of what the visit has in work in progress
 * @param  worth   of its extras
 * @param  earlier sheets that were reversed
 * @param  photos  that no finding shows
 * @param  sent    what was sent as its sheet and did not become it
 * @param  draft   of its invoice; null while there is none
 * @param  nextId  for a document that this page may post
 * @param  about   which form the fields were typed into; empty at first
 */
public record VisitPage(
        Visit visit,
        Customer customer,
        Site site,
        @Nullable Long quoteNumber,
        List<Work> work,
        @Nullable Facts facts,
        List<Cost> costs,
        String entries,
        Map<VisitLineId, PricedWork.Line> worth,
        List<SignedSheet> earlier,
        List<PhotoId> photos,
        List<SentSheet> sent,
        @Nullable InvoiceId draft,
        List<User> staff,
        Names names,
        DocumentId nextId,
        String about,
        Fields fields)
        implements Page {
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

    /** The id of a form's field in the page; the errors of the form that was sent lead to its fields by their names. */
    public String at(String form, String name) {
        return about.equals(form) ? name : form.replace('/', '-') + "-" + name;
    }

    /** Whether another user was faster than whoever sent that form. */
    public boolean isStale(String form) {
        return about.equals(form) && fields.status() == Response.Status.CONFLICT.getStatusCode();
    }

    public long undecided() {
        return visit.scopeChanges().stream()
                .filter(change -> !change.decision().isSettled())
                .count();
    }

    /** Whether skipped work waits for a visit that comes back for it. */
    public boolean comesBack() {
        return visit.scopeChanges().stream().anyMatch(change -> change.decision() == ScopeDecision.RETURN_VISIT);
    }

    public List<ScopeDecision> answersTo(ScopeChange scopeChange) {
        return Stream.of(ScopeDecision.values())
                .filter(d -> d != ScopeDecision.OPEN && d.suits(scopeChange.type()))
                .toList();
    }

    /** What the scope change is about. */
    public String work(VisitLineId line) {
        return work.stream()
                .filter(w -> w.id().equals(line))
                .map(Work::what)
                .findFirst()
                .orElse("");
    }

    public List<ServiceLineId> costLines() {
        return costs.stream().map(Cost::serviceLine).distinct().toList();
    }

    /** What the work cost, of one service line and of one type where they are named; null where there is none. */
    public @Nullable Money cost(@Nullable ServiceLineId line, @Nullable CostType type) {
        return costs.stream()
                .filter(cost -> line == null || cost.serviceLine().equals(line))
                .filter(cost -> type == null || cost.type() == type)
                .map(Cost::amount)
                .reduce(Money::plus)
                .orElse(null);
    }

    /** The entries behind such a cost while it waits in work in progress; afterwards they are on the sheet's document. */
    public String entries(@Nullable ServiceLineId line, @Nullable CostType type) {
        return is(VisitStatus.COMPLETED)
                ? entries + (line == null ? "" : "&line=" + line) + (type == null ? "" : "&cost=" + type)
                : "/documents/" + visit.sheet();
    }
}
