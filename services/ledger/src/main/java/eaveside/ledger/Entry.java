package eaveside.ledger;

import eaveside.kernel.CustomerId;
import eaveside.kernel.FindingId;
import eaveside.kernel.Money;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.Texts;
import eaveside.kernel.VisitId;
import org.jspecify.annotations.Nullable;

/**
 * One line of a document in the money ledger.
 *
 * @param  amount      debit above zero, credit below; never zero, and below a trillion either way
 * @param  serviceLine required on revenue, work in progress, service cost and no-charge work
 * @param  visit       required on work in progress, service cost and no-charge work
 * @param  customer    required on those and on receivables and customer credit
 * @param  costType    required on work in progress and service cost, absent elsewhere
 * @param  finding     on revenue: the finding that the quote of the work came from
 */
public record Entry(
        AccountRef account,
        Money amount,
        @Nullable ServiceLineId serviceLine,
        @Nullable VisitId visit,
        @Nullable CustomerId customer,
        @Nullable CostType costType,
        @Nullable FindingId finding,
        String note) {
    public Entry {
        if (amount.isZero()) {
            throw new LedgerRefusal.ZeroEntry(account.toString());
        }
        amount.held();
        note = Texts.optional("note", note, 500);
    }

    public static Entry debit(AccountRef account, Money amount) {
        return new Entry(account, amount, null, null, null, null, null, "");
    }

    public static Entry credit(AccountRef account, Money amount) {
        return debit(account, amount.negated());
    }

    public Entry on(@Nullable ServiceLineId line, @Nullable VisitId forVisit, @Nullable CustomerId forCustomer) {
        return new Entry(account, amount, line, forVisit, forCustomer, costType, finding, note);
    }

    public Entry of(CustomerId forCustomer) {
        return new Entry(account, amount, serviceLine, visit, forCustomer, costType, finding, note);
    }

    public Entry as(CostType type) {
        return new Entry(account, amount, serviceLine, visit, customer, type, finding, note);
    }

    public Entry cameFrom(@Nullable FindingId found) {
        return new Entry(account, amount, serviceLine, visit, customer, costType, found, note);
    }

    /** The same entry on the other side. */
    public Entry mirrored() {
        return new Entry(account, amount.negated(), serviceLine, visit, customer, costType, finding, note);
    }

    public Entry noted(String newNote) {
        return new Entry(account, amount, serviceLine, visit, customer, costType, finding, newNote);
    }
}
