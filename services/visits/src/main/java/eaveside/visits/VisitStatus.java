package eaveside.visits;

/** Where a visit stands. */
public enum VisitStatus {
    SCHEDULED,
    /** Will not take place; final. */
    CANCELED,
    /** Its sheet is signed off and its cost waits in work in progress. */
    COMPLETED,
    /** An issued invoice has taken it. */
    BILLED,
    /** Closed without an invoice. */
    CLOSED_NOT_BILLED
}
