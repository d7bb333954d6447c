package eaveside.ledger;

import eaveside.kernel.Check;
import eaveside.kernel.Default;
import eaveside.kernel.DocumentId;
import eaveside.kernel.Elements;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Money;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import eaveside.ledger.internal.AccountRow;
import eaveside.ledger.internal.ChartOfAccounts;
import eaveside.ledger.internal.DocumentRow;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import org.joda.money.CurrencyUnit;
import org.jspecify.annotations.Nullable;

/** Posts a free journal, or a cost document (wages, fuel, rent, a supplier's bill), and reverses either. */
@Shared
public class PostJournal {
    private final EntityManager entities;
    private final Posting posting;
    private final ReverseDocument reverseDocument;
    private final ChartOfAccounts chart;
    private final Books books;

    @Inject
    public PostJournal(
            EntityManager entities,
            Posting posting,
            ReverseDocument reverseDocument,
            ChartOfAccounts chart,
            Books books) {
        this.entities = entities;
        this.posting = posting;
        this.reverseDocument = reverseDocument;
        this.chart = chart;
        this.books = books;
    }

    /** What is entered; each has a series of numbers of its own. */
    public enum Type {
        /** Wages, fuel, rent, a supplier's bill. */
        EXPENSE(DocumentType.EXPENSE),
        /** Anything else, such as opening balances. */
        JOURNAL(DocumentType.JOURNAL);

        private final DocumentType posted;

        Type(DocumentType posted) {
            this.posted = posted;
        }
    }

    /**
     * A journal as entered. Debits and credits are equal, or it cannot be made.
     *
     * @param  date null for today
     */
    public record Journal(
            DocumentId id, Type type, @Nullable LocalDate date, String summary, List<Line> lines, UserId by)
            implements Postable {
        public Journal {
            Check check = new Check();
            summary = check.required("summary", summary, 500);
            lines = List.copyOf(lines);
            check.that(lines.size() >= 2, LedgerRefusal.TooFewEntries::new);
            check.done();
            CurrencyUnit currency = lines.getFirst().amount().currency();
            Elements.each("lines", lines, (line, i) -> line.amount().in(currency, line.side()));
            Money off = Money.sum(currency, lines.stream().map(Line::amount).toList());
            if (!off.isZero()) {
                throw new LedgerRefusal.OutOfBalance(off.toString());
            }
        }
    }

    /**
     * A line of a journal: a debit or a credit, above zero.
     *
     * @param  debit  absent where it is a credit
     * @param  credit absent where it is a debit
     */
    public record Line(
            AccountCode account,
            @Nullable Money debit,
            @Nullable Money credit,
            @Default String note) {
        public Line {
            Check check = new Check();
            check.that(
                    debit != null || credit != null,
                    () -> new KernelRefusal.Unfit("debit", "Enter a debit or a credit"));
            check.that(
                    debit == null || credit == null,
                    () -> new KernelRefusal.Unfit("credit", "Enter a debit or a credit, not both"));
            check.that(debit == null || debit.isPositive(), () -> new KernelRefusal.NotPositive("debit"));
            check.that(credit == null || credit.isPositive(), () -> new KernelRefusal.NotPositive("credit"));
            note = check.optional("note", note, 500);
            check.done();
        }

        public static Line debit(AccountCode account, Money amount) {
            return new Line(account, amount, null, "");
        }

        public static Line credit(AccountCode account, Money amount) {
            return new Line(account, null, amount, "");
        }

        /** Debit above zero, credit below. */
        public Money amount() {
            return debit != null ? debit : Objects.requireNonNull(credit).negated();
        }

        private String side() {
            return debit != null ? "debit" : "credit";
        }

        Entry entry() {
            return Entry.debit(account, amount()).noted(note);
        }
    }

    /**
     * Refuses accounts that other documents explain, unknown accounts, entries out of balance, and another currency than the
     * company's.
     */
    @Transactional
    public Posted post(Journal journal) {
        return posting.post("journal.post", journal, List.of(), day -> {
            Elements.each("lines", journal.lines(), (line, i) -> {
                books.ours(line.amount(), line.side());
                AccountRow account = chart.account(line.account());
                if (account.isControlled()) {
                    throw new LedgerRefusal.ControlledAccount(account.code(), account.name());
                }
            });
            return Decided.document(
                    journal.type().posted,
                    journal.summary(),
                    journal.lines().stream().map(Line::entry).toList());
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
