package eaveside.invoicing;

import eaveside.kernel.Refusal;
import java.time.LocalDate;

/** What invoicing refuses. */
public abstract sealed class InvoiceRefusal extends Refusal {
    private static final long serialVersionUID = 1;

    private InvoiceRefusal(Type type, String message, String... fields) {
        super(type, message, fields);
    }

    public static final class RateNotOfCategory extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        public RateNotOfCategory(String category, String rate) {
            super(Type.RULE, "Tax category " + category + " does not go with a rate of " + rate, "rate");
        }
    }

    /** Money given back is a credit memo or a payment back, not an invoice below zero. */
    public static final class NegativeTotal extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        public NegativeTotal(String gross) {
            super(
                    Type.RULE,
                    "The total is " + gross
                            + ". An invoice must not be below zero: record a refund or credit an invoice",
                    "lines");
        }
    }

    /** A no-charge line takes off its whole value by itself. */
    public static final class NoChargeAdjusted extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        public NoChargeAdjusted(String description) {
            super(Type.RULE, "'" + description + "' is no-charge work. Remove its allowances and charges", "lines");
        }
    }

    public static final class AlreadyIssued extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        public AlreadyIssued(String label) {
            super(Type.CONFLICT, "The draft was issued as " + label);
        }
    }

    public static final class VisitDrafted extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        public VisitDrafted(String draft) {
            super(Type.CONFLICT, "The visit is already on the draft " + draft, "visit");
        }
    }

    public static final class NothingToBill extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        public NothingToBill() {
            super(Type.RULE, "The visit has nothing to bill. Close it without billing instead", "visit");
        }
    }

    /** Decisions on the visit were changed after the draft was made. */
    public static final class VisitChanged extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        public VisitChanged() {
            super(
                    Type.CONFLICT,
                    "The visit changed after the draft was made. Discard the draft and bill the visit again");
        }
    }

    public static final class AlreadyCredited extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        public AlreadyCredited(String invoice, String note) {
            super(Type.CONFLICT, invoice + " was credited by " + note);
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
            super(Type.RULE, invoice + " was credited. Nothing is due on it", "invoice");
        }
    }

    public static final class RoundingTooLarge extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        public RoundingTooLarge(String most) {
            super(Type.RULE, "{field} must be at most " + most + " up or down", "rounding");
        }
    }

    /** Money does not become credit because it was forgotten to say what it pays. */
    public static final class NothingChosen extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        public NothingChosen() {
            super(
                    Type.RULE,
                    "The payment is not applied. Choose invoices, or keep it as unapplied credit",
                    "allocations");
        }
    }

    /** Somebody who types what is applied may have mistyped it: the rest becomes credit when that is said. */
    public static final class RestNotDecided extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        public RestNotDecided(String rest) {
            super(
                    Type.RULE,
                    rest + " of the payment is not applied. Apply it too, or keep it as unapplied credit",
                    "keepAsCredit");
        }
    }

    /** The customer has credit that the invoice could take, and nothing says whether it shall. */
    public static final class CreditNotDecided extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        public CreditNotDecided(String credit) {
            super(
                    Type.RULE,
                    "The customer has " + credit + " of unapplied credit. Choose whether to apply it to this invoice",
                    "credit");
        }
    }

    /** Credit is there from the posting date of the money on. */
    public static final class BeforeCredit extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        public BeforeCredit(LocalDate date, String missing) {
            super(
                    Type.RULE,
                    "On " + date + " the customer's unapplied credit is " + missing + " short. Choose a later date",
                    "date");
        }
    }

    public static final class OverAllocated extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        /** @param  field that holds the amount */
        public OverAllocated(String field, String invoice, String open) {
            super(Type.RULE, invoice + " has a balance due of only " + open, field);
        }
    }

    public static final class AllocatedBeyondPayment extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        public AllocatedBeyondPayment(String allocated, String amount) {
            super(Type.RULE, "The payment is " + amount + ", but " + allocated + " is applied", "allocations");
        }
    }

    public static final class OtherCustomer extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        public OtherCustomer(String invoice) {
            super(Type.RULE, invoice + " belongs to another customer", "invoice");
        }
    }

    public static final class NotEnoughCredit extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        public NotEnoughCredit(String needed, String credit) {
            super(Type.RULE, "The customer has " + credit + " of unapplied credit, not " + needed, "amount");
        }
    }

    /** The payment's unmatched part has paid other invoices meanwhile. */
    public static final class CreditUsed extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        public CreditUsed(String needed, String credit) {
            super(
                    Type.RULE,
                    "Only " + credit + " of the payment's " + needed
                            + " of unapplied credit is left. Unapply it from invoices first");
        }
    }

    /** A draft that is not as it was when it was read. */
    public static final class DraftChanged extends InvoiceRefusal {
        private static final long serialVersionUID = 1;

        public DraftChanged(int version) {
            super(
                    Type.CONFLICT,
                    "Another user changed the draft. Open it again and check it: it is at version " + version + " now",
                    "version");
        }
    }
}
