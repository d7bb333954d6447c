package eaveside.ledger;

/** The kinds of posted documents; each has its own gapless series of numbers, starting at 1. */
public enum DocumentKind {
    /** A free journal. */
    JOURNAL,
    /** Wages, fuel, rent, a supplier's bill. */
    COST,
    /** Goods received into a place. */
    RECEIPT,
    /** Goods moved between places, at their cost. */
    TRANSFER,
    /** A count that differs from the books. */
    COUNT,
    /** Goods thrown away. */
    SCRAP,
    /** A signed-off visit. */
    VISIT_SHEET,
    /** A visit with nothing to bill: its cost leaves work in progress. */
    UNBILLED,
    INVOICE,
    /** Reverses an invoice in full. */
    CREDIT_NOTE,
    PAYMENT,
    /** A customer's credit matched with an invoice, or freed from it: no money moves. */
    CREDIT_MATCH,
    PERIOD_CLOSE,
    /** Reverses any other document in full. */
    REVERSAL
}
