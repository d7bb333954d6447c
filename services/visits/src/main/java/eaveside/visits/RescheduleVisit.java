package eaveside.visits;

import eaveside.kernel.Texts;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import eaveside.visits.internal.Crews;
import eaveside.visits.internal.VisitRow;
import eaveside.visits.internal.Visits;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;

/** Moves a planned visit to another day or crew, and keeps why: rain, a sick technician, the customer's wish. */
@Dependent
public class RescheduleVisit {
    private final EntityManager entities;
    private final Visits visits;
    private final Crews crews;
    private final Clock clock;

    @Inject
    public RescheduleVisit(EntityManager entities, Visits visits, Crews crews, Clock clock) {
        this.entities = entities;
        this.visits = visits;
        this.crews = crews;
        this.clock = clock;
    }

    /** @param  version of the visit as it was read */
    public record Rescheduling(VisitId visit, int version, LocalDate to, List<UserId> crew, String reason, UserId by) {
        public Rescheduling {
            crew = List.copyOf(crew);
            reason = Texts.required("reason", reason, 500);
        }
    }

    /** Refuses a visit that is no longer planned or was changed meanwhile; the same move again is a retry. */
    @Transactional
    public Visit reschedule(Rescheduling rescheduling) {
        VisitRow visit = visits.locked(rescheduling.visit());
        if (visit.version() != rescheduling.version()) {
            if (visit.lastChangeSays(
                    VisitChange.Type.RESCHEDULED,
                    rescheduling.to(),
                    rescheduling.crew(),
                    rescheduling.reason(),
                    rescheduling.by())) {
                return visits.view(visit);
            }
            throw new VisitRefusal.Changed("visit", visit.label());
        }
        crews.requireOnStaff(rescheduling.crew());
        visit.move(rescheduling.to(), rescheduling.crew(), rescheduling.reason(), rescheduling.by(), clock.instant());
        entities.flush();
        return visits.view(visit);
    }
}
