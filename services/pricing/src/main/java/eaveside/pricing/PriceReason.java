package eaveside.pricing;

import eaveside.customers.SurfaceAttribute;
import eaveside.kernel.Money;
import eaveside.kernel.Percent;
import eaveside.kernel.Quantity;
import eaveside.kernel.UnitPrice;
import org.jspecify.annotations.Nullable;

/** One step on the way to a line's price, with the figure that it contributes. */
public sealed interface PriceReason {
    /** Where a unit price starts from. */
    sealed interface Start extends PriceReason {
        UnitPrice price();
    }

    /**
     * The book's price.
     *
     * @param  from    the step's least quantity
     * @param  reached the service's quantity on the whole visit, which chose the step
     */
    record FromBook(Quantity from, Quantity reached, UnitPrice price) implements Start {}

    /** The price that was quoted, surcharges and reductions included; it stays where fewer units are done. */
    record AsQuoted(UnitPrice price) implements Start {}

    /**
     * An attribute of the surface reaches a threshold.
     *
     * @param  percent of the book's price; null for a fixed surcharge
     * @param  added   to the unit price
     */
    record Surcharged(
            SurfaceAttribute attribute,
            int value,
            int atLeast,
            @Nullable Percent percent,
            UnitPrice added) implements PriceReason {}

    /**
     * Several services share the visit.
     *
     * @param  services  how many service lines
     * @param  takenOff  from the unit price
     */
    record SharedVisit(int services, Percent percent, UnitPrice takenOff) implements PriceReason {}

    /** What is missing to a minimum; this line's share of it. */
    sealed interface TopUp extends PriceReason {
        Money minimum();

        Money share();
    }

    /** To the minimum of the service line. */
    record ToLineMinimum(Money minimum, Money share) implements TopUp {}

    /** To the minimum of the visit. */
    record ToVisitMinimum(Money minimum, Money share) implements TopUp {}
}
