package eaveside.visits;

/** What the office decides about a difference. */
public enum DifferenceDecision {
    /** Nobody has decided yet. */
    OPEN(true, true, false),
    /** Extra work goes on the invoice, at the visit's prices. */
    BILL(false, true, true),
    /** Extra work is goodwill: not billed, its value recorded. */
    GIVE(false, true, true),
    /** The customer is asked first; the visit cannot be billed before the answer. */
    ASK(true, true, false),
    /** Skipped work is done at a later visit. */
    COME_BACK(true, false, true),
    /** Skipped work stays undone and unbilled. */
    LEAVE(true, false, true);

    private final boolean forSkipped;
    private final boolean forExtra;
    private final boolean settled;

    DifferenceDecision(boolean forSkipped, boolean forExtra, boolean settled) {
        this.forSkipped = forSkipped;
        this.forExtra = forExtra;
        this.settled = settled;
    }

    /** Whether it answers that kind of difference. */
    public boolean suits(DifferenceKind kind) {
        return kind == DifferenceKind.SKIPPED ? forSkipped : forExtra;
    }

    /** Whether the visit may be billed with it. */
    public boolean isSettled() {
        return settled;
    }
}
