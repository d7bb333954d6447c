package eaveside.visits;

/** Where a visit stands. */
public enum VisitStatus {
    PLANNED,
    /** Will not take place; final. */
    CANCELLED,
    /** Its sheet is signed off and its cost waits in work in progress. */
    DONE,
    /** An issued invoice has taken it. */
    BILLED,
    /** Closed without an invoice. */
    CLOSED_UNBILLED
}
