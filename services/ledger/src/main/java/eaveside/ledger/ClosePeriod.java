package eaveside.ledger;

import eaveside.kernel.DocumentId;
import eaveside.kernel.Fingerprint;
import eaveside.kernel.Money;
import eaveside.kernel.UserId;
import eaveside.ledger.internal.LedgerQueries;
import eaveside.ledger.internal.LedgerQueries.PairedBalance;
import eaveside.ledger.internal.Periods;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Closes a month: the differences between what was applied to visits (labour, travel, overhead) and what was really
 * spent go to their variance accounts, and nothing posts there any more. The period's lock makes the close wait for
 * documents that are being posted, and them for it.
 */
@Dependent
public class ClosePeriod {
    private final PostDocument postDocument;
    private final Periods periods;
    private final LedgerQueries queries;
    private final Books books;
    private final Clock clock;

    @Inject
    public ClosePeriod(PostDocument postDocument, Periods periods, LedgerQueries queries, Books books, Clock clock) {
        this.postDocument = postDocument;
        this.periods = periods;
        this.queries = queries;
        this.books = books;
        this.clock = clock;
    }

    /** Which month, and by whom. */
    public record Close(DocumentId id, YearMonth month, UserId by) {}

    /**
     * Closes the oldest open month. Refuses another month, one that has not ended, and one closed before by another
     * document. Posts a document even where every difference is nothing, so that the close can be seen.
     */
    @Transactional
    public Posted close(Close close) {
        Fingerprint fingerprint = Fingerprint.of(close);
        Optional<Posted> before = postDocument.alreadyPosted(close.id(), fingerprint);
        if (before.isPresent()) {
            return before.get();
        }
        LocalDate last = close.month().atEndOfMonth();
        if (!last.isBefore(books.today())) {
            throw new LedgerRefusal.PeriodNotClosable(close.month().toString(), "it has not ended yet");
        }
        periods.lockForClose(close.month());
        Posted posted = postDocument.post(NewDocument.of(
                close.id(),
                DocumentKind.PERIOD_CLOSE,
                last,
                "Close of " + close.month(),
                close.by(),
                fingerprint,
                variances(close.month())));
        periods.close(close.month(), close.by(), clock.instant());
        return posted;
    }

    private List<Entry> variances(YearMonth month) {
        List<Entry> entries = new ArrayList<>();
        for (PairedBalance paired : queries.pairedBalances(month.atDay(1), month.atEndOfMonth())) {
            Money balance = books.money(paired.balance());
            if (!balance.isZero()) {
                entries.add(
                        Entry.credit(new AccountCode(paired.code()), balance).noted("Variance of " + month));
                entries.add(Entry.debit(new AccountCode(paired.varianceCode()), balance)
                        .noted("Variance of " + month));
            }
        }
        return entries;
    }
}
