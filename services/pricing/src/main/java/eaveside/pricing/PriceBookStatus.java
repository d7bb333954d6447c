package eaveside.pricing;

/** What a price book is today. */
public enum PriceBookStatus {
    /** Still being written. */
    DRAFT,
    /** Published for a later day. */
    UPCOMING,
    /** Work is priced from it. */
    IN_FORCE,
    /** Another book has taken its place. */
    REPLACED
}
