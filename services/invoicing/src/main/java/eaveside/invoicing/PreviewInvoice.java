package eaveside.invoicing;

import jakarta.enterprise.context.Dependent;

/** Computes an invoice's totals, in any currency, without storing anything. */
@Dependent
public class PreviewInvoice {
    /** The totals of the input, by {@link InvoiceArithmetic}. */
    public InvoiceTotals preview(InvoiceInput input) {
        return InvoiceArithmetic.total(input);
    }
}
