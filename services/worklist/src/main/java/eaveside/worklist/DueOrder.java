package eaveside.worklist;

/** Which comes first within a type; what is urgent does where they are equal. */
public enum DueOrder {
    /** What is urgent, then what has been due longest. */
    AGE,
    /** What is worth most. */
    AMOUNT
}
