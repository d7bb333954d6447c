package eaveside.invoicing;

/** What becomes of a customer's unapplied credit when an invoice is issued. */
public enum CreditOnHand {
    /** Nobody has decided: the issue is refused where there is credit that the invoice could take. */
    ASK,
    /** The invoice takes as much as there is, up to its amount due, beside what its draft takes already. */
    APPLY,
    /** The credit stays unapplied, but for what the draft takes. */
    KEEP
}
