package eaveside.catalog;

import eaveside.kernel.Refusal;
import java.time.LocalDate;

/** What this module refuses. */
public abstract sealed class CatalogRefusal extends Refusal {
    private static final long serialVersionUID = 1;

    private CatalogRefusal(Type type, String message, String... fields) {
        super(type, message, fields);
    }

    /** The tax code is known, but only from a later day on. */
    public static final class NoTaxOn extends CatalogRefusal {
        private static final long serialVersionUID = 1;

        public NoTaxOn(TaxCode code, LocalDate date) {
            super(
                    Type.RULE,
                    "{field} " + code + " has no setting in force on " + date
                            + ". Correct the date, or set one that begins earlier",
                    "taxCode");
        }
    }

    public static final class BadCode extends CatalogRefusal {
        private static final long serialVersionUID = 1;

        public BadCode(String field, String code) {
            super(
                    Type.RULE,
                    "{field} takes capitals A to Z, digits and inner hyphens, at most 20, not '" + code + "'",
                    field);
        }
    }

    /** More than a crew can do on one visit: a slip of the keyboard. */
    public static final class TooMuchWork extends CatalogRefusal {
        private static final long serialVersionUID = 1;

        public TooMuchWork(StandardMinutes minutes, StandardMinutes most, String field) {
            super(
                    Type.RULE,
                    "The work comes to " + minutes + " by its standard, and one visit takes at most " + most
                            + ". Correct {field}",
                    field);
        }
    }

    public static final class RateDoesNotFit extends CatalogRefusal {
        private static final long serialVersionUID = 1;

        public RateDoesNotFit(TaxCategory category) {
            super(
                    Type.RULE,
                    category.hasRate()
                            ? "{field} in category " + category + " is above zero and at most 100%"
                            : "{field} is empty in category " + category,
                    "rate");
        }
    }

    public static final class ReasonDoesNotFit extends CatalogRefusal {
        private static final long serialVersionUID = 1;

        public ReasonDoesNotFit(TaxCategory category) {
            super(
                    Type.RULE,
                    category.needsReason()
                            ? "{field} is required in category " + category
                            : "{field} is empty in category " + category,
                    "exemptionReason");
        }
    }

    /** A service that does not fit what it is to be done on: another type of surface, another unit. */
    public static final class ServiceItemDoesNotFit extends CatalogRefusal {
        private static final long serialVersionUID = 1;

        public ServiceItemDoesNotFit(String serviceItem, String why) {
            this(serviceItem, why, "serviceItem");
        }

        /** @param  field what does not fit the service where that is something else, such as a quantity in another unit */
        public ServiceItemDoesNotFit(String serviceItem, String why, String field) {
            super(Type.RULE, serviceItem + " " + why, field);
        }
    }
}
