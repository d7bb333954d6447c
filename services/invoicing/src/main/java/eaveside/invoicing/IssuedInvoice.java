package eaveside.invoicing;

import eaveside.catalog.TaxCategory;
import eaveside.catalog.TaxCode;
import eaveside.customers.Address;
import eaveside.kernel.CustomerId;
import eaveside.kernel.DocumentId;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.InvoiceLineId;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.VisitId;
import eaveside.ledger.DocumentType;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * An invoice as it was issued. Only what settles it still changes: its open balance, and whether it has been credited.
 *
 * @param  customerName     and the address: as they were on the day of issue
 * @param  exemptionReasons printed beside the categories without tax, by category
 * @param  open             still to be paid
 * @param  creditMemo       that took it back in full
 * @param  settlements      in the order that they were posted
 */
public record IssuedInvoice(
        InvoiceId id,
        long number,
        LocalDate date,
        LocalDate dueDate,
        LocalDate serviceDate,
        CustomerId customer,
        String customerName,
        Address address,
        @Nullable VisitId visit,
        String reference,
        String note,
        List<Line> lines,
        List<InvoiceInput.DocumentAdjustment> adjustments,
        InvoiceTotals totals,
        Map<TaxCategory, String> exemptionReasons,
        Money open,
        @Nullable CreditMemo creditMemo,
        List<Settlement> settlements) {
    public IssuedInvoice {
        lines = List.copyOf(lines);
        adjustments = List.copyOf(adjustments);
        exemptionReasons = Map.copyOf(exemptionReasons);
        settlements = List.copyOf(settlements);
    }

    /** How much of what it comes to is not due any more. */
    public Money settled() {
        return totals.gross().plus(totals.rounding()).minus(open);
    }

    /**
     * A line as it was billed.
     *
     * @param  tax that its code stood for on the service date
     */
    public record Line(
            InvoiceLineId id,
            ServiceLineId serviceLine,
            String description,
            Quantity quantity,
            ItemPrice price,
            List<Adjustment> adjustments,
            TaxCode taxCode,
            TaxRate tax,
            Money net,
            @Nullable LineOrigin origin) {
        public Line {
            adjustments = List.copyOf(adjustments);
        }

        /** Whether it bills no-charge work. */
        public boolean isNoCharge() {
            return origin != null && origin.noCharge();
        }
    }

    /** The document that takes the invoice back. */
    public record CreditMemo(DocumentId id, long number, LocalDate date, String reason) {}

    /** What a document settled: above zero where it paid or matched, below where it took that back. */
    public record Settlement(DocumentId document, DocumentType type, long number, LocalDate date, Money amount) {}
}
