package eaveside.invoicing;

import eaveside.catalog.TaxCode;
import eaveside.kernel.InvoiceLineId;
import eaveside.kernel.Money;
import eaveside.kernel.Texts;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * What the office writes on a draft.
 *
 * @param  serviceDate when the work was done: the tax settings of that day apply
 * @param  reference   the customer's own, such as an order number (BT-10)
 * @param  prepaid     how much of the customer's credit the invoice takes when it is issued (BT-113); not below zero
 * @param  rounding    added to the amount due (BT-114), such as cash rounding; at most a hundred of the smallest unit
 */
public record DraftContent(
        LocalDate serviceDate,
        String reference,
        String note,
        List<DraftLine> lines,
        List<OnDocument> adjustments,
        Money prepaid,
        Money rounding) {
    /** Without rounding. */
    public DraftContent(
            LocalDate serviceDate,
            String reference,
            String note,
            List<DraftLine> lines,
            List<OnDocument> adjustments,
            Money prepaid) {
        this(serviceDate, reference, note, lines, adjustments, prepaid, Money.zero(prepaid.currency()));
    }

    /** An allowance or charge on the whole invoice, under one of the owner's tax settings. */
    public record OnDocument(Adjustment adjustment, TaxCode taxCode) {}

    public DraftContent {
        reference = Texts.optional("reference", reference, 100);
        note = Texts.optional("note", note, 2000);
        lines = List.copyOf(lines);
        adjustments = List.copyOf(adjustments);
        if (lines.isEmpty()) {
            throw new InvoiceRefusal.NoLines();
        }
        Set<InvoiceLineId> seen = new HashSet<>();
        for (DraftLine line : lines) {
            if (!seen.add(line.id())) {
                throw new InvoiceRefusal.LineTwice(line.id().toString());
            }
        }
        InvoiceInput.requirePayable(prepaid, rounding);
    }

    /** The same with another amount of the customer's credit taken. */
    public DraftContent withPrepaid(Money amount) {
        return new DraftContent(serviceDate, reference, note, lines, adjustments, amount, rounding);
    }
}
