package eaveside.pricing;

import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.UnitPrice;
import eaveside.pricing.internal.UnitAmounts;
import java.util.List;

/**
 * How a line's price came about. The price is calculated from the reasons' own figures, so the two cannot differ.
 *
 * @param  reasons first where the unit price starts from, then what changes it, then the top-ups
 */
public record Explanation(Quantity quantity, List<PriceReason> reasons) {
    public Explanation {
        reasons = List.copyOf(reasons);
        boolean starts = !reasons.isEmpty()
                && reasons.getFirst() instanceof PriceReason.Start
                && reasons.stream().skip(1).noneMatch(PriceReason.Start.class::isInstance);
        if (!starts || !quantity.isPositive()) {
            throw new PricingRefusal.Unexplained();
        }
    }

    /** Where the unit price starts from. */
    public PriceReason.Start start() {
        return (PriceReason.Start) reasons.getFirst();
    }

    public UnitPrice unitPrice() {
        UnitPrice price = start().price();
        for (PriceReason reason : reasons) {
            price = switch (reason) {
                case PriceReason.Surcharged s -> UnitAmounts.plus(price, s.added());
                case PriceReason.SharedVisit s -> UnitAmounts.minus(price, s.takenOff());
                case PriceReason.Start start -> price;
                case PriceReason.TopUp topUp -> price;
            };
        }
        return price;
    }

    /** Unit price × quantity, rounded HALF_UP once to the minor unit. */
    public Money netBeforeTopUp() {
        return unitPrice().times(quantity);
    }

    public Money topUp() {
        return Money.sum(
                unitPrice().currency(),
                reasons.stream()
                        .filter(PriceReason.TopUp.class::isInstance)
                        .map(r -> ((PriceReason.TopUp) r).share())
                        .toList());
    }

    public Money net() {
        return netBeforeTopUp().plus(topUp());
    }
}
