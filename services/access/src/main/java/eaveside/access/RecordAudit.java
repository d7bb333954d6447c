package eaveside.access;

import eaveside.access.internal.AuditRow;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import jakarta.transaction.Transactional.TxType;
import java.time.Clock;

/** Writes the audit log of who did what. */
@Shared
public class RecordAudit {
    private final EntityManager entities;
    private final Clock clock;
    private final Origin origin;

    @Inject
    public RecordAudit(EntityManager entities, Clock clock, Origin origin) {
        this.entities = entities;
        this.clock = clock;
        this.origin = origin;
    }

    /** Keeps what was done, if and only if the caller's transaction commits; see {@link AuditEvent#done}. */
    @Transactional(TxType.MANDATORY)
    public void done(String action, UserId by, Object subject) {
        done(AuditEvent.done(action, by, subject.toString()));
    }

    /**
     * Keeps the line whatever becomes of the caller's transaction: for refusals. Takes a connection of its own, so call
     * it after the refused work has given back its own, not inside it.
     */
    @Transactional(TxType.REQUIRES_NEW)
    public void record(AuditEvent event) {
        entities.persist(new AuditRow(located(event), clock.instant()));
    }

    /** The same with what else helps to understand the line. */
    @Transactional(TxType.MANDATORY)
    public void done(AuditEvent event) {
        origin.done();
        entities.persist(new AuditRow(located(event), clock.instant()));
    }

    private AuditEvent located(AuditEvent event) {
        return event.address().isEmpty() ? event.from(origin.address()) : event;
    }
}
