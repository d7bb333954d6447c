package eaveside.pricing;

import eaveside.kernel.Refusal;
import java.time.LocalDate;

/** What pricing refuses. */
public abstract sealed class PricingRefusal extends Refusal {
    private static final long serialVersionUID = 1;

    private PricingRefusal(Type type, String message, String... fields) {
        super(type, message, fields);
    }

    public static final class NothingPriced extends PricingRefusal {
        private static final long serialVersionUID = 1;

        public NothingPriced(String book) {
            super(Type.RULE, "The price book '" + book + "' has no prices yet", "prices");
        }
    }

    /** A draft prices nothing. */
    public static final class NotPublished extends PricingRefusal {
        private static final long serialVersionUID = 1;

        public NotPublished(String name) {
            super(Type.RULE, "The price book '" + name + "' is a draft. Publish it before pricing from it");
        }
    }

    /** A published book never changes. */
    public static final class AlreadyPublished extends PricingRefusal {
        private static final long serialVersionUID = 1;

        public AlreadyPublished(String name) {
            super(Type.CONFLICT, "The price book '" + name + "' is published and cannot change. Copy it to a new one");
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
                    "{field} must be " + today + " or later: another price book was in force on " + from,
                    "from");
        }
    }

    /** A service, by its id or name, that the book has no price for. */
    public static final class NotInBook extends PricingRefusal {
        private static final long serialVersionUID = 1;

        public NotInBook(String serviceItem, String book) {
            super(Type.RULE, "The price book '" + book + "' has no price for " + serviceItem, "serviceItem");
        }
    }

    public static final class NothingToPrice extends PricingRefusal {
        private static final long serialVersionUID = 1;

        public NothingToPrice() {
            super(Type.RULE, "{field} are required: select at least one service", "lines");
        }
    }

    /** A price whose explanation says another figure; cannot happen through the engine. */
    public static final class Unexplained extends PricingRefusal {
        private static final long serialVersionUID = 1;

        public Unexplained() {
            super(Type.RULE, "The price and its explanation do not agree", "explanation");
        }
    }

    /** Accepted and declined quotes never change. */
    public static final class QuoteClosed extends PricingRefusal {
        private static final long serialVersionUID = 1;

        /** @param  status in words */
        public QuoteClosed(long number, String status) {
            super(Type.CONFLICT, "Quote " + number + " is already " + status + " and cannot change");
        }
    }

    public static final class QuoteExpired extends PricingRefusal {
        private static final long serialVersionUID = 1;

        public QuoteExpired(long number, LocalDate validUntil) {
            super(
                    Type.RULE,
                    "Quote " + number + " expired after " + validUntil + ". Revise it to price it again",
                    "validUntil");
        }
    }

    public static final class ValidityEnded extends PricingRefusal {
        private static final long serialVersionUID = 1;

        public ValidityEnded(LocalDate today) {
            super(Type.RULE, "{field} must be " + today + " or later", "validUntil");
        }
    }

    /** A site of another customer, or a surface of another site. */
    public static final class Elsewhere extends PricingRefusal {
        private static final long serialVersionUID = 1;

        public Elsewhere(String field, String message) {
            super(Type.RULE, message, field);
        }
    }

    /** A service that does not fit: another type of surface, another unit. */
    public static final class ServiceItemDoesNotFit extends PricingRefusal {
        private static final long serialVersionUID = 1;

        public ServiceItemDoesNotFit(String serviceItem, String why) {
            super(Type.RULE, serviceItem + " " + why, "serviceItem");
        }
    }

    /** A page key that no list gave out. */
    public static final class BadKey extends PricingRefusal {
        private static final long serialVersionUID = 1;

        public BadKey() {
            super(Type.MALFORMED, "{field} must be the 'next' of a page of this list", "after");
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
