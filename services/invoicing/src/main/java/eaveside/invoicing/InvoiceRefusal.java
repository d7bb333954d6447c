package eaveside.invoicing;

import eaveside.kernel.Refusal;
import java.time.LocalDate;

/** What invoicing refuses. */
public abstract sealed class InvoiceRefusal extends Refusal {
    private static final long serialVersionUID = 1;

    private InvoiceRefusal(Type type, String message, String... fields) {
        super(type, message, fields);
    }

    public static final class NoSuchDraft extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        public NoSuchDraft(String id) {
            super(Type.NOT_FOUND, "There is no invoice draft " + id);
        }
    }

    public static final class NoSuchInvoice extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        public NoSuchInvoice(String id) {
            super(Type.NOT_FOUND, "There is no invoice " + id);
        }
    }

    public static final class NoSuchPayment extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        public NoSuchPayment(String id) {
            super(Type.NOT_FOUND, "There is no payment " + id);
        }
    }

    public static final class NoSuchApplication extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        public NoSuchApplication(String id) {
            super(Type.NOT_FOUND, "There is no matching of credit " + id);
        }
    }

    /** A key to page on from that no page gave out. */
    public static final class BadPageKey extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        public BadPageKey(String key) {
            super(Type.MALFORMED, "'" + key + "' is not the key of a page", "after");
        }
    }

    public static final class NoLines extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        public NoLines() {
            super(Type.RULE, "An invoice has at least one line", "lines");
        }
    }

    /** An allowance is not a charge below zero: the type says which way it counts. */
    public static final class NegativeAdjustment extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        public NegativeAdjustment(String amount) {
            super(Type.RULE, "An allowance or charge cannot be below zero: " + amount, "adjustments");
        }
    }

    /** EN 16931 BR-27: take the work back by a quantity below zero instead. */
    public static final class NegativePrice extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        public NegativePrice(String field) {
            super(Type.RULE, "The " + field + " cannot be below zero, nor the discount above the price", field);
        }
    }

    public static final class RateNotOfCategory extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        public RateNotOfCategory(String category, String rate) {
            super(Type.RULE, "Tax category " + category + " does not go with a rate of " + rate, "rate");
        }
    }

    public static final class TooLarge extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        public TooLarge(String amount) {
            super(Type.RULE, "The books cannot hold an amount as large as " + amount, "lines");
        }
    }

    /** Money given back is a credit memo or a payment back, not an invoice below zero. */
    public static final class NegativeTotal extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        public NegativeTotal(String gross) {
            super(Type.RULE, "An invoice cannot be issued for " + gross + ", below zero", "lines");
        }
    }

    public static final class LineTwice extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        public LineTwice(String id) {
            super(Type.RULE, "The line " + id + " is there twice", "lines");
        }
    }

    /** A given line takes off its whole value by itself. */
    public static final class NoChargeAdjusted extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        public NoChargeAdjusted(String description) {
            super(
                    Type.RULE,
                    "'" + description + "' is given: it takes no allowance or charge of its own",
                    "adjustments");
        }
    }

    public static final class ServiceDateTooEarly extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        public ServiceDateTooEarly(LocalDate date, LocalDate booksFrom) {
            super(
                    Type.RULE,
                    "The service date " + date + " lies before the books, which begin on " + booksFrom,
                    "serviceDate");
        }
    }

    public static final class AlreadyIssued extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        public AlreadyIssued(String label) {
            super(Type.CONFLICT, "The draft has been issued already, as " + label);
        }
    }

    public static final class VisitDrafted extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        public VisitDrafted(String draft) {
            super(Type.CONFLICT, "The visit is already on the draft " + draft);
        }
    }

    public static final class NothingToBill extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        public NothingToBill() {
            super(Type.RULE, "Nothing was done on the visit that could be billed: close it unbilled instead");
        }
    }

    /** Decisions on the visit were changed after the draft was made. */
    public static final class VisitChanged extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        public VisitChanged() {
            super(
                    Type.CONFLICT,
                    "The visit has changed since the draft was made: discard the draft and bill the visit again");
        }
    }

    /** One id, two contents. */
    public static final class IdTaken extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        public IdTaken(String id) {
            super(Type.CONFLICT, "The id " + id + " was already used with other content");
        }
    }

    public static final class AlreadyCredited extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        public AlreadyCredited(String invoice, String note) {
            super(Type.CONFLICT, invoice + " has already been credited, by " + note);
        }
    }

    public static final class NotCredited extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        public NotCredited(String number) {
            super(Type.NOT_FOUND, "Invoice " + number + " has not been credited");
        }
    }

    public static final class Credited extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        public Credited(String invoice) {
            super(Type.RULE, invoice + " has been credited: nothing is owed on it", "invoice");
        }
    }

    public static final class NotPositive extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        public NotPositive(String field) {
            super(Type.RULE, "The " + field + " must be above zero", field);
        }
    }

    public static final class NegativePrepaid extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        public NegativePrepaid(String amount) {
            super(Type.RULE, "What was paid before cannot be below zero: " + amount, "prepaid");
        }
    }

    public static final class RoundingTooLarge extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        public RoundingTooLarge(String amount, String most) {
            super(
                    Type.RULE,
                    "A rounding of " + amount + " is too large: it is at most " + most + " up or down",
                    "rounding");
        }
    }

    /** Money does not become credit because somebody forgot to say what it pays. */
    public static final class NothingChosen extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        public NothingChosen() {
            super(
                    Type.RULE,
                    "Nothing says what the payment pays: apply it to invoices, or keep it as unapplied credit",
                    "allocations");
        }
    }

    /** The customer has credit that the invoice could take, and nobody has said whether it shall. */
    public static final class CreditNotDecided extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        public CreditNotDecided(String credit) {
            super(
                    Type.RULE,
                    "The customer has " + credit + " of unapplied credit: apply it to this invoice, or keep it",
                    "applyCredit");
        }
    }

    /** Credit is there from the posting date of the money on. */
    public static final class BeforeCredit extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        public BeforeCredit(LocalDate date, String missing) {
            super(
                    Type.RULE,
                    "On " + date + " the customer's credit falls short by " + missing
                            + ": the rest came in later, or was used later",
                    "date");
        }
    }

    public static final class AllocatedTwice extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        public AllocatedTwice(String invoice) {
            super(Type.RULE, invoice + " is named twice", "allocations");
        }
    }

    public static final class OverAllocated extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        public OverAllocated(String invoice, String open) {
            super(Type.RULE, invoice + " has only " + open + " open", "allocations");
        }
    }

    public static final class AllocatedBeyondPayment extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        public AllocatedBeyondPayment(String allocated, String amount) {
            super(Type.RULE, "The allocations come to " + allocated + ", the payment only to " + amount, "allocations");
        }
    }

    public static final class OtherCustomer extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        public OtherCustomer(String invoice) {
            super(Type.RULE, invoice + " is another customer's", "allocations");
        }
    }

    public static final class NotEnoughCredit extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        public NotEnoughCredit(String needed, String credit) {
            super(Type.RULE, "The customer has a credit of " + credit + ", not " + needed, "amount");
        }
    }

    /** The payment's unmatched part has paid other invoices meanwhile. */
    public static final class CreditUsed extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        public CreditUsed(String needed, String credit) {
            super(
                    Type.RULE,
                    "The payment left a credit of " + needed + " of which only " + credit
                            + " is still there: free the invoices that it was matched with first");
        }
    }

    /** Somebody else saved first; carries both versions to compare. */
    public static final class DraftChanged extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        private final transient InvoiceDraft theirs;
        private final transient DraftContent yours;

        public DraftChanged(DraftContent yours, InvoiceDraft theirs) {
            super(
                    Type.CONFLICT,
                    "Somebody else changed the draft meanwhile: it is at version " + theirs.version() + " now",
                    "version");
            this.yours = yours;
            this.theirs = theirs;
        }

        /** What was not saved, or not issued. */
        public DraftContent yours() {
            return yours;
        }

        /** What is stored now. */
        public InvoiceDraft theirs() {
            return theirs;
        }
    }
}
