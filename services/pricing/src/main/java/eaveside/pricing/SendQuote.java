package eaveside.pricing;

import eaveside.kernel.Fingerprint;
import eaveside.kernel.QuoteId;
import eaveside.kernel.UserId;
import eaveside.ledger.Books;
import eaveside.pricing.internal.QuoteFile;
import eaveside.pricing.internal.QuoteRow;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Clock;

/** Records that a quote was given to the customer. */
@Dependent
public class SendQuote {
    private final QuoteFile file;
    private final Books books;
    private final Clock clock;

    @Inject
    public SendQuote(QuoteFile file, Books books, Clock clock) {
        this.file = file;
        this.books = books;
        this.clock = clock;
    }

    /** Which quote, at the version that was given out. */
    public record Sending(QuoteId id, int version, UserId by) {}

    /**
     * The same command again is a retry. Refuses an expired quote, an agreed or declined one, and a version that somebody
     * else has changed.
     */
    @Transactional
    public Quote send(Sending sending) {
        Fingerprint fingerprint = Fingerprint.of(sending);
        QuoteRow row = file.lock(sending.id());
        if (!row.lastSaw(fingerprint)) {
            file.requireChangeable(row, sending.version(), sending);
            row.requireValidOn(books.today());
            row.offer(sending.by(), clock.instant(), fingerprint);
        }
        return file.read(row);
    }
}
