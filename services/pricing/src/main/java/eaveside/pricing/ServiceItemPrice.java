package eaveside.pricing;

import eaveside.kernel.Quantity;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.UnitPrice;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * What one service costs.
 *
 * @param  steps      ascending; the first begins at zero; all per the same base quantity; the unit price never rises
 * @param  surcharges at most one per attribute and threshold; fixed ones per the steps' base quantity
 */
public record ServiceItemPrice(ServiceItemId serviceItem, List<QuantityStep> steps, List<Surcharge> surcharges) {
    public ServiceItemPrice {
        steps = ascending(steps);
        requireOneScale(steps);
        surcharges = surcharges.stream()
                .sorted(Comparator.comparing(Surcharge::attribute).thenComparing(Surcharge::atLeast))
                .toList();
        requireFitting(surcharges, steps.getFirst().price());
    }

    /** The step that the quantity reaches; the quantity may come in any unit of the price's type. */
    public QuantityStep stepAt(Quantity quantity) {
        Quantity asked = quantity.in(base().unit());
        return steps.reversed().stream()
                .filter(step -> step.from().compareTo(asked) <= 0)
                .findFirst()
                .orElse(steps.getFirst());
    }

    /** What the prices are per, such as 1 panel or 100 square feet. */
    public Quantity base() {
        return steps.getFirst().price().base();
    }

    private static List<QuantityStep> ascending(List<QuantityStep> steps) {
        if (steps.isEmpty()) {
            throw new PricingRefusal.BadPriceList("steps", "A service in the book needs a price");
        }
        Quantity base = steps.getFirst().price().base();
        if (steps.stream().anyMatch(step -> !step.price().base().equals(base))) {
            throw new PricingRefusal.BadPriceList("steps", "All steps of a service are priced per " + base);
        }
        List<QuantityStep> sorted = new ArrayList<>(steps);
        sorted.sort(Comparator.comparing(QuantityStep::from));
        return List.copyOf(sorted);
    }

    private static void requireOneScale(List<QuantityStep> steps) {
        if (!steps.getFirst().from().isZero()) {
            throw new PricingRefusal.BadPriceList("steps", "The first step begins at zero");
        }
        for (int i = 1; i < steps.size(); i++) {
            QuantityStep lower = steps.get(i - 1);
            QuantityStep higher = steps.get(i);
            if (lower.from().equals(higher.from())) {
                throw new PricingRefusal.BadPriceList("steps", "Two steps begin at " + higher.from());
            }
            if (!lower.price().currency().equals(higher.price().currency())) {
                throw new PricingRefusal.BadPriceList("steps", "All prices of a book are in one currency");
            }
            if (lower.price().amount().compareTo(higher.price().amount()) < 0) {
                throw new PricingRefusal.BadPriceList(
                        "steps", "The unit price rises from " + higher.from() + " on; a step may only lower it");
            }
        }
    }

    private static void requireFitting(List<Surcharge> surcharges, UnitPrice price) {
        Set<List<Object>> seen = new HashSet<>();
        for (Surcharge surcharge : surcharges) {
            if (!seen.add(List.of(surcharge.attribute(), surcharge.atLeast()))) {
                throw new PricingRefusal.BadPriceList(
                        "surcharges", "Two surcharges begin at " + surcharge.attribute() + " " + surcharge.atLeast());
            }
            if (surcharge.rate() instanceof Surcharge.PerUnit fixed
                    && !(fixed.amount().base().equals(price.base())
                            && fixed.amount().currency().equals(price.currency()))) {
                throw new PricingRefusal.BadPriceList(
                        "surcharges", "A fixed surcharge is in " + price.currency() + " per " + price.base());
            }
        }
    }
}
