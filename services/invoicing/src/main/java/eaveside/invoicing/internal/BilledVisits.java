package eaveside.invoicing.internal;

import eaveside.invoicing.InvoiceRefusal;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.Shared;
import eaveside.kernel.VisitId;
import eaveside.ledger.Posted;
import eaveside.ledger.ReadLedger;
import eaveside.visits.BillableVisit;
import eaveside.visits.BillableVisit.Billable;
import eaveside.visits.MarkBilled;
import jakarta.inject.Inject;
import org.jspecify.annotations.Nullable;

/** Moves visits with the invoices that bill them. A visit is locked before the period is opened, as visits asks. */
@Shared
public class BilledVisits {
    private final BillableVisit billableVisit;
    private final MarkBilled markBilled;
    private final ReadLedger readLedger;

    @Inject
    public BilledVisits(BillableVisit billableVisit, MarkBilled markBilled, ReadLedger readLedger) {
        this.billableVisit = billableVisit;
        this.markBilled = markBilled;
        this.readLedger = readLedger;
    }

    /** Keeps others from the visit until the commit; nothing to do where none is billed. */
    public void lock(@Nullable VisitId visit) {
        if (visit != null) {
            markBilled.lock(visit);
        }
    }

    /**
     * Has the draft's visit billed, and tells the sheet that it was done by; null where the draft bills no visit. Refuses a
     * visit that is no longer as it was when the draft was made of it.
     */
    public @Nullable Posted bill(DraftRow draft) {
        VisitId visit = draft.visit();
        if (visit == null) {
            return null;
        }
        Billable billable = billableVisit.of(visit);
        if (billable.version() != draft.visitVersion()) {
            throw new InvoiceRefusal.VisitChanged();
        }
        markBilled.mark(visit, draft.id());
        return readLedger.document(billable.sheet()).posted();
    }

    /** The visit is completed and not billed again. */
    public void free(@Nullable VisitId visit, InvoiceId invoice) {
        if (visit != null) {
            markBilled.unmark(visit, invoice);
        }
    }
}
