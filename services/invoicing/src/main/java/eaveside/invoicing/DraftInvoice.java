package eaveside.invoicing;

import eaveside.customers.ReadCustomer;
import eaveside.invoicing.internal.Drafts;
import eaveside.kernel.CustomerId;
import eaveside.kernel.Fingerprint;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.UserId;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.Map;
import java.util.Optional;

/** Begins a freely written invoice. */
@Dependent
public class DraftInvoice {
    private final Drafts drafts;
    private final ReadCustomer readCustomer;

    @Inject
    public DraftInvoice(Drafts drafts, ReadCustomer readCustomer) {
        this.drafts = drafts;
        this.readCustomer = readCustomer;
    }

    /**
     * Whom it goes to and what it says.
     *
     * @param  id made by the client; the invoice keeps it
     */
    public record NewDraft(InvoiceId id, CustomerId customer, DraftContent content, UserId by) {}

    /** Refuses an unknown customer, and a tax code that has no setting on the service date. The same again is a retry. */
    @Transactional
    public InvoiceDraft draft(NewDraft draft) {
        Fingerprint fingerprint = Fingerprint.of(draft);
        Optional<InvoiceDraft> before = drafts.alreadyMade(draft.id(), fingerprint);
        if (before.isPresent()) {
            return before.get();
        }
        readCustomer.customer(draft.customer());
        return drafts.make(draft.id(), draft.customer(), null, draft.content(), Map.of(), draft.by(), fingerprint);
    }
}
