package eaveside.web.worklist;

import eaveside.visits.ReadSheets;
import eaveside.web.Names;
import eaveside.web.View;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.util.List;

/** Visits with scope changes to decide. */
@Dependent
class ScopeChanges implements Kind {
    @Inject
    ReadSheets readSheets;

    @Inject
    Names names;

    @Override
    public Waiting.Type type() {
        return Waiting.Type.DECIDE;
    }

    @Override
    public long count(View view) {
        return readSheets.countUndecidedVisits();
    }

    @Override
    public List<Waiting> longest(View view, int most) {
        return readSheets.undecidedVisits(most).stream()
                .map(visit -> new Waiting(
                        type(),
                        visit.since(),
                        visit.customer(),
                        () -> view.t("worklist.scopeChanges", visit.scopeChanges(), names.customer(visit.customer())),
                        null,
                        "/visits/" + visit.visit(),
                        "worklist.decide"))
                .toList();
    }
}
