package eaveside.costing;

import eaveside.kernel.Money;
import java.util.List;

/**
 * What a visit cost beside its consumables, and each service line's share of it. The shares add up to the totals.
 *
 * @param  rates    the rates that were applied
 * @param  effort   what they were applied to
 * @param  sharedBy what the shares were weighed by
 */
public record AppliedCost(
        CostRates rates,
        Effort effort,
        Money labor,
        Money travel,
        Money overhead,
        SharedBy sharedBy,
        List<LineCost> lines) {
    /** What the shares of the service lines are weighed by. */
    public enum SharedBy {
        /** The standard minutes of what was done. */
        DONE,
        /** The standard minutes of what was planned, since nothing was done that takes any. */
        PLANNED,
        /** Evenly, since nothing done or planned has standard minutes. */
        EVENLY
    }

    public AppliedCost {
        lines = List.copyOf(lines);
    }

    public Money total() {
        return labor.plus(travel).plus(overhead);
    }
}
