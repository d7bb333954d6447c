package eaveside.inventory;

/** What a counted quantity says. */
public enum CountBasis {
    /** There was this much at the end of the count's day. */
    FOUND,
    /** There is this much more (above zero) or less (below) than the books hold. */
    DIFFERENCE
}
