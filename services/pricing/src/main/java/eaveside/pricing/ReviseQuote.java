package eaveside.pricing;

import eaveside.kernel.Fingerprint;
import eaveside.kernel.QuoteId;
import eaveside.kernel.UserId;
import eaveside.ledger.Books;
import eaveside.pricing.internal.PricedScope;
import eaveside.pricing.internal.QuoteFile;
import eaveside.pricing.internal.QuoteRow;
import eaveside.pricing.internal.ScopePricing;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.LocalDate;

/** Changes an open quote; it is a draft again until it is offered anew. */
@Dependent
public class ReviseQuote {
    private final QuoteFile file;
    private final ScopePricing pricing;
    private final ReadPriceBooks priceBooks;
    private final Books books;
    private final Clock clock;

    @Inject
    public ReviseQuote(QuoteFile file, ScopePricing pricing, ReadPriceBooks priceBooks, Books books, Clock clock) {
        this.file = file;
        this.pricing = pricing;
        this.priceBooks = priceBooks;
        this.books = books;
        this.clock = clock;
    }

    /**
     * The whole new scope.
     *
     * @param  version the one that the change started from
     */
    public record Revise(QuoteId id, int version, QuoteScope scope, UserId by) {}

    /**
     * The quote with its new version, priced from the book that it is pinned to, or, once it has expired, from the one in
     * force today. The same command again is a retry. Refuses what {@link DraftQuote} refuses, an agreed or declined
     * quote, and a version that somebody else has changed.
     */
    @Transactional
    public Quote revise(Revise revise) {
        Fingerprint fingerprint = Fingerprint.of(revise);
        QuoteRow row = file.lock(revise.id());
        if (row.lastSaw(fingerprint)) {
            return file.read(row);
        }
        file.requireChangeable(row, revise.version(), revise);
        LocalDate today = books.today();
        PriceBook book = row.isExpiredOn(today) ? priceBooks.inForce(today) : priceBooks.book(row.book());
        PricedScope priced = pricing.price(book, row.site(), revise.scope());
        row.write(priced, revise.by(), clock.instant(), fingerprint);
        file.replaceLines(revise.id(), priced.lines());
        return file.read(row);
    }
}
