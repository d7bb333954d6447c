package eaveside.access;

import eaveside.access.internal.AuditRow;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import jakarta.transaction.Transactional.TxType;
import java.time.Clock;

/** Writes the trail of who did what. */
@Dependent
public class RecordAudit {
    private final EntityManager entities;
    private final Clock clock;

    @Inject
    public RecordAudit(EntityManager entities, Clock clock) {
        this.entities = entities;
        this.clock = clock;
    }

    /**
     * Keeps the line whatever becomes of the caller's transaction: for refusals. Takes a connection of its own, so call
     * it after the refused work has given back its own, not inside it.
     */
    @Transactional(TxType.REQUIRES_NEW)
    public void record(AuditEvent event) {
        entities.persist(new AuditRow(event, clock.instant()));
    }

    /** Keeps the line if and only if the caller's transaction commits: for what was done. */
    @Transactional(TxType.MANDATORY)
    public void recordWithin(AuditEvent event) {
        entities.persist(new AuditRow(event, clock.instant()));
    }
}
