package eaveside.ledger;

import eaveside.kernel.Check;
import eaveside.kernel.DocumentId;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import eaveside.ledger.internal.DocumentRow;
import eaveside.ledger.internal.LedgerQueries;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import jakarta.transaction.Transactional.TxType;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Reverses a posted document in full, once, by a document of its own that mirrors every entry. The module that owns the
 * document posts what this decides, and mirrors what else the document did (stock, states).
 */
@Shared
public class ReverseDocument {
    private final EntityManager entities;
    private final LedgerQueries queries;
    private final Books books;

    @Inject
    public ReverseDocument(EntityManager entities, LedgerQueries queries, Books books) {
        this.entities = entities;
        this.queries = queries;
        this.books = books;
    }

    /**
     * What to reverse and why.
     *
     * @param  id     of the reversing document, made by the client
     * @param  date   the day of the reversal; the mirror posts on the first open day from there
     * @param  reason kept as the reversing document's summary
     */
    public record Reversal(
            DocumentId id, DocumentId original, @Nullable LocalDate date, String reason, UserId by)
            implements Postable {
        public Reversal {
            Check check = new Check();
            reason = check.required("reason", reason, 500);
            check.done();
        }
    }

    /**
     * The mirror of the original, to be posted on the day. Refuses a document that has been reversed, or is itself a
     * reversal, and a date before the day that the document counts on.
     */
    @Transactional(TxType.MANDATORY)
    public Decided reversed(DocumentType as, Reversal reversal) {
        DocumentRow original =
                entities.find(DocumentRow.class, reversal.original().value());
        if (original == null) {
            throw new KernelRefusal.NotFound("document", reversal.original());
        }
        if (original.isReversal()) {
            throw new LedgerRefusal.NotReversible(original.label(), "a reversal is final; enter the document again");
        }
        List<DocumentRow> reversedBy = queries.reversalsOf(reversal.original());
        if (!reversedBy.isEmpty()) {
            throw new LedgerRefusal.AlreadyReversed(
                    original.label(), reversedBy.getFirst().label());
        }
        List<Entry> mirror = queries.entriesOf(reversal.original().value()).stream()
                .map(e -> e.toEntry(books.currency()).mirrored())
                .toList();
        return Decided.document(as, reversal.reason(), mirror)
                .reversing(reversal.original())
                .restingOn(original.label(), original.toPosted().postingDate())
                .about(reversal.original());
    }
}
