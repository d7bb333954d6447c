package eaveside.costing;

import eaveside.access.RecordAudit;
import eaveside.costing.internal.CostRatesRow;
import eaveside.costing.internal.CostingQueries;
import eaveside.kernel.Check;
import eaveside.kernel.FromDay;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import eaveside.ledger.Books;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.math.BigDecimal;
import java.time.Clock;
import java.util.List;

/**
 * Sets what labor, travel and overhead cost from a day on. The first rates may begin on any day, and rates may be
 * added before the first; any others begin today or later, and can be set again until their day has come.
 */
@Shared
public class SetCostRates {
    /** As much as the column of travel holds; nobody drives a mile or works an hour for that in any currency. */
    private static final BigDecimal MOST = BigDecimal.TEN.pow(9);

    private final EntityManager entities;
    private final CostingQueries queries;
    private final Books books;
    private final RecordAudit audit;
    private final Clock clock;

    @Inject
    public SetCostRates(EntityManager entities, CostingQueries queries, Books books, RecordAudit audit, Clock clock) {
        this.entities = entities;
        this.queries = queries;
        this.books = books;
        this.audit = audit;
        this.clock = clock;
    }

    /**
     * Refuses a change on days whose visits may have been costed, another currency, a first day far away ({@link Books#near})
     * and a rate of a billion and more, which is a slip of the keyboard; the same again is a retry.
     */
    @Transactional
    public void set(CostRates rates, UserId by) {
        if (!rates.laborPerHour().currency().equals(books.currency())) {
            throw new CostingRefusal.MixedCurrencies("laborPerHour");
        }
        queries.takeTurn(CostingQueries.RATES);
        List<CostRatesRow> before = queries.rates();
        List<CostRatesRow> sameDay =
                before.stream().filter(row -> row.from().equals(rates.from())).toList();
        if (!sameDay.isEmpty()
                && sameDay.getFirst().toCostRates(books.currency()).equals(rates)) {
            return;
        }
        requirePossible(rates);
        FromDay.earliestInsteadOf(
                        rates.from(), before.stream().map(CostRatesRow::from).toList(), books.today())
                .ifPresent(earliest -> {
                    throw new KernelRefusal.TooEarly(
                            "from", rates.from(), earliest, "visits before may be costed already");
                });
        entities.persist(new CostRatesRow(rates, sameDay.size() + 1, by, clock.instant()));
        audit.done("rates.set", by, rates.from());
        entities.flush();
    }

    private void requirePossible(CostRates rates) {
        Check check = new Check();
        possible(check, "laborPerHour", rates.laborPerHour().amount());
        possible(check, "travelPerDistance", rates.travelPerDistance().amount());
        possible(check, "overheadPerHour", rates.overheadPerHour().amount());
        check.passes(() -> books.near(rates.from(), "from"));
        check.done();
    }

    private void possible(Check check, String field, BigDecimal rate) {
        check.that(
                rate.compareTo(MOST) < 0,
                () -> new KernelRefusal.TooLarge(field, books.currency() + " " + rate.toPlainString()));
    }
}
