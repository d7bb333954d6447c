package eaveside.invoicing;

import eaveside.catalog.TaxCode;
import eaveside.kernel.Check;
import eaveside.kernel.InvoiceLineId;
import eaveside.kernel.Quantity;
import eaveside.kernel.ServiceLineId;
import java.util.List;

/**
 * A line of a draft as it is written.
 *
 * @param  id          made by the client; stays with the line through edits
 * @param  serviceLine whose revenue it is
 * @param  description printed on the invoice
 * @param  quantity    below zero for work taken back; of a unit like that of the price
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
        Check check = new Check();
        description = check.required("description", description, 500);
        adjustments = List.copyOf(adjustments);
        check.value(() -> price.requireFor(quantity), quantity);
        check.done();
    }

    /** Whether it comes to the same amount for the same reasons. */
    public boolean isPricedAs(DraftLine other) {
        return quantity.equals(other.quantity) && price.equals(other.price) && adjustments.equals(other.adjustments);
    }
}
