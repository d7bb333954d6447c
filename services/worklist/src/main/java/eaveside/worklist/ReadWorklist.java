package eaveside.worklist;

import eaveside.kernel.Shared;
import eaveside.ledger.Books;
import eaveside.worklist.internal.DueItems;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Reads what is due today: totals of each type, and the things themselves. */
@Shared
public class ReadWorklist {
    private final DueItems items;
    private final Books books;

    @Inject
    public ReadWorklist(DueItems items, Books books) {
        this.items = items;
        this.books = books;
    }

    /** Of each type that has any, in their order; what is put aside is not among them. */
    @Transactional
    public Map<DueType, DueTotal> totals() {
        return items.totals(books.today());
    }

    /**
     * The first so many of each type.
     *
     * @param  type of this alone; null for all
     * @param  most of each type, 1 to 5,000
     */
    @Transactional
    public List<DueItem> items(@Nullable DueType type, DueOrder order, int most) {
        return items.due(books.today(), type, order, most);
    }

    /** What is due and put aside, what comes up first at first. */
    @Transactional
    public List<DueItem> aside(int most) {
        return items.aside(books.today(), most);
    }

    /** How much is due and put aside. */
    @Transactional
    public long countAside() {
        return items.countAside(books.today());
    }
}
