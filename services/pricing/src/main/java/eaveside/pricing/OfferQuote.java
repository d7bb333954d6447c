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
public class OfferQuote {
    private final QuoteFile file;
    private final Books books;
    private final Clock clock;

    @Inject
    public OfferQuote(QuoteFile file, Books books, Clock clock) {
        this.file = file;
        this.books = books;
        this.clock = clock;
    }

    /** Which quote, at the version that was given out. */
    public record Offer(QuoteId id, int version, UserId by) {}

    /**
     * The same command again is a retry. Refuses an expired quote, an agreed or declined one, and a version that somebody
     * else has changed.
     */
    @Transactional
    public Quote offer(Offer offer) {
        Fingerprint fingerprint = Fingerprint.of(offer);
        QuoteRow row = file.lock(offer.id());
        if (!row.lastSaw(fingerprint)) {
            file.requireChangeable(row, offer.version(), offer);
            row.requireValidOn(books.today());
            row.offer(offer.by(), clock.instant(), fingerprint);
        }
        return file.read(row);
    }
}
