package eaveside.pricing.internal;

import eaveside.catalog.ServiceItem;
import eaveside.catalog.StandardMinutes;
import eaveside.costing.AppliedCost;
import eaveside.costing.ApplyVisitCost;
import eaveside.costing.LineCost;
import eaveside.costing.LineWork;
import eaveside.costing.ReadCostRates;
import eaveside.kernel.Elements;
import eaveside.kernel.Money;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.Shared;
import eaveside.pricing.QuoteScope;
import jakarta.inject.Inject;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * What a quoted scope is expected to take and to cost the company: standard minutes at the day's cost rates with the
 * expected travel, shared as a visit's cost is, and standard consumables at the newest cost of each item.
 */
@Shared
class ExpectedCosts {
    private final ApplyVisitCost applyVisitCost;
    private final ReadCostRates costRates;
    private final ConsumableCosts consumables;

    @Inject
    public ExpectedCosts(ApplyVisitCost applyVisitCost, ReadCostRates costRates, ConsumableCosts consumables) {
        this.applyVisitCost = applyVisitCost;
        this.costRates = costRates;
        this.consumables = consumables;
    }

    /**
     * Of one line.
     *
     * @param  cost null where no rates are in force, or a consumable has never been bought
     */
    public record Expected(
            StandardMinutes minutes, @Nullable Money cost) {}

    /** One answer per line of the scope, whose services these are, in order. */
    public List<Expected> of(LocalDate day, QuoteScope scope, List<ServiceItem> serviceItems) {
        List<StandardMinutes> minutes = new ArrayList<>();
        for (int i = 0; i < serviceItems.size(); i++) {
            minutes.add(serviceItems.get(i).minutesFor(scope.lines().get(i).quantity()));
        }
        StandardMinutes.requireOneVisit(StandardMinutes.ZERO, "lines", minutes);
        List<Money> applied = applied(day, scope, serviceItems, minutes);
        List<Expected> expected = new ArrayList<>();
        Elements.each("lines", scope.lines(), (line, i) -> {
            Optional<Money> used = consumables.of(serviceItems.get(i), line.quantity());
            Money cost =
                    applied.isEmpty() || used.isEmpty() ? null : applied.get(i).plus(used.get());
            expected.add(new Expected(minutes.get(i), cost));
        });
        return expected;
    }

    /** Labor, travel and overhead by line; empty where no rates are in force. */
    private List<Money> applied(
            LocalDate day, QuoteScope scope, List<ServiceItem> serviceItems, List<StandardMinutes> minutes) {
        if (costRates.all().stream().allMatch(rates -> rates.from().isAfter(day))) {
            return List.of();
        }
        List<LineWork> work = new ArrayList<>();
        BigDecimal onSite = BigDecimal.ZERO;
        for (int i = 0; i < serviceItems.size(); i++) {
            work.add(new LineWork(serviceItems.get(i).serviceLine(), minutes.get(i)));
            onSite = onSite.add(minutes.get(i).value());
        }
        int wholeMinutes = onSite.setScale(0, RoundingMode.CEILING).intValueExact();
        AppliedCost cost = applyVisitCost.apply(day, scope.travel().withWork(wholeMinutes), work, List.of());
        Money[] shares = new Money[work.size()];
        for (LineCost line : cost.lines()) {
            share(line, work, shares);
        }
        return List.of(shares);
    }

    private static void share(LineCost cost, List<LineWork> work, Money[] shares) {
        List<Integer> at = new ArrayList<>();
        for (int i = 0; i < work.size(); i++) {
            if (serves(work.get(i), cost.serviceLine())) {
                at.add(i);
            }
        }
        List<Money> parts = cost.total()
                .split(at.stream().map(i -> work.get(i).minutes().value()).toList());
        for (int i = 0; i < parts.size(); i++) {
            shares[at.get(i)] = parts.get(i);
        }
    }

    private static boolean serves(LineWork work, ServiceLineId line) {
        return work.serviceLine().equals(line);
    }
}
