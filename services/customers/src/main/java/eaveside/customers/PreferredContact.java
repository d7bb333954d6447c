package eaveside.customers;

/** How a customer would like to be reached. */
public enum PreferredContact {
    CALL,
    TEXT,
    EMAIL
}
