package eaveside.visits;

import eaveside.kernel.DocumentId;
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
import eaveside.visits.internal.UnbilledEntries;
import eaveside.visits.internal.VisitRow;
import eaveside.visits.internal.Visits;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Closes a done visit that has nothing to bill: its cost leaves work in progress, and what was given is recorded. */
@Dependent
public class CloseUnbilled {
    private final Visits visits;
    private final UnbilledEntries entries;
    private final Posting posting;
    private final ReverseDocument reverseDocument;

    @Inject
    public CloseUnbilled(Visits visits, UnbilledEntries entries, Posting posting, ReverseDocument reverseDocument) {
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

        @Override
        public DocumentId document() {
            return id;
        }
    }

    /**
     * Debits cost of services and credits work in progress by service line; all work done counts as no-charge work, at the
     * price that it would have had. The same again is a retry; refuses a visit that is not done and unbilled, or has a
     * difference that nobody has settled.
     */
    @Transactional
    public Posted close(Closing closing) {
        return posting.post("visit.closed", closing, List.of(visits.lockOf(closing.visit())), day -> {
            VisitRow visit = visits.locked(closing.visit());
            visit.requireStatus(VisitStatus.COMPLETED);
            return Decided.document(DocumentType.UNBILLED, closing.reason(), entries.of(visit))
                    .about(visit.id())
                    .then(posted -> visit.closed(posted.id()));
        });
    }

    /** Takes the closing back in full, once; the visit is done and unbilled again. The same again is a retry. */
    @Transactional
    public Posted reverse(VisitId id, Reversal reversal) {
        return posting.post("visit.reopened", reversal, List.of(visits.lockOf(id)), day -> {
            VisitRow visit = visits.locked(id);
            visit.requireStatus(VisitStatus.CLOSED_UNBILLED);
            if (!visit.isClosedBy(reversal.original())) {
                throw new VisitRefusal.NotInForce();
            }
            return reverseDocument
                    .reversed(DocumentType.REVERSAL, reversal)
                    .about(visit.id())
                    .then(posted -> visit.closingReversed());
        });
    }
}
