package eaveside.inventory;

/** What the n of "1 : n" counts; the trade writes both the same way. */
public enum RatioMeaning {
    /** One part in n parts of finished solution. */
    IN_SOLUTION,
    /** One part added to n parts of water. */
    ADDED_TO_WATER
}
