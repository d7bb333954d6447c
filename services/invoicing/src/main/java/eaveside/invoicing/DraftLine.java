package eaveside.invoicing;

import eaveside.catalog.TaxCode;
import eaveside.kernel.InvoiceLineId;
import eaveside.kernel.Quantity;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.Texts;
import java.util.List;

/**
 * A line of a draft as it is written.
 *
 * @param  id          stays with the line through edits
 * @param  serviceLine whose revenue it is
 * @param  description printed on the invoice
 * @param  quantity    below zero for work taken back
 * @param  taxCode     which of the owner's tax settings it falls under
 */
public record DraftLine(
        InvoiceLineId id,
        ServiceLineId serviceLine,
        String description,
        Quantity quantity,
        ItemPrice price,
        List<Adjustment> adjustments,
        TaxCode taxCode) {
    public DraftLine {
        description = Texts.required("description", description, 500);
        adjustments = List.copyOf(adjustments);
    }

    /** Whether it comes to the same amount for the same reasons. */
    public boolean isPricedAs(DraftLine other) {
        return quantity.equals(other.quantity) && price.equals(other.price) && adjustments.equals(other.adjustments);
    }
}
