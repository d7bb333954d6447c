package eaveside.pricing;

import eaveside.access.Edits;
import eaveside.access.RecordAudit;
import eaveside.kernel.Fingerprint;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.PriceBookId;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import eaveside.kernel.Versioned;
import eaveside.ledger.Books;
import eaveside.pricing.internal.Numbers;
import eaveside.pricing.internal.PriceBookRow;
import eaveside.pricing.internal.PriceBookRules;
import eaveside.pricing.internal.PricingQueries;
import eaveside.pricing.internal.PricingSeries;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.LocalDate;

/** Puts a price book into force; from then on it never changes. */
@Shared
public class PublishPriceBook {
    private final EntityManager entities;
    private final Edits edits;
    private final PricingQueries queries;
    private final PriceBookRules rules;
    private final Numbers numbers;
    private final RecordAudit audit;
    private final Books books;
    private final Clock clock;

    @Inject
    public PublishPriceBook(
            EntityManager entities,
            Edits edits,
            PricingQueries queries,
            PriceBookRules rules,
            Numbers numbers,
            RecordAudit audit,
            Books books,
            Clock clock) {
        this.entities = entities;
        this.edits = edits;
        this.queries = queries;
        this.rules = rules;
        this.numbers = numbers;
        this.audit = audit;
        this.books = books;
        this.clock = clock;
    }

    /** Which draft, at which version its prices were read, and by whom. */
    public record Publish(PriceBookId id, int version, UserId by) implements Versioned {
        @Override
        public String what() {
            return "price book";
        }
    }

    /**
     * The book with its number; the same command again is a retry. Where two books begin on one day the later published
     * is in force. Refuses a book without prices, a version that another user has changed, a first day far away
     * ({@link Books#near}), and one in the past on which another book was already in force: what was priced by then stays as
     * it was.
     */
    @Transactional
    public PriceBook publish(Publish publish) {
        Fingerprint fingerprint = Fingerprint.of(publish);
        // Publications follow one another, so that each sees which days are already priced.
        numbers.lock(PricingSeries.PRICE_BOOK);
        PriceBookRow row = edits.locked(PriceBookRow.class, publish.id());
        if (row == null) {
            throw new KernelRefusal.NotFound(publish.what(), publish.id());
        }
        if (row.lastSaw(fingerprint)) {
            return row.toBook(books.currency());
        }
        if (row.isPublished()) {
            throw new PricingRefusal.AlreadyPublished(row.name());
        }
        PriceBookDraft draft = row.toDraft(books.currency());
        if (draft.version() != publish.version()) {
            throw new KernelRefusal.Stale(publish.what(), publish, draft);
        }
        requireWhole(draft.list());
        books.near(draft.list().from(), "from");
        row.publish(numbers.draw(PricingSeries.PRICE_BOOK), publish.by(), clock.instant(), fingerprint);
        audit.done("price-book.publish", publish.by(), publish.id());
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
            throw new KernelRefusal.TooEarly("from", list.from(), today, "another price book was in force on that day");
        }
    }
}
