package eaveside.pricing;

import eaveside.kernel.PriceBookId;
import eaveside.kernel.Slice;
import eaveside.ledger.Books;
import eaveside.pricing.internal.PriceBookRow;
import eaveside.pricing.internal.PricingQueries;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Finds price books: the one in force on a day, one by id, drafts, and those published so far. */
@Dependent
public class ReadPriceBooks {
    private final EntityManager entities;
    private final PricingQueries queries;
    private final Books books;

    @Inject
    public ReadPriceBooks(EntityManager entities, PricingQueries queries, Books books) {
        this.entities = entities;
        this.queries = queries;
        this.books = books;
    }

    /** A book in a list; number and time are absent on a draft. */
    public record Summary(
            PriceBookId id,
            @Nullable Long number,
            String name,
            LocalDate from,
            @Nullable Instant publishedAt) {}

    /** The book that prices work of that day; refuses with {@link PricingRefusal.NoBookInForce} where there is none. */
    @Transactional
    public PriceBook inForce(LocalDate date) {
        return findInForce(date).orElseThrow(() -> new PricingRefusal.NoBookInForce(date));
    }

    @Transactional
    public Optional<PriceBook> findInForce(LocalDate date) {
        return queries.booksInForce(date, 1).stream().findFirst().map(row -> row.toBook(books.currency()));
    }

    /** A published book; refuses an unknown id, and a draft with {@link PricingRefusal.NotPublished}. */
    @Transactional
    public PriceBook book(PriceBookId id) {
        return row(id).toBook(books.currency());
    }

    /** A draft to edit; refuses an unknown id, and a published book with {@link PricingRefusal.AlreadyPublished}. */
    @Transactional
    public PriceBookDraft draft(PriceBookId id) {
        PriceBookRow row = row(id);
        if (row.isPublished()) {
            throw new PricingRefusal.AlreadyPublished(row.name());
        }
        return row.toDraft(books.currency());
    }

    /** Every draft, by its first day. */
    @Transactional
    public List<Summary> drafts() {
        return queries.drafts().stream().map(row -> row.toSummary()).toList();
    }

    /** The published books, newest number first, paged by key. */
    @Transactional
    public Slice<Summary> published(@Nullable String after, int size) {
        long below = after == null ? Long.MAX_VALUE : Keys.number(after);
        List<Summary> read = queries.publishedBooks(below, size + 1).stream()
                .map(row -> row.toSummary())
                .toList();
        return Slice.of(read, size, summary -> String.valueOf(summary.number()));
    }

    private PriceBookRow row(PriceBookId id) {
        PriceBookRow row = entities.find(PriceBookRow.class, id.value());
        if (row == null) {
            throw new PricingRefusal.NoSuchBook(id.toString());
        }
        return row;
    }
}
