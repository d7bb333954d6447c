package eaveside.visits;

/** How a sheet differs from the plan. */
public enum DifferenceKind {
    /** Planned and not done. */
    SKIPPED,
    /** Done and not planned. */
    EXTRA
}
