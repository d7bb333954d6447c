package eaveside.visits;

/** Which visits a list shows, and in which order. */
public enum VisitsShown {
    /** Scheduled, the earliest day first: what is overdue leads. */
    SCHEDULED,
    /** Scheduled for today, whatever became of them, but for canceled ones. */
    TODAY,
    /** Completed and not billed, the oldest work first. */
    COMPLETED,
    /** Every visit, the latest scheduled day first. */
    ALL
}
