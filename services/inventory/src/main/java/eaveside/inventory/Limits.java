package eaveside.inventory;

import eaveside.kernel.Decision;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;

/** Bounds on what people enter, well inside what the columns of the stock ledger hold, and on what adds up there. */
@Decision
final class Limits {
    private Limits() {}

    static Quantity positive(String field, Quantity quantity) {
        return above(field, quantity).bounded(field);
    }

    static Quantity notNegative(String field, Quantity quantity) {
        return notBelow(field, quantity).bounded(field);
    }

    /** What is there adds up beyond what is entered at once, and all of it must come out again. */
    static Quantity held(String field, Quantity quantity) {
        return notBelow(field, quantity).held(field);
    }

    /** Likewise, of what is taken: above zero. */
    static Quantity taken(String field, Quantity quantity) {
        return above(field, quantity).held(field);
    }

    private static Quantity above(String field, Quantity quantity) {
        if (!quantity.isPositive()) {
            throw new KernelRefusal.NotPositive(field);
        }
        return quantity;
    }

    private static Quantity notBelow(String field, Quantity quantity) {
        if (quantity.isNegative()) {
            throw new KernelRefusal.Negative(field);
        }
        return quantity;
    }

    static Money notNegative(String field, Money money) {
        if (money.isNegative()) {
            throw new KernelRefusal.Negative(field);
        }
        return money.bounded(field);
    }

    static Quantity bounded(String field, Quantity quantity) {
        return quantity.bounded(field);
    }
}
