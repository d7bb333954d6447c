package eaveside.visits;

import eaveside.kernel.DifferenceId;
import eaveside.kernel.Texts;
import eaveside.kernel.UserId;
import eaveside.visits.internal.DifferenceRow;
import eaveside.visits.internal.VisitQueries;
import eaveside.visits.internal.VisitRow;
import eaveside.visits.internal.Visits;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.LockModeType;
import jakarta.transaction.Transactional;
import java.time.Clock;

/**
 * Decides a difference between plan and sheet: bill it, give it, ask the customer, come back, or leave it. A decision can
 * be changed until the visit is billed or closed; each raises the visit's version, so that an invoice drafted from the
 * earlier decision is noticed.
 */
@Dependent
public class DecideDifference {
    private final EntityManager entities;
    private final Visits visits;
    private final VisitQueries queries;
    private final Clock clock;

    @Inject
    public DecideDifference(EntityManager entities, Visits visits, VisitQueries queries, Clock clock) {
        this.entities = entities;
        this.visits = visits;
        this.queries = queries;
        this.clock = clock;
    }

    /** @param version of the difference as it was read */
    public record Decision(DifferenceId difference, int version, DifferenceDecision decision, String note, UserId by) {
        public Decision {
            note = Texts.optional("note", note, 500);
        }
    }

    /**
     * Refuses a decision that does not answer the difference, one that somebody else decided meanwhile, and a visit that
     * is billed, closed or no longer stands on that sheet; the same decision again is a retry.
     */
    @Transactional
    public Difference decide(Decision decision) {
        DifferenceRow difference = required(decision.difference());
        VisitRow visit = visits.locked(difference.visit());
        entities.refresh(difference);
        if (!difference.hasVersion(decision.version())) {
            if (difference.says(decision.decision(), decision.note(), decision.by())) {
                return difference.toDifference();
            }
            throw new VisitRefusal.Changed("decision", difference.decision().name());
        }
        visit.requireStatus(VisitStatus.DONE);
        visit.requireStandsOn(difference.sheet());
        if (queries.returnsBookedFor(difference.id().value()) > 0) {
            throw new VisitRefusal.ReturnBooked();
        }
        difference.decide(decision.decision(), decision.note(), decision.by(), clock.instant());
        entities.lock(visit, LockModeType.PESSIMISTIC_FORCE_INCREMENT);
        entities.flush();
        return difference.toDifference();
    }

    private DifferenceRow required(DifferenceId id) {
        DifferenceRow row = entities.find(DifferenceRow.class, id.value());
        if (row == null) {
            throw new VisitRefusal.NoSuchDifference(id.toString());
        }
        return row;
    }
}
