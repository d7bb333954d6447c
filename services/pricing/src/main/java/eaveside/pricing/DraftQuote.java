package eaveside.pricing;

import eaveside.access.RecordAudit;
import eaveside.kernel.CustomerId;
import eaveside.kernel.Fingerprint;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Shared;
import eaveside.ledger.Books;
import eaveside.pricing.internal.Numbers;
import eaveside.pricing.internal.PricedScope;
import eaveside.pricing.internal.PricingSeries;
import eaveside.pricing.internal.QuoteFile;
import eaveside.pricing.internal.QuoteRow;
import eaveside.pricing.internal.ScopePricing;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.LocalDate;

/** Makes a quote from the price book in force. */
@Shared
public class DraftQuote {
    private final QuoteFile file;
    private final ScopePricing pricing;
    private final ReadPriceBooks priceBooks;
    private final Numbers numbers;
    private final Books books;
    private final RecordAudit audit;
    private final Clock clock;

    @Inject
    public DraftQuote(
            QuoteFile file,
            ScopePricing pricing,
            ReadPriceBooks priceBooks,
            Numbers numbers,
            Books books,
            RecordAudit audit,
            Clock clock) {
        this.file = file;
        this.pricing = pricing;
        this.priceBooks = priceBooks;
        this.numbers = numbers;
        this.books = books;
        this.audit = audit;
        this.clock = clock;
    }

    /**
     * The quote as a draft, priced, numbered, and pinned to today's price book. The same command again answers the quote
     * as it is now. Refuses an id that was used with other content, a site of another customer, a surface of another
     * site, a finding that does not exist, a service that is no longer sold or does not fit the surface, one without a price
     * in the book, a validity that has ended or ends far away ({@link Books#near}), more work than one visit takes, and prices
     * and consumables that the books cannot hold.
     */
    @Transactional
    public Quote draft(NewQuote quote) {
        // Retries queue here, so that the second finds what the first has made.
        numbers.lock(PricingSeries.QUOTE);
        QuoteRow before = file.find(quote.id());
        if (before != null) {
            if (!before.wasDraftedBy(Fingerprint.of(quote))) {
                throw new KernelRefusal.IdTaken("quote", quote.id(), String.valueOf(before.number()));
            }
            return file.read(before);
        }
        LocalDate today = books.today();
        CustomerId customer = pricing.requireSite(quote.customer(), quote.site());
        if (quote.cameFrom() != null) {
            file.requireFinding(quote.cameFrom());
        }
        PricedScope priced = pricing.price(priceBooks.inForce(today), quote.site(), quote.scope());
        QuoteRow row = new QuoteRow(quote, customer, priced, numbers.draw(PricingSeries.QUOTE), today, clock.instant());
        file.add(row, quote.id(), priced.lines());
        audit.done("quote.draft", quote.by(), quote.id());
        return file.read(row);
    }
}
