package eaveside.visits;

import eaveside.kernel.InvoiceId;
import eaveside.kernel.Shared;
import eaveside.kernel.VisitId;
import eaveside.visits.internal.VisitRow;
import eaveside.visits.internal.Visits;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.transaction.Transactional.TxType;

/** Moves a visit with its invoice: billed when one is issued, completed and not billed again when it is credited. */
@Shared
public class MarkBilled {
    private final Visits visits;

    @Inject
    public MarkBilled(Visits visits) {
        this.visits = visits;
    }

    /** Locks the visit until the transaction ends: a posting's lock of a record. */
    @Transactional(TxType.MANDATORY)
    public void lock(VisitId id) {
        visits.locked(id);
    }

    /**
     * Locks the visit until the transaction ends. The same invoice again changes
     * nothing; refuses a visit that is not completed, or billed already.
     */
    @Transactional(TxType.MANDATORY)
    public void mark(VisitId id, InvoiceId invoice) {
        VisitRow visit = visits.locked(id);
        if (!visit.isBilledBy(invoice)) {
            visit.billed(invoice);
        }
    }

    /** Refuses a visit that this invoice has not billed. */
    @Transactional(TxType.MANDATORY)
    public void unmark(VisitId id, InvoiceId invoice) {
        VisitRow visit = visits.locked(id);
        visit.requireStatus(VisitStatus.BILLED);
        if (!visit.isBilledBy(invoice)) {
            throw new VisitRefusal.NotInForce();
        }
        visit.takeBackBilling();
    }
}
