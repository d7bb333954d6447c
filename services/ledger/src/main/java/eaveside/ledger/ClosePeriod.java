package eaveside.ledger;

import eaveside.kernel.DocumentId;
import eaveside.kernel.Fingerprint;
import eaveside.kernel.UserId;
import eaveside.ledger.internal.Periods;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Optional;

/**
 * Closes a month: nothing posts there any more. No account is emptied, so that wages, vehicles and rent of the month stay
 * readable for ever; what was spent and what was absorbed into services is kept with the month ({@link ReadVariances}).
 * The month's row makes the close wait for documents that are being posted, and them for it.
 */
@Dependent
public class ClosePeriod {
    private final PostDocument postDocument;
    private final Periods periods;
    private final ReadVariances readVariances;
    private final Books books;
    private final Clock clock;

    @Inject
    public ClosePeriod(
            PostDocument postDocument, Periods periods, ReadVariances readVariances, Books books, Clock clock) {
        this.postDocument = postDocument;
        this.periods = periods;
        this.readVariances = readVariances;
        this.books = books;
        this.clock = clock;
    }

    /** Which month, and by whom. */
    public record Close(DocumentId id, YearMonth month, UserId by) {}

    /**
     * Closes the oldest open month. Refuses another month, one that has not ended, and one closed before by another
     * document. Its own document has no entries: it says who closed the month, and when.
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
                DocumentType.PERIOD_CLOSE,
                last,
                "Close of " + close.month(),
                close.by(),
                fingerprint,
                List.of()));
        periods.close(close.month(), readVariances.between(close.month().atDay(1), last), close.by(), clock.instant());
        return posted;
    }
}
