package eaveside.visits;

import eaveside.kernel.Texts;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import eaveside.visits.internal.VisitRow;
import eaveside.visits.internal.Visits;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Clock;

/** Cancels a planned visit for good, and keeps why. Its quote can be booked again. */
@Dependent
public class CancelVisit {
    private final EntityManager entities;
    private final Visits visits;
    private final Clock clock;

    @Inject
    public CancelVisit(EntityManager entities, Visits visits, Clock clock) {
        this.entities = entities;
        this.visits = visits;
        this.clock = clock;
    }

    /** @param  version of the visit as it was read */
    public record Cancellation(VisitId visit, int version, String reason, UserId by) {
        public Cancellation {
            reason = Texts.required("reason", reason, 500);
        }
    }

    /** Refuses a visit that is no longer planned or was changed meanwhile; the same again is a retry. */
    @Transactional
    public Visit cancel(Cancellation cancel) {
        VisitRow visit = visits.locked(cancel.visit());
        if (visit.version() != cancel.version()) {
            if (visit.lastChangeSays(
                    VisitChange.Type.CANCELED, visit.scheduledFor(), visit.crew(), cancel.reason(), cancel.by())) {
                return visits.view(visit);
            }
            throw new VisitRefusal.Changed("visit", visit.label());
        }
        visit.cancel(cancel.reason(), cancel.by(), clock.instant());
        entities.flush();
        return visits.view(visit);
    }
}
