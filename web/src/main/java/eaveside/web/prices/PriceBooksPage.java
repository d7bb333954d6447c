package eaveside.web.prices;

import eaveside.kernel.PriceBookId;
import eaveside.ledger.Books;
import eaveside.pricing.PriceBook;
import eaveside.pricing.PriceBookDraft;
import eaveside.pricing.ReadPriceBooks;
import eaveside.pricing.ReadPriceBooks.Summary;
import eaveside.web.prices.Shown.State;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** Finds a price book whether it is published or a draft. */
@Dependent
class PriceBooksPage {
    private static final int MOST = 200;

    private final ReadPriceBooks readPriceBooks;
    private final Books books;

    @Inject
    PriceBooksPage(ReadPriceBooks readPriceBooks, Books books) {
        this.readPriceBooks = readPriceBooks;
        this.books = books;
    }

    /** Refuses an unknown id. */
    Shown book(PriceBookId id) {
        // Asked first, since reading the wrong way would be refused and end the page's transaction.
        boolean draft =
                readPriceBooks.drafts().stream().anyMatch(book -> book.id().equals(id));
        return draft ? shown(readPriceBooks.draft(id)) : shown(readPriceBooks.book(id));
    }

    boolean hasPublished() {
        return !readPriceBooks.published(null, 1).rows().isEmpty();
    }

    Optional<Shown> inForce(LocalDate date) {
        return readPriceBooks.findInForce(date).map(this::shown);
    }

    /** Every draft and the newest published books, to choose from; the names by id. */
    Map<String, String> choices(String draftWord) {
        Map<String, String> choices = new LinkedHashMap<>();
        readPriceBooks.drafts().forEach(draft -> choices.put(draft.id().toString(), draft.name() + " " + draftWord));
        readPriceBooks
                .published(null, MOST)
                .rows()
                .forEach(book -> choices.put(book.id().toString(), book.number() + " " + book.name()));
        return choices;
    }

    State state(Summary summary, Optional<Shown> current) {
        return summary.number() == null ? State.DRAFT : state(summary.id(), summary.from(), current);
    }

    private State state(PriceBookId id, LocalDate from, Optional<Shown> current) {
        if (current.isPresent() && current.get().id().equals(id)) {
            return State.IN_FORCE;
        }
        return from.isAfter(books.today()) ? State.COMING : State.PAST;
    }

    private Shown shown(PriceBookDraft draft) {
        return new Shown(draft.id(), null, draft.version(), State.DRAFT, draft.list(), null, null);
    }

    private Shown shown(PriceBook book) {
        LocalDate today = books.today();
        boolean inForce = readPriceBooks
                .findInForce(today)
                .map(PriceBook::id)
                .filter(book.id()::equals)
                .isPresent();
        State state = inForce ? State.IN_FORCE : book.list().from().isAfter(today) ? State.COMING : State.PAST;
        return new Shown(book.id(), book.number(), 0, state, book.list(), book.publishedBy(), book.publishedAt());
    }
}
