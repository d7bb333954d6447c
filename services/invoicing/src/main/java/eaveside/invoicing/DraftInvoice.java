package eaveside.invoicing;

import eaveside.access.RecordAudit;
import eaveside.catalog.Catalog;
import eaveside.catalog.ServiceLine;
import eaveside.customers.ReadCustomer;
import eaveside.invoicing.internal.DraftRow;
import eaveside.invoicing.internal.Drafts;
import eaveside.kernel.Fingerprint;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.InvoiceLineId;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import eaveside.ledger.Books;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Writes drafts of invoices: new ones, edits, what they come to, and discarding them. */
@Shared
public class DraftInvoice {
    private final Drafts drafts;
    private final ReadCustomer readCustomer;
    private final Catalog catalog;
    private final Books books;
    private final RecordAudit audit;

    @Inject
    public DraftInvoice(Drafts drafts, ReadCustomer readCustomer, Catalog catalog, Books books, RecordAudit audit) {
        this.drafts = drafts;
        this.readCustomer = readCustomer;
        this.catalog = catalog;
        this.books = books;
        this.audit = audit;
    }

    /**
     * Saves a draft as a whole, new or edited; lines that came from a visit keep their origin by their id. The same again
     * is a retry. Refuses with both versions where another user saved first ({@link KernelRefusal.Stale}), an unknown
     * customer or service line, a service date far away ({@link Books#near}), a tax code that has no setting on it, and a total
     * that the books cannot hold.
     */
    @Transactional
    public InvoiceDraft save(Draft draft, UserId by) {
        DraftRow row = drafts.turn(draft.id());
        if (row == null) {
            drafts.requireNew(draft.id(), draft.version());
            readCustomer.customer(draft.customer());
            requirePossible(draft);
            audit.done("invoice-draft.save", by, draft.id());
            return drafts.make(draft, null, Map.of(), by, Fingerprint.of(draft));
        }
        InvoiceDraft stored = drafts.load(row);
        boolean firstAgain = draft.version() == 0 && row.hasFingerprint(Fingerprint.of(draft));
        if (firstAgain || stored.content().saysTheSameAs(draft)) {
            return stored;
        }
        if (stored.version() != draft.version()) {
            throw new KernelRefusal.Stale(draft.what(), draft, stored.content());
        }
        if (!stored.customer().equals(draft.customer())) {
            throw new KernelRefusal.Unfit("customer", "{field} of a draft does not change. Write another draft");
        }
        requirePossible(draft);
        audit.done("invoice-draft.save", by, draft.id());
        return drafts.rewrite(row, draft, stored);
    }

    private void requirePossible(Draft draft) {
        books.near(draft.serviceDate(), "serviceDate");
        List<ServiceLineId> known =
                catalog.lines().stream().map(ServiceLine::id).toList();
        for (int i = 0; i < draft.lines().size(); i++) {
            ServiceLineId line = draft.lines().get(i).serviceLine();
            if (!known.contains(line)) {
                throw new KernelRefusal.Unfit(
                        "lines[" + i + "].serviceLine", "{field}: there is no service line " + line);
            }
        }
    }

    /**
     * The totals, as saving and issuing the draft would have them; stores nothing. Refuses a service date far away, a tax code
     * that has no setting on it, and a total that the books cannot hold, as saving does.
     *
     * @param  origins of the lines that bill a visit; no-charge ones are taken off again
     */
    @Transactional
    public InvoiceTotals preview(Draft draft, Map<InvoiceLineId, LineOrigin> origins) {
        books.near(draft.serviceDate(), "serviceDate");
        return drafts.written(draft, origins);
    }

    /** Discarding again is a retry. Refuses an unknown draft, one that has been issued, or changed since that version. */
    @Transactional
    public void discard(InvoiceId id, int version, UserId by) {
        DraftRow row = drafts.turn(id);
        if (row == null && drafts.isDiscarded(id)) {
            return;
        }
        discard(id, row, version, by);
    }

    private void discard(InvoiceId id, @Nullable DraftRow row, int version, UserId by) {
        if (row == null) {
            throw drafts.missing(id);
        }
        if (row.version() != version) {
            throw new InvoiceRefusal.DraftChanged(row.version());
        }
        drafts.discard(row, by);
        audit.done("invoice-draft.discard", by, id);
    }
}
