package eaveside.pricing;

import eaveside.kernel.QuoteId;
import eaveside.kernel.UserId;
import eaveside.ledger.Books;
import eaveside.pricing.internal.QuoteFile;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;

/** Records that a quote was sent to the customer. */
@Dependent
public class SendQuote {
    private final QuoteFile file;
    private final Books books;

    @Inject
    public SendQuote(QuoteFile file, Books books) {
        this.file = file;
        this.books = books;
    }

    /** Which quote, at the version that was sent. */
    public record Sending(QuoteId id, int version, UserId by) implements QuoteChange {}

    /**
     * The same command again is a retry. Refuses an expired quote, an accepted or declined one, and a version that another
     * user has changed.
     */
    @Transactional
    public Quote send(Sending sending) {
        return file.change("quote.send", sending, row -> {
            row.requireValidOn(books.today());
            row.send();
        });
    }
}
