package eaveside.visits;

import eaveside.access.RecordAudit;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Shared;
import eaveside.visits.internal.VisitRow;
import eaveside.visits.internal.Visits;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Clock;

/** Cancels a scheduled visit for good, and keeps why. Its quote can be scheduled again. */
@Shared
public class CancelVisit {
    private final EntityManager entities;
    private final Visits visits;
    private final RecordAudit audit;
    private final Clock clock;

    @Inject
    public CancelVisit(EntityManager entities, Visits visits, RecordAudit audit, Clock clock) {
        this.entities = entities;
        this.visits = visits;
        this.audit = audit;
        this.clock = clock;
    }

    /**
     * The same command again is a retry. Refuses a visit that is no longer scheduled, and a version that another user has
     * changed with {@link KernelRefusal.Stale}.
     */
    @Transactional
    public Visit cancel(Cancellation cancel) {
        VisitRow visit = visits.locked(cancel.visit());
        if (visit.lastChangeSays(
                VisitChange.Type.CANCELED, visit.scheduledFor(), visit.crew(), cancel.reason(), cancel.by())) {
            return visits.view(visit);
        }
        visit.requireVersion(cancel);
        visit.cancel(cancel.reason(), cancel.by(), clock.instant());
        audit.done("visit.cancel", cancel.by(), cancel.visit());
        entities.flush();
        return visits.view(visit);
    }
}
