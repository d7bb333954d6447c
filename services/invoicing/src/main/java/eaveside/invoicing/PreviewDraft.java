package eaveside.invoicing;

import eaveside.invoicing.internal.Drafts;
import eaveside.kernel.InvoiceLineId;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.Map;

/** Computes what a draft would come to while it is being written, under the owner's tax settings; stores nothing. */
@Dependent
public class PreviewDraft {
    private final Drafts drafts;

    @Inject
    public PreviewDraft(Drafts drafts) {
        this.drafts = drafts;
    }

    /**
     * The totals, as saving and issuing the content would have them.
     *
     * @param  origins of the lines that bill a visit; given ones are taken off again
     */
    @Transactional
    public InvoiceTotals preview(DraftContent content, Map<InvoiceLineId, LineOrigin> origins) {
        return drafts.reckoning(content, origins).totals();
    }
}
