package eaveside.pricing;

import eaveside.kernel.Shared;
import eaveside.ledger.Books;
import eaveside.pricing.internal.PricedScope;
import eaveside.pricing.internal.QuoteFile;
import eaveside.pricing.internal.ScopePricing;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.LocalDate;

/** Changes an open quote; it is a draft again until it is sent again. */
@Shared
public class ReviseQuote {
    private final QuoteFile file;
    private final ScopePricing pricing;
    private final ReadPriceBooks priceBooks;
    private final Books books;

    @Inject
    public ReviseQuote(QuoteFile file, ScopePricing pricing, ReadPriceBooks priceBooks, Books books) {
        this.file = file;
        this.pricing = pricing;
        this.priceBooks = priceBooks;
        this.books = books;
    }

    /**
     * The quote with its new version, priced from the book that it is pinned to, or, once it has expired, from the one in
     * force today. The same command again is a retry. Refuses what {@link DraftQuote} refuses, an accepted or declined
     * quote, and a version that another user has changed.
     */
    @Transactional
    public Quote revise(QuoteRevision revise) {
        return file.change("quote.revise", revise, row -> {
            LocalDate today = books.today();
            PriceBook book = row.isExpiredOn(today) ? priceBooks.inForce(today) : priceBooks.book(row.book());
            PricedScope priced = pricing.price(book, row.site(), revise.scope());
            row.write(priced);
            file.replaceLines(revise.id(), priced.lines());
        });
    }
}
