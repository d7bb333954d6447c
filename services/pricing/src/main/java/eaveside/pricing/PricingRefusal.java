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
            super(Type.RULE, "The price book '" + name + "' is a draft. Publish it before pricing from it", "book");
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

        /** @param  fields which said the date, where one did */
        public NoBookInForce(LocalDate date, String... fields) {
            super(Type.RULE, "No price book is in force on " + date, fields);
        }
    }

    /** A service, by its id or name, that the book has no price for. */
    public static final class NotInBook extends PricingRefusal {
        private static final long serialVersionUID = 1;

        public NotInBook(String serviceItem, String book) {
            super(Type.RULE, "The price book '" + book + "' has no price for " + serviceItem, "serviceItem");
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

    /** A site of another customer, or a surface of another site. */
    public static final class Elsewhere extends PricingRefusal {
        private static final long serialVersionUID = 1;

        public Elsewhere(String field, String message) {
            super(Type.RULE, message, field);
        }
    }
}
