package eaveside.ledger;

import eaveside.kernel.DocumentId;
import eaveside.kernel.Fingerprint;
import eaveside.kernel.UserId;
import eaveside.ledger.internal.DocumentRow;
import eaveside.ledger.internal.LedgerQueries;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import jakarta.transaction.Transactional.TxType;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * Reverses a posted document in full, once, by a document of its own that mirrors every entry. The module that owns the
 * document calls this inside its transaction and mirrors what else the document did (stock, states).
 */
@Dependent
public class ReverseDocument {
    private final EntityManager entities;
    private final LedgerQueries queries;
    private final PostDocument postDocument;
    private final Books books;

    @Inject
    public ReverseDocument(EntityManager entities, LedgerQueries queries, PostDocument postDocument, Books books) {
        this.entities = entities;
        this.queries = queries;
        this.postDocument = postDocument;
        this.books = books;
    }

    /**
     * What to reverse and why.
     *
     * @param  id     of the reversing document, made by the client
     * @param  date   the day of the reversal; the mirror posts on the first open day from there
     * @param  reason kept as the reversing document's summary
     */
    public record Reversal(DocumentId id, DocumentId original, LocalDate date, String reason, UserId by) {}

    /**
     * Posts the mirror. The same reversal again is a retry; refuses a document that has been reversed by another, or is
     * itself a reversal, and a date before the day that the document counts on.
     */
    @Transactional(TxType.MANDATORY)
    public Posted reverse(DocumentType as, Reversal reversal) {
        Fingerprint fingerprint = Fingerprint.of(reversal);
        Optional<Posted> before = postDocument.alreadyPosted(reversal.id(), fingerprint);
        if (before.isPresent()) {
            return before.get();
        }
        postDocument.openDay(reversal.date());
        DocumentRow original =
                entities.find(DocumentRow.class, reversal.original().value());
        if (original == null) {
            throw new LedgerRefusal.NoSuchDocument(reversal.original().toString());
        }
        if (original.isReversal()) {
            throw new LedgerRefusal.NotReversible(original.label(), "a reversal is final; enter the document again");
        }
        if (reversal.date().isBefore(original.toPosted().postingDate())) {
            throw new LedgerRefusal.DateBeforeReversed(
                    reversal.date(), original.label(), original.toPosted().postingDate());
        }
        List<DocumentRow> reversedBy = queries.reversalsOf(reversal.original().value());
        if (!reversedBy.isEmpty()) {
            throw new LedgerRefusal.AlreadyReversed(
                    original.label(), reversedBy.getFirst().label());
        }
        List<Entry> mirror = queries.entriesOf(reversal.original().value()).stream()
                .map(e -> e.toEntry(books.currency()).mirrored())
                .toList();
        return postDocument.post(new NewDocument(
                reversal.id(),
                as,
                reversal.date(),
                reversal.original(),
                reversal.reason(),
                reversal.by(),
                fingerprint,
                mirror));
    }
}
