package eaveside.invoicing;

import eaveside.kernel.Shared;

/** Computes an invoice's totals, in any currency, without storing anything. */
@Shared
public class PreviewInvoice {
    /** The totals of the input, by {@link InvoiceArithmetic}; refuses what a draft refuses, {@link InvoiceTotals#held}. */
    public InvoiceTotals preview(InvoiceInput input) {
        return InvoiceArithmetic.total(input).held();
    }
}
