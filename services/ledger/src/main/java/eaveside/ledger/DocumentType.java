package eaveside.ledger;

/** The types of posted documents; each has its own gapless series of numbers, starting at 1. */
public enum DocumentType {
    /** A free journal. */
    JOURNAL,
    /** Wages, fuel, rent, a supplier's bill. */
    EXPENSE,
    /** Goods received into a location. */
    RECEIPT,
    /** Goods moved between locations, at their cost. */
    TRANSFER,
    /** A count that differs from the books. */
    COUNT,
    /** Goods thrown away. */
    WRITE_OFF,
    /** A signed-off visit. */
    JOB_SHEET,
    /** A visit with nothing to bill: its cost leaves work in progress. */
    VISIT_CLOSING,
    INVOICE,
    /** Reverses an invoice in full. */
    CREDIT_MEMO,
    PAYMENT,
    /** A customer's credit matched with an invoice, or freed from it: no money moves. */
    CREDIT_APPLICATION,
    PERIOD_CLOSE,
    /** Reverses any other document in full. */
    REVERSAL
}
