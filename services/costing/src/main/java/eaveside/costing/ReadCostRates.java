package eaveside.costing;

import eaveside.costing.internal.CostRatesRow;
import eaveside.costing.internal.CostingQueries;
import eaveside.kernel.Shared;
import eaveside.ledger.Books;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/** Reads the owner's cost rates. */
@Shared
public class ReadCostRates {
    private final CostingQueries queries;
    private final Books books;

    @Inject
    public ReadCostRates(CostingQueries queries, Books books) {
        this.queries = queries;
        this.books = books;
    }

    /** What is in force on that day; refuses a day before the first rates. */
    @Transactional
    public CostRates on(LocalDate date) {
        List<CostRatesRow> newest = queries.ratesUntil(date);
        if (newest.isEmpty()) {
            throw new CostingRefusal.NoRatesOn(date);
        }
        return newest.getFirst().toCostRates(books.currency());
    }

    /** All rates that are, were or will be in force, the newest day first. */
    @Transactional
    public List<CostRates> all() {
        List<CostRates> all = new ArrayList<>();
        for (CostRatesRow row : queries.rates()) {
            if (all.isEmpty() || !all.getLast().from().equals(row.from())) {
                all.add(row.toCostRates(books.currency()));
            }
        }
        return List.copyOf(all);
    }
}
