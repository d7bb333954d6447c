package eaveside.invoicing;

/** How money came in, or went back. */
public enum PaymentMethod {
    CASH,
    CHECK,
    CARD,
    BANK_TRANSFER,
    OTHER
}
