package eaveside.pricing;

import eaveside.kernel.Shared;
import eaveside.ledger.Books;
import eaveside.pricing.internal.QuoteFile;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;

/** Records that the customer accepted; from then on the quote never changes, and visits can be scheduled from it. */
@Shared
public class AcceptQuote {
    private final QuoteFile file;
    private final Books books;

    @Inject
    public AcceptQuote(QuoteFile file, Books books) {
        this.file = file;
        this.books = books;
    }

    /**
     * The same command again is a retry. Refuses an expired quote, an accepted or declined one, and a version that another
     * user has changed.
     */
    @Transactional
    public Quote accept(QuoteAcceptance acceptance) {
        return file.change("quote.accept", acceptance, row -> {
            row.requireValidOn(books.today());
            row.close(QuoteStatus.ACCEPTED, acceptance.acceptedBy());
        });
    }
}
