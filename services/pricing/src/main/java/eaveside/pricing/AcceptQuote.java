package eaveside.pricing;

import eaveside.kernel.Fingerprint;
import eaveside.kernel.QuoteId;
import eaveside.kernel.Texts;
import eaveside.kernel.UserId;
import eaveside.ledger.Books;
import eaveside.pricing.internal.QuoteFile;
import eaveside.pricing.internal.QuoteRow;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Clock;

/** Records that the customer agreed; from then on the quote never changes, and visits can be booked from it. */
@Dependent
public class AcceptQuote {
    private final QuoteFile file;
    private final Books books;
    private final Clock clock;

    @Inject
    public AcceptQuote(QuoteFile file, Books books, Clock clock) {
        this.file = file;
        this.books = books;
        this.clock = clock;
    }

    /**
     * Which quote, at the version that the customer saw.
     *
     * @param  words who agreed and how, such as "Ms. Reed, by phone"; may be empty
     */
    public record Acceptance(QuoteId id, int version, String words, UserId by) {
        public Acceptance {
            words = Texts.optional("words", words, 500);
        }
    }

    /**
     * The same command again is a retry. Refuses an expired quote, an agreed or declined one, and a version that somebody
     * else has changed.
     */
    @Transactional
    public Quote accept(Acceptance acceptance) {
        Fingerprint fingerprint = Fingerprint.of(acceptance);
        QuoteRow row = file.lock(acceptance.id());
        if (!row.lastSaw(fingerprint)) {
            file.requireChangeable(row, acceptance.version(), acceptance);
            row.requireValidOn(books.today());
            row.close(QuoteStatus.ACCEPTED, acceptance.words(), acceptance.by(), clock.instant(), fingerprint);
        }
        return file.read(row);
    }
}
