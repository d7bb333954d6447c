package eaveside.ledger;

import org.jspecify.annotations.Nullable;

/**
 * An account of the chart.
 *
 * @param  variance where an applied and an actual account meet at period close; null elsewhere
 * @param  costType what an expense counts as where no visit is charged with it; null elsewhere
 * @param  applied  whether what is absorbed into services is credited here
 */
public record Account(
        AccountCode code,
        String name,
        AccountType type,
        boolean takesJournals,
        @Nullable AccountCode variance,
        @Nullable CostType costType,
        boolean applied) {}
