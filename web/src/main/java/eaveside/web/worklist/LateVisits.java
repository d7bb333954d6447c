package eaveside.web.worklist;

import eaveside.visits.ReadVisits;
import eaveside.visits.VisitQuery;
import eaveside.visits.VisitsShown;
import eaveside.web.Names;
import eaveside.web.View;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.util.List;

/** Visits whose day has passed without a signed job sheet. */
@Dependent
class LateVisits implements Kind {
    @Inject
    ReadVisits readVisits;

    @Inject
    Names names;

    @Override
    public Waiting.Type type() {
        return Waiting.Type.PLAN;
    }

    @Override
    public long count(View view) {
        return readVisits.countScheduledBefore(view.today());
    }

    /** Scheduled visits come the earliest first, so that the first so many are those whose day has passed. */
    @Override
    public List<Waiting> longest(View view, int most) {
        return readVisits
                .list(VisitQuery.of(VisitsShown.SCHEDULED), null, most)
                .map(visit -> new Waiting(
                        type(),
                        visit.date(),
                        visit.customer(),
                        () -> view.t(
                                "worklist.visit-late", names.customer(visit.customer()), view.shortDate(visit.date())),
                        null,
                        "/visits/" + visit.id(),
                        "worklist.reschedule"))
                .rows();
    }
}
