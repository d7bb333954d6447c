package eaveside.visits.internal;

import eaveside.kernel.DocumentId;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.Shared;
import eaveside.visits.BillableLine;
import eaveside.visits.JobSheet;
import eaveside.visits.ScopeDecision;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;

/** The work of the sheet in force that is billed or done at no charge. */
@Shared
public class BillableLines {
    private final Visits visits;
    private final VisitQueries queries;

    @Inject
    public BillableLines(Visits visits, VisitQueries queries) {
        this.visits = visits;
        this.queries = queries;
    }

    /**
     * Service lines of the billed work of the visits that this one returns to, or that returned to the same before it.
     * Until work orders bill a job as a whole, the first of them bears the minimums, and the others none a second time.
     */
    public Set<ServiceLineId> borneBefore(VisitRow visit) {
        return visit.returnsTo() == null
                ? Set.of()
                : queries.linesBilledBefore(visit.id().value()).stream()
                        .map(ServiceLineId::new)
                        .collect(Collectors.toSet());
    }

    /** Refuses while a scope change is not decided. */
    public List<BillableLine> of(VisitRow visit) {
        SheetRow sheet = visits.sheetInForce(visit);
        List<ScopeChangeRow> scopeChanges = queries.scopeChanges(sheet.document());
        visits.requireDecided(scopeChanges);
        return lines(visit, sheet, scopeChanges);
    }

    /** What is certain already by the sheet: without the extra work that nobody has decided on. */
    List<BillableLine> soFar(VisitRow visit, DocumentId sheet) {
        return lines(visit, visits.sheet(sheet), queries.scopeChanges(sheet));
    }

    private List<BillableLine> lines(VisitRow visit, SheetRow sheet, List<ScopeChangeRow> scopeChanges) {
        Map<?, VisitLineRow> planned =
                visits.plannedLines(visit).stream().collect(Collectors.toMap(VisitLineRow::id, Function.identity()));
        List<BillableLine> lines = new ArrayList<>();
        for (JobSheet.DoneLine done : sheet.lines()) {
            VisitLineRow line = planned.get(done.line());
            if (line != null && done.done().isPositive()) {
                lines.add(line.billable(done.done(), false));
            }
        }
        for (VisitLineRow extra : queries.extraLines(sheet.document())) {
            if (scopeChanges.stream()
                    .anyMatch(d -> d.isOf(extra.id()) && !d.decision().isSettled())) {
                continue;
            }
            boolean noCharge =
                    scopeChanges.stream().anyMatch(d -> d.isOf(extra.id()) && d.decision() == ScopeDecision.NO_CHARGE);
            lines.add(extra.billable(extra.quantity(), noCharge));
        }
        return lines;
    }
}
