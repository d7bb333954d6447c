package eaveside.pricing;

import eaveside.kernel.Fingerprint;
import eaveside.kernel.PriceBookId;
import eaveside.kernel.UserId;
import eaveside.ledger.Books;
import eaveside.pricing.internal.Numbers;
import eaveside.pricing.internal.PriceBookRow;
import eaveside.pricing.internal.PriceBookRules;
import eaveside.pricing.internal.PricingQueries;
import eaveside.pricing.internal.PricingSeries;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.LockModeType;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.LocalDate;

/** Puts a price book into force; from then on it never changes. */
@Dependent
public class PublishPriceBook {
    private final EntityManager entities;
    private final PricingQueries queries;
    private final PriceBookRules rules;
    private final Numbers numbers;
    private final Books books;
    private final Clock clock;

    @Inject
    public PublishPriceBook(
            EntityManager entities,
            PricingQueries queries,
            PriceBookRules rules,
            Numbers numbers,
            Books books,
            Clock clock) {
        this.entities = entities;
        this.queries = queries;
        this.rules = rules;
        this.numbers = numbers;
        this.books = books;
        this.clock = clock;
    }

    /** Which draft, at which version its prices were read, and by whom. */
    public record Publish(PriceBookId id, int version, UserId by) {}

    /**
     * The book with its number; the same command again is a retry. Where two books begin on one day the later published
     * is in force. Refuses a book without prices, a version that somebody else has changed, and a first day in the past
     * on which another book was already in force: what was priced by then stays as it was.
     */
    @Transactional
    public PriceBook publish(Publish publish) {
        Fingerprint fingerprint = Fingerprint.of(publish);
        // Publications follow one another, so that each sees which days are already priced.
        numbers.lock(PricingSeries.PRICE_BOOK);
        PriceBookRow row = entities.find(PriceBookRow.class, publish.id().value(), LockModeType.PESSIMISTIC_WRITE);
        if (row == null) {
            throw new PricingRefusal.NoSuchBook(publish.id().toString());
        }
        if (row.lastSaw(fingerprint)) {
            return row.toBook(books.currency());
        }
        if (row.isPublished()) {
            throw new PricingRefusal.AlreadyPublished(row.name());
        }
        if (row.version() != publish.version()) {
            throw new PricingRefusal.ChangedMeanwhile(
                    "The price book '" + row.name() + "'", publish, row.toDraft(books.currency()));
        }
        PriceList list = row.toDraft(books.currency()).list();
        requireWhole(list);
        row.publish(numbers.draw(PricingSeries.PRICE_BOOK), publish.by(), clock.instant(), fingerprint);
        entities.flush();
        return row.toBook(books.currency());
    }

    private void requireWhole(PriceList list) {
        if (list.prices().isEmpty()) {
            throw new PricingRefusal.NothingPriced(list.name());
        }
        rules.check(list);
        LocalDate today = books.today();
        if (list.from().isBefore(today) && !queries.booksInForce(list.from(), 1).isEmpty()) {
            throw new PricingRefusal.BeginsInPast(list.from(), today);
        }
    }
}
