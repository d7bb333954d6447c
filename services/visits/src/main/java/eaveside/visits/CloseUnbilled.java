package eaveside.visits;

import eaveside.kernel.DocumentId;
import eaveside.kernel.Fingerprint;
import eaveside.kernel.Texts;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import eaveside.ledger.DocumentType;
import eaveside.ledger.NewDocument;
import eaveside.ledger.PostDocument;
import eaveside.ledger.Posted;
import eaveside.ledger.ReverseDocument;
import eaveside.ledger.ReverseDocument.Reversal;
import eaveside.visits.internal.UnbilledEntries;
import eaveside.visits.internal.VisitRow;
import eaveside.visits.internal.Visits;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.Optional;

/** Closes a done visit that has nothing to bill: its cost leaves work in progress, and what was given is recorded. */
@Dependent
public class CloseUnbilled {
    private final Visits visits;
    private final UnbilledEntries entries;
    private final PostDocument postDocument;
    private final ReverseDocument reverseDocument;

    @Inject
    public CloseUnbilled(
            Visits visits, UnbilledEntries entries, PostDocument postDocument, ReverseDocument reverseDocument) {
        this.visits = visits;
        this.entries = entries;
        this.postDocument = postDocument;
        this.reverseDocument = reverseDocument;
    }

    /** @param  id of the document, made by the client */
    public record Closing(DocumentId id, VisitId visit, LocalDate date, String reason, UserId by) {
        public Closing {
            reason = Texts.required("reason", reason, 500);
        }
    }

    /**
     * Debits cost of services and credits work in progress by service line; all work done counts as no-charge work, at the
     * price that it would have had. The same again is a retry; refuses a visit that is not done and unbilled, or has a
     * difference that nobody has settled.
     */
    @Transactional
    public Posted close(Closing closing) {
        Fingerprint fingerprint = Fingerprint.of(closing);
        VisitRow visit = visits.locked(closing.visit());
        Optional<Posted> before = postDocument.alreadyPosted(closing.id(), fingerprint);
        if (before.isPresent()) {
            return before.get();
        }
        visit.requireStatus(VisitStatus.COMPLETED);
        Posted posted = postDocument.post(NewDocument.of(
                closing.id(),
                DocumentType.UNBILLED,
                closing.date(),
                closing.reason(),
                closing.by(),
                fingerprint,
                entries.of(visit)));
        visit.closed(closing.id());
        return posted;
    }

    /** Takes the closing back in full, once; the visit is done and unbilled again. The same again is a retry. */
    @Transactional
    public Posted reverse(VisitId id, Reversal reversal) {
        VisitRow visit = visits.locked(id);
        Optional<Posted> before = postDocument.alreadyPosted(reversal.id(), Fingerprint.of(reversal));
        if (before.isPresent()) {
            return before.get();
        }
        visit.requireStatus(VisitStatus.CLOSED_UNBILLED);
        if (!visit.isClosedBy(reversal.original())) {
            throw new VisitRefusal.NotInForce();
        }
        Posted posted = reverseDocument.reverse(DocumentType.REVERSAL, reversal);
        visit.closingReversed();
        return posted;
    }
}
