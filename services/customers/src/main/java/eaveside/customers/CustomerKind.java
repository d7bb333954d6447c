package eaveside.customers;

/** Whom an invoice goes to. */
public enum CustomerKind {
    HOUSEHOLD,
    BUSINESS
}
