package eaveside.margins;

import eaveside.kernel.Money;
import eaveside.ledger.EntryFilter;

/**
 * A figure that opens: the sum of the entries of a filter, as the report shows it.
 *
 * @param  amount as shown
 * @param  opens  the entries behind it
 * @param  side   which way it is shown
 */
public record Figure(Money amount, EntryFilter opens, Side side) {
    /** Whether the figure grows with debits or with credits. */
    public enum Side {
        /** Costs, and no-charge work. */
        DEBIT,
        /** Revenue, margin and result. */
        CREDIT
    }

    /** From a sum of entries, debit above zero. */
    public static Figure of(Money sum, EntryFilter opens, Side side) {
        return new Figure(side == Side.DEBIT ? sum : sum.negated(), opens, side);
    }

    /** The sum of the entries that it opens, debit above zero: what the ledger itself must answer for the filter. */
    public Money ledgerSum() {
        return side == Side.DEBIT ? amount : amount.negated();
    }
}
