package eaveside.visits;

import eaveside.kernel.DocumentId;
import eaveside.kernel.Shared;
import eaveside.kernel.Texts;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import eaveside.ledger.Decided;
import eaveside.ledger.DocumentType;
import eaveside.ledger.Postable;
import eaveside.ledger.Posted;
import eaveside.ledger.Posting;
import eaveside.ledger.ReverseDocument;
import eaveside.ledger.ReverseDocument.Reversal;
import eaveside.visits.internal.NotBilledEntries;
import eaveside.visits.internal.VisitRow;
import eaveside.visits.internal.Visits;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Closes a completed visit without an invoice: its cost leaves work in progress, and its no-charge work is recorded. */
@Shared
public class CloseWithoutBilling {
    private final Visits visits;
    private final NotBilledEntries entries;
    private final Posting posting;
    private final ReverseDocument reverseDocument;

    @Inject
    public CloseWithoutBilling(
            Visits visits, NotBilledEntries entries, Posting posting, ReverseDocument reverseDocument) {
        this.visits = visits;
        this.entries = entries;
        this.posting = posting;
        this.reverseDocument = reverseDocument;
    }

    /** @param  id of the document, made by the client */
    public record Closing(
            DocumentId id, VisitId visit, @Nullable LocalDate date, String reason, UserId by) implements Postable {
        public Closing {
            reason = Texts.required("reason", reason, 500);
        }
    }

    /**
     * Debits cost of services and credits work in progress by service line; all work done counts as no-charge work, at the
     * price that it would have had. The same again is a retry; refuses a visit that is not completed, or is billed, and one
     * with a scope change that is not decided.
     */
    @Transactional
    public Posted close(Closing closing) {
        return posting.post("visit.closed", closing, List.of(visits.lockOf(closing.visit())), day -> {
            VisitRow visit = visits.locked(closing.visit());
            visit.requireStatus(VisitStatus.COMPLETED);
            return Decided.document(DocumentType.VISIT_CLOSING, closing.reason(), entries.of(visit))
                    .about(visit.id())
                    .then(posted -> visit.closed(posted.id()));
        });
    }

    /**
     * A closing to reverse.
     *
     * @param  id      of the reversing document, made by the client
     * @param  closing the closing document, where the client insists on one; whichever is in force where it is absent
     */
    public record Reopening(
            DocumentId id,
            VisitId visit,
            @Nullable DocumentId closing,
            @Nullable LocalDate date,
            String reason,
            UserId by)
            implements Postable {
        public Reopening {
            reason = Texts.required("reason", reason, 500);
        }
    }

    /**
     * Reverses the closing in full, once; the visit is completed and not billed again. The same again is a retry; refuses a
     * visit that is not closed, and one that another closing stands behind.
     */
    @Transactional
    public Posted reverse(Reopening reopening) {
        return posting.post("visit.reopened", reopening, List.of(visits.lockOf(reopening.visit())), day -> {
            VisitRow visit = visits.locked(reopening.visit());
            visit.requireStatus(VisitStatus.CLOSED_NOT_BILLED);
            DocumentId closing = visit.closing();
            if (reopening.closing() != null && !reopening.closing().equals(closing)) {
                throw new VisitRefusal.NotInForce();
            }
            return reverseDocument
                    .reversed(
                            DocumentType.REVERSAL,
                            new Reversal(reopening.id(), closing, reopening.date(), reopening.reason(), reopening.by()))
                    .about(visit.id())
                    .then(posted -> visit.closingReversed());
        });
    }
}
