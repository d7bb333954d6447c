package eaveside.customers;

/** Whom an invoice goes to. */
public enum CustomerType {
    HOUSEHOLD,
    BUSINESS
}
