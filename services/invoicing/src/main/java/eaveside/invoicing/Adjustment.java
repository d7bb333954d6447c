package eaveside.invoicing;

import eaveside.kernel.Check;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Money;

/**
 * An allowance or charge of an invoice line (EN 16931 BG-27, BG-28) or of the whole invoice (BG-20, BG-21).
 *
 * @param  amount before tax, never below zero; the type says which way it counts
 * @param  reason printed on the invoice
 */
public record Adjustment(Type type, Money amount, String reason) {
    /** Which way the amount counts. */
    public enum Type {
        /** Takes from the price. */
        ALLOWANCE,
        /** Adds to the price. */
        CHARGE
    }

    public Adjustment {
        Check check = new Check();
        reason = check.required("reason", reason, 200);
        check.that(!amount.isNegative(), () -> new KernelRefusal.Negative("amount"));
        check.done();
    }

    public static Adjustment allowance(Money amount, String reason) {
        return new Adjustment(Type.ALLOWANCE, amount, reason);
    }

    public static Adjustment charge(Money amount, String reason) {
        return new Adjustment(Type.CHARGE, amount, reason);
    }

    /** Above zero for a charge, below for an allowance. */
    public Money signed() {
        return type == Type.CHARGE ? amount : amount.negated();
    }
}
