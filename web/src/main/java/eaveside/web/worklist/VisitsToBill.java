package eaveside.web.worklist;

import eaveside.kernel.Money;
import eaveside.kernel.VisitId;
import eaveside.ledger.AccountRole;
import eaveside.ledger.Books;
import eaveside.ledger.ReadBalances;
import eaveside.visits.ReadVisits;
import eaveside.visits.VisitQuery;
import eaveside.visits.VisitsShown;
import eaveside.web.Names;
import eaveside.web.View;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Work that is completed and not billed. */
@Dependent
class VisitsToBill implements Kind {
    @Inject
    ReadVisits readVisits;

    @Inject
    ReadBalances readBalances;

    @Inject
    Books books;

    @Inject
    Names names;

    private @Nullable Map<VisitId, Money> cost;

    @Override
    public Waiting.Type type() {
        return Waiting.Type.BILL;
    }

    @Override
    public long count(View view) {
        return cost().size();
    }

    /** What all of it has cost. */
    Money total() {
        return Money.sum(books.currency(), cost().values());
    }

    /** Of each visit, also one that nothing was charged to; read once. */
    private Map<VisitId, Money> cost() {
        Map<VisitId, Money> known = cost;
        if (known == null) {
            List<VisitId> visits = readVisits.allCompletedNotBilled();
            Map<VisitId, Money> charged = readBalances.ofVisits(AccountRole.WORK_IN_PROGRESS, visits);
            known = visits.stream()
                    .collect(Collectors.toMap(visit -> visit, visit -> charged.getOrDefault(visit, books.zero())));
            cost = known;
        }
        return known;
    }

    @Override
    public List<Waiting> longest(View view, int most) {
        return readVisits
                .list(VisitQuery.of(VisitsShown.COMPLETED), null, most)
                .map(visit -> {
                    LocalDate completedOn = visit.completedOn() == null ? visit.date() : visit.completedOn();
                    return new Waiting(
                            type(),
                            completedOn,
                            visit.customer(),
                            () -> view.t(
                                    view.seesCosts() ? "worklist.visit-done-cost" : "worklist.visit-done",
                                    names.customer(visit.customer()),
                                    view.shortDate(completedOn)),
                            view.cost(cost().getOrDefault(visit.id(), books.zero())),
                            "/visits/" + visit.id(),
                            "worklist.bill");
                })
                .rows();
    }
}
