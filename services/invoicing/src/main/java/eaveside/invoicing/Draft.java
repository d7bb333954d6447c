package eaveside.invoicing;

import eaveside.catalog.TaxCode;
import eaveside.kernel.Check;
import eaveside.kernel.CustomerId;
import eaveside.kernel.Default;
import eaveside.kernel.Elements;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Money;
import eaveside.kernel.Records;
import eaveside.kernel.Versioned;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * An invoice as the office writes it, before it is issued.
 *
 * @param  id          made by the client; the invoice keeps it
 * @param  version     0 for a new one
 * @param  serviceDate when the work was done: the tax settings of that day apply
 * @param  reference   the customer's own, such as an order number (BT-10)
 * @param  prepaid     how much of the customer's unapplied credit the invoice takes when it is issued (BT-113), above zero;
 *                     null for none
 * @param  rounding    added to the amount due (BT-114), such as cash rounding, at most a hundred of the currency's smallest
 *                     unit either way; null for none
 */
public record Draft(
        InvoiceId id,
        @Default("0") int version,
        CustomerId customer,
        LocalDate serviceDate,
        @Default String reference,
        @Default String note,
        List<DraftLine> lines,
        List<OnDocument> adjustments,
        @Nullable Money prepaid,
        @Nullable Money rounding)
        implements Versioned {
    /** An allowance or charge on the whole invoice, under one of the owner's tax settings. */
    public record OnDocument(Adjustment.Type type, Money amount, String reason, TaxCode taxCode) {
        public OnDocument {
            reason = new Adjustment(type, amount, reason).reason();
        }

        public OnDocument(Adjustment adjustment, TaxCode taxCode) {
            this(adjustment.type(), adjustment.amount(), adjustment.reason(), taxCode);
        }

        public Adjustment adjustment() {
            return new Adjustment(type, amount, reason);
        }
    }

    public Draft {
        Check check = new Check();
        reference = check.optional("reference", reference, 100);
        note = check.optional("note", note, 2000);
        List<DraftLine> each = List.copyOf(lines);
        lines = each;
        adjustments = List.copyOf(adjustments);
        check.that(!lines.isEmpty(), () -> new KernelRefusal.NoRows("lines"));
        check.passes(() -> Elements.requireDistinct("lines", each, "id", DraftLine::id));
        prepaid = prepaid == null || prepaid.isZero() ? null : prepaid;
        rounding = rounding == null || rounding.isZero() ? null : rounding;
        InvoiceInput.payable(check, prepaid, rounding);
        check.done();
    }

    /** The same with another amount of the customer's credit taken. */
    public Draft withPrepaid(Money amount) {
        return Records.with(this, "prepaid", amount);
    }

    @Override
    public String what() {
        return "invoice draft";
    }
}
