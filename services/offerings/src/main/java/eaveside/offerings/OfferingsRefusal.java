package eaveside.offerings;

import eaveside.customers.SurfaceKind;
import eaveside.kernel.Percent;
import eaveside.kernel.Refusal;
import eaveside.kernel.Unit;
import java.time.LocalDate;
import java.util.Locale;

/** What this module refuses. */
public abstract sealed class OfferingsRefusal extends Refusal {
    private static final long serialVersionUID = 1;

    private OfferingsRefusal(Kind kind, String message, String... fields) {
        super(kind, message, fields);
    }

    public static final class NoSuchServiceLine extends OfferingsRefusal {
        private static final long serialVersionUID = 1;

        public NoSuchServiceLine(String id) {
            super(Kind.NOT_FOUND, "There is no service line " + id);
        }
    }

    public static final class NoSuchOffering extends OfferingsRefusal {
        private static final long serialVersionUID = 1;

        public NoSuchOffering(String id) {
            super(Kind.NOT_FOUND, "There is no offering " + id);
        }
    }

    public static final class NoSuchTaxCode extends OfferingsRefusal {
        private static final long serialVersionUID = 1;

        public NoSuchTaxCode(TaxCode code) {
            super(Kind.RULE, "There is no tax setting under the code " + code, "taxCode");
        }
    }

    /** The tax code is known, but only from a later day on. */
    public static final class NoTaxOn extends OfferingsRefusal {
        private static final long serialVersionUID = 1;

        public NoTaxOn(TaxCode code, LocalDate date) {
            super(Kind.RULE, "The tax code " + code + " has no setting in force on " + date, "taxCode");
        }
    }

    public static final class CodeTaken extends OfferingsRefusal {
        private static final long serialVersionUID = 1;

        public CodeTaken(String code, String name) {
            super(Kind.CONFLICT, "The code " + code + " is already taken by " + name, "code");
        }
    }

    public static final class BadCode extends OfferingsRefusal {
        private static final long serialVersionUID = 1;

        public BadCode(String field, String code) {
            super(
                    Kind.RULE,
                    "A code is capitals A to Z, digits and inner hyphens, at most 20; '" + code + "' is not",
                    field);
        }
    }

    /** Prices, plans and entries count on it: make another offering instead. */
    public static final class Fixed extends OfferingsRefusal {
        private static final long serialVersionUID = 1;

        public Fixed(String field) {
            super(Kind.RULE, "The " + field + " cannot be changed once it is saved; make another offering", field);
        }
    }

    public static final class UnitDoesNotFit extends OfferingsRefusal {
        private static final long serialVersionUID = 1;

        public UnitDoesNotFit(Unit unit, SurfaceKind kind) {
            super(
                    Kind.RULE,
                    "Surfaces of kind " + kind.name().toLowerCase(Locale.ROOT) + " are not counted in " + unit.code(),
                    "unit");
        }
    }

    public static final class NegativeMinutes extends OfferingsRefusal {
        private static final long serialVersionUID = 1;

        public NegativeMinutes() {
            super(Kind.RULE, "Standard minutes cannot lie below zero", "minutesPerUnit");
        }
    }

    public static final class ItemTwice extends OfferingsRefusal {
        private static final long serialVersionUID = 1;

        public ItemTwice() {
            super(Kind.RULE, "A consumable is listed twice", "consumables");
        }
    }

    public static final class RateDoesNotFit extends OfferingsRefusal {
        private static final long serialVersionUID = 1;

        public RateDoesNotFit(TaxCategory category, Percent rate) {
            super(
                    Kind.RULE,
                    category.hasRate()
                            ? "Category " + category + " has a rate above zero and at most 100 %, not " + rate
                            : "Category " + category + " has no rate, so " + rate + " does not fit",
                    "rate");
        }
    }

    public static final class ReasonDoesNotFit extends OfferingsRefusal {
        private static final long serialVersionUID = 1;

        public ReasonDoesNotFit(TaxCategory category) {
            super(
                    Kind.RULE,
                    category.needsReason()
                            ? "Category " + category + " must say why no tax is charged"
                            : "Category " + category + " takes no exemption reason",
                    "exemptionReason");
        }
    }

    /** What has been in force stays as it was. */
    public static final class InThePast extends OfferingsRefusal {
        private static final long serialVersionUID = 1;

        public InThePast(LocalDate from, LocalDate earliest) {
            super(
                    Kind.RULE,
                    "A change of tax cannot begin on " + from + ", since days from then on may have been billed; the"
                            + " earliest possible is " + earliest,
                    "from");
        }
    }
}
