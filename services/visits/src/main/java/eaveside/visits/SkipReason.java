package eaveside.visits;

/** Why units that were planned were not done. Skipped units are not billed. */
public enum SkipReason {
    /** Water may get in, and the unit needs replacing anyway. */
    CRACKED,
    WEATHER,
    NO_ACCESS,
    CUSTOMER_WISH,
    OTHER
}
