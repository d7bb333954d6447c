package eaveside.invoicing;

import eaveside.invoicing.internal.DraftRow;
import eaveside.invoicing.internal.Drafts;
import eaveside.kernel.InvoiceId;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;

/** Changes a draft, or discards it. */
@Dependent
public class EditDraft {
    private final Drafts drafts;

    @Inject
    public EditDraft(Drafts drafts) {
        this.drafts = drafts;
    }

    /** @param  version that the editor read */
    public record Edit(InvoiceId id, int version, DraftContent content) {}

    /**
     * Writes the content as a whole; lines that came from a visit keep their origin by their id. Refuses with both
     * versions where somebody else saved first; the same content again is a retry.
     */
    @Transactional
    public InvoiceDraft edit(Edit edit) {
        DraftRow row = drafts.locked(edit.id());
        InvoiceDraft stored = drafts.load(row);
        if (stored.content().equals(edit.content())) {
            return stored;
        }
        if (stored.version() != edit.version()) {
            throw new InvoiceRefusal.DraftChanged(edit.content(), stored);
        }
        return drafts.rewrite(row, edit.content(), stored.origins());
    }

    /** Refuses a draft that has been issued, or changed since that version. */
    @Transactional
    public void discard(InvoiceId id, int version) {
        DraftRow row = drafts.locked(id);
        if (row.version() != version) {
            InvoiceDraft stored = drafts.load(row);
            throw new InvoiceRefusal.DraftChanged(stored.content(), stored);
        }
        drafts.delete(row);
    }
}
