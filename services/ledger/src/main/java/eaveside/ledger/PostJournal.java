package eaveside.ledger;

import eaveside.kernel.DocumentId;
import eaveside.kernel.Fingerprint;
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
import java.util.Optional;

/** Posts a free journal, or a cost document (wages, fuel, rent, a supplier's bill), and reverses either. */
@Dependent
public class PostJournal {
    private final EntityManager entities;
    private final PostDocument postDocument;
    private final ReverseDocument reverseDocument;
    private final ChartOfAccounts chart;

    @Inject
    public PostJournal(
            EntityManager entities, PostDocument postDocument, ReverseDocument reverseDocument, ChartOfAccounts chart) {
        this.entities = entities;
        this.postDocument = postDocument;
        this.reverseDocument = reverseDocument;
        this.chart = chart;
    }

    /**
     * A journal as entered.
     *
     * @param  cost true for a cost document, which is numbered in a series of its own
     */
    public record Journal(DocumentId id, boolean cost, LocalDate date, String summary, List<Entry> entries, UserId by) {
        public Journal {
            entries = List.copyOf(entries);
            if (entries.size() < 2) {
                throw new LedgerRefusal.TooFewEntries();
            }
        }
    }

    /** Refuses accounts that other documents explain, unknown accounts, and entries out of balance. */
    @Transactional
    public Posted post(Journal journal) {
        Fingerprint fingerprint = Fingerprint.of(journal);
        Optional<Posted> before = postDocument.alreadyPosted(journal.id(), fingerprint);
        if (before.isPresent()) {
            return before.get();
        }
        for (Entry entry : journal.entries()) {
            AccountRow account = chart.account(entry.account());
            if (account.isControlled()) {
                throw new LedgerRefusal.ControlledAccount(account.code(), account.name());
            }
        }
        return postDocument.post(NewDocument.of(
                journal.id(),
                journal.cost() ? DocumentType.EXPENSE : DocumentType.JOURNAL,
                journal.date(),
                journal.summary(),
                journal.by(),
                fingerprint,
                journal.entries()));
    }

    /** Refuses documents of other types: the module that owns them reverses those. */
    @Transactional
    public Posted reverse(ReverseDocument.Reversal reversal) {
        DocumentRow original =
                entities.find(DocumentRow.class, reversal.original().value());
        if (original != null && !original.isType(DocumentType.JOURNAL, DocumentType.EXPENSE)) {
            throw new LedgerRefusal.NotReversible(
                    original.label(), "it is not a journal; reverse it where it was entered");
        }
        return reverseDocument.reverse(DocumentType.REVERSAL, reversal);
    }
}
