package eaveside.visits;

/** What the office decides about a scope change. */
public enum ScopeDecision {
    /** Nobody has decided yet. */
    OPEN(true, true, false),
    /** Extra work goes on the invoice, at the visit's prices. */
    BILL(false, true, true),
    /** Extra work is no-charge work: not billed, its value recorded. */
    NO_CHARGE(false, true, true),
    /** The customer is asked first; the visit cannot be billed before the answer. */
    ASK(true, true, false),
    /** Skipped work is done at a later visit. */
    RETURN_VISIT(true, false, true),
    /** Skipped work stays undone and not billed. */
    CANCEL(true, false, true);

    private final boolean forSkipped;
    private final boolean forExtra;
    private final boolean settled;

    ScopeDecision(boolean forSkipped, boolean forExtra, boolean settled) {
        this.forSkipped = forSkipped;
        this.forExtra = forExtra;
        this.settled = settled;
    }

    /** Whether it suits that type of scope change. */
    public boolean suits(ScopeChangeType type) {
        return type == ScopeChangeType.SKIPPED ? forSkipped : forExtra;
    }

    /** Whether the visit may be billed with it. */
    public boolean isSettled() {
        return settled;
    }
}
