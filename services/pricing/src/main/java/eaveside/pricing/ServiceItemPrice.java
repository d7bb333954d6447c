package eaveside.pricing;

import eaveside.kernel.Elements;
import eaveside.kernel.KernelRefusal;
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
        UnitPrice price = steps.getFirst().price();
        Elements.each("surcharges", surcharges, (surcharge, i) -> requireFitting(surcharge, price));
        surcharges = surcharges.stream()
                .sorted(Comparator.comparing(Surcharge::attribute).thenComparing(Surcharge::atLeast))
                .toList();
        requireEachOnce(surcharges);
    }

    /** The step that the quantity reaches; the quantity may come in any unit of the price's type. */
    public QuantityStep stepAt(Quantity quantity) {
        Quantity asked = quantity.in(base().unit(), "quantity");
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
            throw new KernelRefusal.Unfit("steps", "{field} are required");
        }
        UnitPrice first = steps.getFirst().price();
        Elements.each("steps", steps, (step, i) -> {
            step.price().in(first.currency(), "price");
            if (!step.price().base().equals(first.base())) {
                throw new KernelRefusal.Unfit("price", "All steps of a service are priced per " + first.base());
            }
        });
        List<QuantityStep> sorted = new ArrayList<>(steps);
        sorted.sort(Comparator.comparing(QuantityStep::from));
        return List.copyOf(sorted);
    }

    private static void requireOneScale(List<QuantityStep> steps) {
        if (!steps.getFirst().from().isZero()) {
            throw new KernelRefusal.Unfit("steps", "The first step must begin at zero");
        }
        for (int i = 1; i < steps.size(); i++) {
            QuantityStep lower = steps.get(i - 1);
            QuantityStep higher = steps.get(i);
            if (lower.from().equals(higher.from())) {
                throw new KernelRefusal.Unfit(
                        "steps", "Two steps begin at " + higher.from().said());
            }
            if (lower.price().amount().compareTo(higher.price().amount()) < 0) {
                throw new KernelRefusal.Unfit(
                        "steps", "The unit price rises from " + higher.from().said() + " on. A step can only lower it");
            }
        }
    }

    private static void requireFitting(Surcharge surcharge, UnitPrice price) {
        UnitPrice fixed = surcharge.amount();
        if (fixed != null
                && !(fixed.base().equals(price.base()) && fixed.currency().equals(price.currency()))) {
            throw new KernelRefusal.Unfit(
                    "amount", "A fixed surcharge is in " + price.currency() + " per " + price.base());
        }
    }

    private static void requireEachOnce(List<Surcharge> surcharges) {
        Set<List<Object>> seen = new HashSet<>();
        for (Surcharge surcharge : surcharges) {
            if (!seen.add(List.of(surcharge.attribute(), surcharge.atLeast()))) {
                throw new KernelRefusal.Unfit(
                        "surcharges", "Two surcharges begin at " + surcharge.attribute() + " " + surcharge.atLeast());
            }
        }
    }
}
