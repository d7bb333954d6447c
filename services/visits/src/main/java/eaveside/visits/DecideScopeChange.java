package eaveside.visits;

import eaveside.access.RecordAudit;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Shared;
import eaveside.visits.internal.ScopeChangeRow;
import eaveside.visits.internal.ValueToBill;
import eaveside.visits.internal.VisitQueries;
import eaveside.visits.internal.VisitRow;
import eaveside.visits.internal.Visits;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.LockModeType;
import jakarta.transaction.Transactional;
import java.time.Clock;

/**
 * Decides a scope change: bill it, no charge, ask the customer, return visit, or cancel. A decision can be changed until
 * the visit is billed or closed; each raises the visit's version, so that an invoice drafted from the earlier decision is
 * noticed.
 */
@Shared
public class DecideScopeChange {
    private final EntityManager entities;
    private final Visits visits;
    private final VisitQueries queries;
    private final ValueToBill valueToBill;
    private final RecordAudit audit;
    private final Clock clock;

    @Inject
    public DecideScopeChange(
            EntityManager entities,
            Visits visits,
            VisitQueries queries,
            ValueToBill valueToBill,
            RecordAudit audit,
            Clock clock) {
        this.entities = entities;
        this.visits = visits;
        this.queries = queries;
        this.valueToBill = valueToBill;
        this.audit = audit;
        this.clock = clock;
    }

    /**
     * The same command again is a retry. Refuses a scope change of another visit, a decision that does not suit its type, a
     * version that another user has decided with {@link KernelRefusal.Stale}, and a visit that is billed, closed or no
     * longer stands on that sheet.
     */
    @Transactional
    public ScopeChange decide(ScopeChangeDecision decision) {
        ScopeChangeRow scopeChange = required(decision);
        VisitRow visit = visits.locked(decision.visit());
        entities.refresh(scopeChange);
        if (scopeChange.says(decision.decision(), decision.note(), decision.by())) {
            return scopeChange.toScopeChange();
        }
        if (!scopeChange.hasVersion(decision.version())) {
            throw new KernelRefusal.Stale(decision.what(), decision, scopeChange.toScopeChange());
        }
        visit.requireStatus(VisitStatus.COMPLETED);
        visit.requireStandsOn(scopeChange.sheet());
        if (queries.returnsScheduledFor(scopeChange.id()) > 0) {
            throw new VisitRefusal.ReturnScheduled();
        }
        scopeChange.decide(decision.decision(), decision.note(), decision.by(), clock.instant());
        // A visit that comes to something else has a new version by that alone.
        if (!valueToBill.keep(visit)) {
            entities.lock(visit, LockModeType.PESSIMISTIC_FORCE_INCREMENT);
        }
        audit.done("visit.decide", decision.by(), decision.visit());
        entities.flush();
        return scopeChange.toScopeChange();
    }

    private ScopeChangeRow required(ScopeChangeDecision decision) {
        ScopeChangeRow row =
                entities.find(ScopeChangeRow.class, decision.scopeChange().value());
        if (row == null || !row.visit().equals(decision.visit())) {
            throw new KernelRefusal.NotFound(decision.what(), decision.scopeChange());
        }
        return row;
    }
}
