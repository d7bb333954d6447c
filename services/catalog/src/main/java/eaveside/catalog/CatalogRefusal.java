package eaveside.catalog;

import eaveside.customers.SurfaceType;
import eaveside.kernel.Percent;
import eaveside.kernel.Refusal;
import eaveside.kernel.Unit;
import java.time.LocalDate;
import java.util.Locale;

/** What this module refuses. */
public abstract sealed class CatalogRefusal extends Refusal {
    private static final long serialVersionUID = 1;

    private CatalogRefusal(Type type, String message, String... fields) {
        super(type, message, fields);
    }

    public static final class NoSuchServiceLine extends CatalogRefusal {
        private static final long serialVersionUID = 1;

        public NoSuchServiceLine(String id) {
            super(Type.NOT_FOUND, "There is no service line " + id);
        }
    }

    public static final class NoSuchServiceItem extends CatalogRefusal {
        private static final long serialVersionUID = 1;

        public NoSuchServiceItem(String id) {
            super(Type.NOT_FOUND, "There is no service " + id);
        }
    }

    public static final class NoSuchTaxCode extends CatalogRefusal {
        private static final long serialVersionUID = 1;

        public NoSuchTaxCode(TaxCode code) {
            super(Type.RULE, "There is no tax setting under the code " + code, "taxCode");
        }
    }

    /** The tax code is known, but only from a later day on. */
    public static final class NoTaxOn extends CatalogRefusal {
        private static final long serialVersionUID = 1;

        public NoTaxOn(TaxCode code, LocalDate date) {
            super(Type.RULE, "The tax code " + code + " has no setting in force on " + date, "taxCode");
        }
    }

    public static final class CodeTaken extends CatalogRefusal {
        private static final long serialVersionUID = 1;

        public CodeTaken(String code, String name) {
            super(Type.CONFLICT, "The code " + code + " is already taken by " + name, "code");
        }
    }

    public static final class BadCode extends CatalogRefusal {
        private static final long serialVersionUID = 1;

        public BadCode(String field, String code) {
            super(
                    Type.RULE,
                    "A code is capitals A to Z, digits and inner hyphens, at most 20; '" + code + "' is not",
                    field);
        }
    }

    /** Prices, plans and entries count on it: make another service instead. */
    public static final class Fixed extends CatalogRefusal {
        private static final long serialVersionUID = 1;

        public Fixed(String field) {
            super(Type.RULE, "The " + field + " cannot be changed once it is saved; make another service", field);
        }
    }

    public static final class UnitDoesNotFit extends CatalogRefusal {
        private static final long serialVersionUID = 1;

        public UnitDoesNotFit(Unit unit, SurfaceType type) {
            super(
                    Type.RULE,
                    "Surfaces of type " + type.name().toLowerCase(Locale.ROOT) + " are not counted in " + unit.code(),
                    "unit");
        }
    }

    public static final class NegativeMinutes extends CatalogRefusal {
        private static final long serialVersionUID = 1;

        public NegativeMinutes() {
            super(Type.RULE, "Standard minutes cannot lie below zero", "minutesPerUnit");
        }
    }

    public static final class ItemTwice extends CatalogRefusal {
        private static final long serialVersionUID = 1;

        public ItemTwice() {
            super(Type.RULE, "A consumable is listed twice", "consumables");
        }
    }

    public static final class RateDoesNotFit extends CatalogRefusal {
        private static final long serialVersionUID = 1;

        public RateDoesNotFit(TaxCategory category, Percent rate) {
            super(
                    Type.RULE,
                    category.hasRate()
                            ? "Category " + category + " has a rate above zero and at most 100 %, not " + rate
                            : "Category " + category + " has no rate, so " + rate + " does not fit",
                    "rate");
        }
    }

    public static final class ReasonDoesNotFit extends CatalogRefusal {
        private static final long serialVersionUID = 1;

        public ReasonDoesNotFit(TaxCategory category) {
            super(
                    Type.RULE,
                    category.needsReason()
                            ? "Category " + category + " must say why no tax is charged"
                            : "Category " + category + " takes no exemption reason",
                    "exemptionReason");
        }
    }

    /** What has been in force stays as it was. */
    public static final class InThePast extends CatalogRefusal {
        private static final long serialVersionUID = 1;

        public InThePast(LocalDate from, LocalDate earliest) {
            super(
                    Type.RULE,
                    "A change of tax cannot begin on " + from + ", since days from then on may have been billed; the"
                            + " earliest possible is " + earliest,
                    "from");
        }
    }
}
