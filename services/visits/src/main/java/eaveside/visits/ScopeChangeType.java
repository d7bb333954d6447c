package eaveside.visits;

/** How a sheet differs from the plan. */
public enum ScopeChangeType {
    /** Planned and not done. */
    SKIPPED,
    /** Done and not planned. */
    EXTRA
}
