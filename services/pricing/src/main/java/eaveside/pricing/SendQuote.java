package eaveside.pricing;

import eaveside.kernel.Shared;
import eaveside.ledger.Books;
import eaveside.pricing.internal.QuoteFile;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;

/** Records that a quote was sent to the customer. */
@Shared
public class SendQuote {
    private final QuoteFile file;
    private final Books books;

    @Inject
    public SendQuote(QuoteFile file, Books books) {
        this.file = file;
        this.books = books;
    }

    /**
     * The same command again is a retry. Refuses an expired quote, an accepted or declined one, and a version that another
     * user has changed.
     */
    @Transactional
    public Quote send(QuoteSending sending) {
        return file.change("quote.send", sending, row -> {
            row.requireValidOn(books.today());
            row.send();
        });
    }
}
