package eaveside.invoicing.internal;

import eaveside.invoicing.InvoiceRefusal;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.VisitId;
import eaveside.visits.BillableVisit;
import eaveside.visits.MarkBilled;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import org.jspecify.annotations.Nullable;

/** Moves visits with the invoices that bill them. A visit is locked before the period is opened, as visits asks. */
@Dependent
public class BilledVisits {
    private final BillableVisit billableVisit;
    private final MarkBilled markBilled;

    @Inject
    public BilledVisits(BillableVisit billableVisit, MarkBilled markBilled) {
        this.billableVisit = billableVisit;
        this.markBilled = markBilled;
    }

    /** Refuses a visit that is no longer as it was when the draft was made of it. */
    public void bill(DraftRow draft) {
        VisitId visit = draft.visit();
        if (visit != null) {
            if (billableVisit.of(visit).version() != draft.visitVersion()) {
                throw new InvoiceRefusal.VisitChanged();
            }
            markBilled.mark(visit, draft.id());
        }
    }

    /** The visit is done and unbilled again. */
    public void free(@Nullable VisitId visit, InvoiceId invoice) {
        if (visit != null) {
            markBilled.unmark(visit, invoice);
        }
    }
}
