package eaveside.visits;

import eaveside.kernel.ScopeChangeId;
import eaveside.kernel.Texts;
import eaveside.kernel.UserId;
import eaveside.visits.internal.ScopeChangeRow;
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
public class DecideScopeChange {
    private final EntityManager entities;
    private final Visits visits;
    private final VisitQueries queries;
    private final Clock clock;

    @Inject
    public DecideScopeChange(EntityManager entities, Visits visits, VisitQueries queries, Clock clock) {
        this.entities = entities;
        this.visits = visits;
        this.queries = queries;
        this.clock = clock;
    }

    /** @param  version of the difference as it was read */
    public record Decision(ScopeChangeId scopeChange, int version, ScopeDecision decision, String note, UserId by) {
        public Decision {
            note = Texts.optional("note", note, 500);
        }
    }

    /**
     * Refuses a decision that does not answer the difference, one that somebody else decided meanwhile, and a visit that
     * is billed, closed or no longer stands on that sheet; the same decision again is a retry.
     */
    @Transactional
    public ScopeChange decide(Decision decision) {
        ScopeChangeRow scopeChange = required(decision.scopeChange());
        VisitRow visit = visits.locked(scopeChange.visit());
        entities.refresh(scopeChange);
        if (!scopeChange.hasVersion(decision.version())) {
            if (scopeChange.says(decision.decision(), decision.note(), decision.by())) {
                return scopeChange.toScopeChange();
            }
            throw new VisitRefusal.Changed("decision", scopeChange.decision().name());
        }
        visit.requireStatus(VisitStatus.COMPLETED);
        visit.requireStandsOn(scopeChange.sheet());
        if (queries.returnsScheduledFor(scopeChange.id().value()) > 0) {
            throw new VisitRefusal.ReturnScheduled();
        }
        scopeChange.decide(decision.decision(), decision.note(), decision.by(), clock.instant());
        entities.lock(visit, LockModeType.PESSIMISTIC_FORCE_INCREMENT);
        entities.flush();
        return scopeChange.toScopeChange();
    }

    private ScopeChangeRow required(ScopeChangeId id) {
        ScopeChangeRow row = entities.find(ScopeChangeRow.class, id.value());
        if (row == null) {
            throw new VisitRefusal.NoSuchScopeChange(id.toString());
        }
        return row;
    }
}
