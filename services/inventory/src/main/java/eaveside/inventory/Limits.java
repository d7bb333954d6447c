package eaveside.inventory;

import eaveside.kernel.Decision;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import java.math.BigDecimal;

/** Bounds on what people enter, well inside what the columns of the stock ledger hold, and on what adds up there. */
@Decision
final class Limits {
    private static final BigDecimal COLUMN = BigDecimal.TEN.pow(12);

    private Limits() {}

    static Quantity positive(String field, Quantity quantity) {
        if (!quantity.isPositive()) {
            throw new KernelRefusal.NotPositive(field);
        }
        return bounded(field, quantity);
    }

    static Quantity notNegative(String field, Quantity quantity) {
        if (quantity.isNegative()) {
            throw new KernelRefusal.Negative(field);
        }
        return bounded(field, quantity);
    }

    /** Likewise, of what is taken: above zero. */
    static Quantity taken(String field, Quantity quantity) {
        if (!quantity.isPositive()) {
            throw new KernelRefusal.NotPositive(field);
        }
        return held(field, quantity);
    }

    /** What is there adds up beyond what is entered at once, and all of it must come out again: bounded by the columns alone. */
    static Quantity held(String field, Quantity quantity) {
        if (quantity.isNegative()) {
            throw new KernelRefusal.Negative(field);
        }
        if (quantity.value().compareTo(COLUMN) >= 0) {
            throw new KernelRefusal.TooLarge(field, quantity.said());
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
