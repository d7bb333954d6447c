package eaveside.ledger;

import eaveside.kernel.DocumentId;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import eaveside.ledger.internal.Periods;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;

/**
 * Closes a month: nothing posts there any more. No account is emptied, so that wages, vehicles and rent of the month stay
 * readable for ever; what was spent and what was absorbed into services is kept with the month ({@link ReadVariances}).
 * The month's row makes the close wait for documents that are being posted, and them for it.
 */
@Shared
public class ClosePeriod {
    private final Posting posting;
    private final Periods periods;
    private final ReadVariances readVariances;
    private final Books books;
    private final Clock clock;

    @Inject
    public ClosePeriod(Posting posting, Periods periods, ReadVariances readVariances, Books books, Clock clock) {
        this.posting = posting;
        this.periods = periods;
        this.readVariances = readVariances;
        this.books = books;
        this.clock = clock;
    }

    /** Which month, and by whom. */
    public record Close(DocumentId id, YearMonth month, UserId by) implements Postable {
        @Override
        public LocalDate date() {
            return month.atEndOfMonth();
        }
    }

    /**
     * Closes the oldest open month. Refuses another month, one that has not ended, and one closed before by another
     * document. Its own document has no entries: it says who closed the month, and when.
     */
    @Transactional
    public Posted close(Close close) {
        List<Lock> locks = List.of(Lock.of(Lock.Rank.RECORD, () -> lockEnded(close.month())));
        return posting.post(
                "month.close",
                close,
                locks,
                day -> Decided.document(DocumentType.PERIOD_CLOSE, "Close of " + close.month(), List.of())
                        .about(close.month())
                        .then(posted -> periods.close(
                                close.month(),
                                readVariances.between(close.month().atDay(1), close.date()),
                                close.by(),
                                clock.instant())));
    }

    private void lockEnded(YearMonth month) {
        if (!month.atEndOfMonth().isBefore(books.today())) {
            throw new LedgerRefusal.PeriodNotClosable(month.toString(), "it has not ended yet");
        }
        periods.lockForClose(month);
    }
}
