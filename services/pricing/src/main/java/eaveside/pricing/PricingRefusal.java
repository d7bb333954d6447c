package eaveside.pricing;

import eaveside.kernel.Refusal;
import java.time.LocalDate;

/** What pricing refuses. */
public abstract sealed class PricingRefusal extends Refusal {
    private static final long serialVersionUID = 1;

    private PricingRefusal(Type type, String message, String... fields) {
        super(type, message, fields);
    }

    /** A price list that cannot be. */
    public static final class BadPriceList extends PricingRefusal {
        private static final long serialVersionUID = 1;

        public BadPriceList(String field, String message) {
            super(Type.RULE, message, field);
        }
    }

    public static final class NothingPriced extends PricingRefusal {
        private static final long serialVersionUID = 1;

        public NothingPriced(String book) {
            super(Type.RULE, "The price book '" + book + "' has no prices yet", "prices");
        }
    }

    public static final class NoSuchBook extends PricingRefusal {
        private static final long serialVersionUID = 1;

        public NoSuchBook(String id) {
            super(Type.NOT_FOUND, "There is no price book " + id);
        }
    }

    /** A draft prices nothing. */
    public static final class NotPublished extends PricingRefusal {
        private static final long serialVersionUID = 1;

        public NotPublished(String name) {
            super(Type.RULE, "The price book '" + name + "' is a draft; publish it before pricing from it");
        }
    }

    /** A published book never changes. */
    public static final class AlreadyPublished extends PricingRefusal {
        private static final long serialVersionUID = 1;

        public AlreadyPublished(String name) {
            super(Type.CONFLICT, "The price book '" + name + "' is published and never changes; make another one");
        }
    }

    public static final class NoBookInForce extends PricingRefusal {
        private static final long serialVersionUID = 1;

        public NoBookInForce(LocalDate date) {
            super(Type.RULE, "No price book is in force on " + date);
        }
    }

    /** Prices that were in force on a past day stay what they were. */
    public static final class BeginsInPast extends PricingRefusal {
        private static final long serialVersionUID = 1;

        public BeginsInPast(LocalDate from, LocalDate today) {
            super(
                    Type.RULE,
                    "Another price book was already in force on " + from + "; this one can begin on " + today
                            + " or later",
                    "from");
        }
    }

    /** A service, by its id, that the book has no price for. */
    public static final class NotInBook extends PricingRefusal {
        private static final long serialVersionUID = 1;

        public NotInBook(String serviceItem, String book) {
            super(Type.RULE, "The price book '" + book + "' has no price for " + serviceItem, "serviceItem");
        }
    }

    public static final class NothingToPrice extends PricingRefusal {
        private static final long serialVersionUID = 1;

        public NothingToPrice() {
            super(Type.RULE, "There is no work to price", "lines");
        }
    }

    public static final class QuantityNotPositive extends PricingRefusal {
        private static final long serialVersionUID = 1;

        public QuantityNotPositive(String quantity) {
            super(Type.RULE, "The quantity " + quantity + " is not above zero", "quantity");
        }
    }

    public static final class BadFixedPrice extends PricingRefusal {
        private static final long serialVersionUID = 1;

        public BadFixedPrice(String price) {
            super(Type.RULE, "The price " + price + " is below zero", "fixedUnitPrice");
        }
    }

    /** A price whose explanation says another figure; cannot happen through the engine. */
    public static final class Unexplained extends PricingRefusal {
        private static final long serialVersionUID = 1;

        public Unexplained() {
            super(Type.RULE, "The price and its explanation do not agree", "explanation");
        }
    }

    public static final class NoSuchQuote extends PricingRefusal {
        private static final long serialVersionUID = 1;

        public NoSuchQuote(String id) {
            super(Type.NOT_FOUND, "There is no quote " + id);
        }
    }

    public static final class NoSuchQuoteLine extends PricingRefusal {
        private static final long serialVersionUID = 1;

        public NoSuchQuoteLine(String id) {
            super(Type.NOT_FOUND, "There is no quote line " + id);
        }
    }

    /** One id, two contents. */
    public static final class IdTaken extends PricingRefusal {
        private static final long serialVersionUID = 1;

        public IdTaken(String id, String existing) {
            super(Type.CONFLICT, "The id " + id + " was already used with other content, for " + existing);
        }
    }

    /** Somebody else changed it since it was read; carries both to compare. */
    public static final class ChangedMeanwhile extends PricingRefusal {
        private static final long serialVersionUID = 1;

        private final transient Record yours;
        private final transient Record theirs;

        public ChangedMeanwhile(String what, Record yours, Record theirs) {
            super(Type.CONFLICT, what + " was changed by somebody else since you read it", "version");
            this.yours = yours;
            this.theirs = theirs;
        }

        /** The command that was not carried out. */
        public Record yours() {
            return yours;
        }

        /** What is stored, with its version: a change that starts from it can be saved. */
        public Record theirs() {
            return theirs;
        }
    }

    /** Agreed and declined quotes never change. */
    public static final class QuoteClosed extends PricingRefusal {
        private static final long serialVersionUID = 1;

        public QuoteClosed(long number, String status) {
            super(Type.CONFLICT, "Quote " + number + " is already " + status + " and no longer changes");
        }
    }

    public static final class QuoteExpired extends PricingRefusal {
        private static final long serialVersionUID = 1;

        public QuoteExpired(long number, LocalDate validUntil) {
            super(
                    Type.RULE,
                    "Quote " + number + " was valid until " + validUntil + "; revise it to price it anew",
                    "validUntil");
        }
    }

    public static final class ValidityEnded extends PricingRefusal {
        private static final long serialVersionUID = 1;

        public ValidityEnded(LocalDate validUntil, LocalDate today) {
            super(Type.RULE, "A quote valid until " + validUntil + " would have expired by " + today, "validUntil");
        }
    }

    /** A site of another customer, or a surface of another site. */
    public static final class Elsewhere extends PricingRefusal {
        private static final long serialVersionUID = 1;

        public Elsewhere(String field, String message) {
            super(Type.RULE, message, field);
        }
    }

    /** A service that does not fit: no longer offered, another type of surface, another unit. */
    public static final class ServiceItemDoesNotFit extends PricingRefusal {
        private static final long serialVersionUID = 1;

        public ServiceItemDoesNotFit(String serviceItem, String why) {
            super(Type.RULE, serviceItem + " " + why, "serviceItem");
        }
    }

    /** A page key that no list gave out. */
    public static final class BadKey extends PricingRefusal {
        private static final long serialVersionUID = 1;

        public BadKey(String key) {
            super(Type.MALFORMED, "'" + key + "' is not the key of a page", "after");
        }
    }

    public static final class TooManyLines extends PricingRefusal {
        private static final long serialVersionUID = 1;

        public TooManyLines(int most) {
            super(Type.RULE, "A quote has at most " + most + " lines", "lines");
        }
    }

    public static final class LineTwice extends PricingRefusal {
        private static final long serialVersionUID = 1;

        public LineTwice() {
            super(Type.RULE, "Two lines of the quote have one id", "lines");
        }
    }
}
