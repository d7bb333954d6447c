package eaveside.visits;

import eaveside.access.RecordAudit;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Shared;
import eaveside.ledger.Books;
import eaveside.visits.internal.Crews;
import eaveside.visits.internal.VisitRow;
import eaveside.visits.internal.Visits;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Clock;

/** Reschedules a visit for another day or crew, and keeps why: rain, a sick technician, the customer's wish. */
@Shared
public class RescheduleVisit {
    private final EntityManager entities;
    private final Visits visits;
    private final Crews crews;
    private final Books books;
    private final RecordAudit audit;
    private final Clock clock;

    @Inject
    public RescheduleVisit(
            EntityManager entities, Visits visits, Crews crews, Books books, RecordAudit audit, Clock clock) {
        this.entities = entities;
        this.visits = visits;
        this.crews = crews;
        this.books = books;
        this.audit = audit;
        this.clock = clock;
    }

    /**
     * The same command again is a retry. Refuses a visit that is no longer scheduled, a day far away ({@link Books#near}), and a
     * version that another user has changed with {@link KernelRefusal.Stale}.
     */
    @Transactional
    public Visit reschedule(Rescheduling rescheduling) {
        VisitRow visit = visits.locked(rescheduling.visit());
        if (visit.lastChangeSays(
                VisitChange.Type.RESCHEDULED,
                rescheduling.date(),
                rescheduling.crew(),
                rescheduling.reason(),
                rescheduling.by())) {
            return visits.view(visit);
        }
        visit.requireVersion(rescheduling);
        books.near(rescheduling.date(), "date");
        crews.requireOnStaff(rescheduling.crew());
        visit.reschedule(
                rescheduling.date(), rescheduling.crew(), rescheduling.reason(), rescheduling.by(), clock.instant());
        audit.done("visit.reschedule", rescheduling.by(), rescheduling.visit());
        entities.flush();
        return visits.view(visit);
    }
}
