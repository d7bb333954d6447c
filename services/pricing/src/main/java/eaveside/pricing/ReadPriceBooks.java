package eaveside.pricing;

import eaveside.kernel.KernelRefusal;
import eaveside.kernel.PageKey;
import eaveside.kernel.PriceBookId;
import eaveside.kernel.Shared;
import eaveside.kernel.Slice;
import eaveside.ledger.Books;
import eaveside.pricing.internal.PriceBookRow;
import eaveside.pricing.internal.PricingQueries;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Finds price books: the one in force on a day, one by id, drafts, and those published so far. */
@Shared
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

    /** A book, published or not; refuses an unknown id. */
    @Transactional
    public PriceBookView view(PriceBookId id) {
        PriceBookRow row = row(id);
        return row.toView(books.currency(), status(row, current()));
    }

    /** Drafts by their first day, then the published books, the newest number first; paged by key. */
    @Transactional
    public Slice<PriceBookSummary> list(@Nullable String after, int size) {
        List<PriceBookRow> rows = new ArrayList<>(after == null ? queries.drafts() : List.of());
        int drafts = rows.size();
        rows.addAll(queries.publishedBooks(PageKey.beforeNumber(after), size + 1));
        return Slice.of(summaries(rows), drafts + size, summary -> String.valueOf(summary.number()));
    }

    /** Every draft and the newest published books. */
    @Transactional
    public List<PriceBookSummary> newest(int published) {
        return list(null, published).rows();
    }

    /** Whether any book has been published. */
    @Transactional
    public boolean isAnyPublished() {
        return !queries.publishedBooks(Long.MAX_VALUE, 1).isEmpty();
    }

    private List<PriceBookSummary> summaries(List<PriceBookRow> rows) {
        Optional<PriceBookRow> current = current();
        return rows.stream().map(row -> row.toSummary(status(row, current))).toList();
    }

    private Optional<PriceBookRow> current() {
        return queries.booksInForce(books.today(), 1).stream().findFirst();
    }

    private PriceBookStatus status(PriceBookRow row, Optional<PriceBookRow> current) {
        if (!row.isPublished()) {
            return PriceBookStatus.DRAFT;
        }
        if (current.isPresent() && current.get().id().equals(row.id())) {
            return PriceBookStatus.IN_FORCE;
        }
        return row.validFrom().isAfter(books.today()) ? PriceBookStatus.UPCOMING : PriceBookStatus.REPLACED;
    }

    private PriceBookRow row(PriceBookId id) {
        PriceBookRow row = entities.find(PriceBookRow.class, id.value());
        if (row == null) {
            throw new KernelRefusal.NotFound("price book", id);
        }
        return row;
    }
}
