package eaveside.ledger;

import eaveside.kernel.DocumentId;
import eaveside.kernel.UserId;
import eaveside.ledger.internal.AccountRow;
import eaveside.ledger.internal.ChartOfAccounts;
import eaveside.ledger.internal.DocumentRow;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.List;

/** Posts a free journal, or a cost document (wages, fuel, rent, a supplier's bill), and reverses either. */
@Dependent
public class PostJournal {
    private final EntityManager entities;
    private final Posting posting;
    private final ReverseDocument reverseDocument;
    private final ChartOfAccounts chart;

    @Inject
    public PostJournal(
            EntityManager entities, Posting posting, ReverseDocument reverseDocument, ChartOfAccounts chart) {
        this.entities = entities;
        this.posting = posting;
        this.reverseDocument = reverseDocument;
        this.chart = chart;
    }

    /**
     * A journal as entered.
     *
     * @param  cost true for a cost document, which is numbered in a series of its own
     */
    public record Journal(DocumentId id, boolean cost, LocalDate date, String summary, List<Entry> entries, UserId by)
            implements Postable {
        public Journal {
            entries = List.copyOf(entries);
            if (entries.size() < 2) {
                throw new LedgerRefusal.TooFewEntries();
            }
        }

        @Override
        public DocumentId document() {
            return id;
        }
    }

    /** Refuses accounts that other documents explain, unknown accounts, and entries out of balance. */
    @Transactional
    public Posted post(Journal journal) {
        return posting.post("journal.post", journal, List.of(), day -> {
            for (Entry entry : journal.entries()) {
                AccountRow account = chart.account(entry.account());
                if (account.isControlled()) {
                    throw new LedgerRefusal.ControlledAccount(account.code(), account.name());
                }
            }
            return Decided.document(
                    journal.cost() ? DocumentType.EXPENSE : DocumentType.JOURNAL, journal.summary(), journal.entries());
        });
    }

    /** Refuses documents of other types: the module that owns them reverses those. */
    @Transactional
    public Posted reverse(ReverseDocument.Reversal reversal) {
        return posting.post("document.reverse", reversal, List.of(), day -> {
            DocumentRow original =
                    entities.find(DocumentRow.class, reversal.original().value());
            if (original != null && !original.isType(DocumentType.JOURNAL, DocumentType.EXPENSE)) {
                throw new LedgerRefusal.NotReversible(
                        original.label(), "it is not a journal; reverse it where it was entered");
            }
            return reverseDocument.reversed(DocumentType.REVERSAL, reversal);
        });
    }
}
