package eaveside.visits.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.kernel.CustomerId;
import eaveside.kernel.Money;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.VisitId;
import eaveside.ledger.AccountRole;
import eaveside.ledger.CostType;
import eaveside.ledger.Entry;
import java.util.List;
import org.joda.money.CurrencyUnit;
import org.junit.jupiter.api.Test;

class SheetCostTest {
    private static final ServiceLineId ARRAYS = ServiceLineId.next();
    private static final VisitId VISIT = VisitId.next();
    private static final CustomerId CUSTOMER = CustomerId.next();

    private static Money usd(String amount) {
        return Money.of(CurrencyUnit.USD, amount);
    }

    @Test
    void every_type_of_cost_enters_work_in_progress_from_where_it_came() {
        SheetCost cost = new SheetCost();
        cost.add(ARRAYS, CostType.CONSUMABLES, usd("1.50"));
        cost.add(ARRAYS, CostType.CONSUMABLES, usd("0.50"));
        cost.add(ARRAYS, CostType.LABOR, usd("3"));
        cost.add(ARRAYS, CostType.TRAVEL, usd("4"));
        cost.add(ARRAYS, CostType.OVERHEAD, usd("5"));
        List<Entry> entries = cost.entries(VISIT, CUSTOMER);
        assertEquals(
                List.of(
                        inProgress("2", CostType.CONSUMABLES),
                        from(AccountRole.INVENTORY, "2"),
                        inProgress("3", CostType.LABOR),
                        from(AccountRole.LABOR_APPLIED, "3"),
                        inProgress("4", CostType.TRAVEL),
                        from(AccountRole.TRAVEL_APPLIED, "4"),
                        inProgress("5", CostType.OVERHEAD),
                        from(AccountRole.OVERHEAD_APPLIED, "5")),
                entries);
        assertEquals(
                usd("0"),
                Money.sum(CurrencyUnit.USD, entries.stream().map(Entry::amount).toList()));
    }

    private static Entry inProgress(String amount, CostType type) {
        return Entry.debit(AccountRole.WORK_IN_PROGRESS, usd(amount))
                .on(ARRAYS, VISIT, CUSTOMER)
                .as(type);
    }

    private static Entry from(AccountRole account, String amount) {
        return Entry.credit(account, usd(amount)).on(ARRAYS, VISIT, CUSTOMER);
    }

    @Test
    void a_visit_that_cost_nothing_posts_no_entries() {
        SheetCost cost = new SheetCost();
        cost.add(ARRAYS, CostType.LABOR, usd("0"));
        assertTrue(cost.entries(VISIT, CUSTOMER).isEmpty());
    }
}
