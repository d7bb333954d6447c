package eaveside.catalog;

import eaveside.customers.SurfaceType;
import eaveside.kernel.Refusal;
import eaveside.kernel.StockItemId;
import eaveside.kernel.Unit;
import java.time.LocalDate;
import java.util.Locale;

/** What this module refuses. */
public abstract sealed class CatalogRefusal extends Refusal {
    private static final long serialVersionUID = 1;

    private CatalogRefusal(Type type, String message, String... fields) {
        super(type, message, fields);
    }

    public static final class NoSuchTaxCode extends CatalogRefusal {
        private static final long serialVersionUID = 1;

        public NoSuchTaxCode(TaxCode code) {
            super(Type.RULE, "{field} " + code + " is unknown. Set its tax first", "taxCode");
        }
    }

    /** The tax code is known, but only from a later day on. */
    public static final class NoTaxOn extends CatalogRefusal {
        private static final long serialVersionUID = 1;

        public NoTaxOn(TaxCode code, LocalDate date) {
            super(
                    Type.RULE,
                    "{field} " + code + " has no setting in force on " + date + ". Set one that begins earlier",
                    "taxCode");
        }
    }

    public static final class CodeTaken extends CatalogRefusal {
        private static final long serialVersionUID = 1;

        public CodeTaken(String code, String name) {
            super(Type.CONFLICT, "{field} " + code + " is taken by " + name + ". Choose another", "code");
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

    /** Prices, plans and entries count on it: make another service instead. */
    public static final class Fixed extends CatalogRefusal {
        private static final long serialVersionUID = 1;

        public Fixed(String field) {
            super(Type.RULE, "{field} cannot change once the service is saved. Add another service", field);
        }
    }

    public static final class UnitDoesNotFit extends CatalogRefusal {
        private static final long serialVersionUID = 1;

        public UnitDoesNotFit(Unit unit, SurfaceType type) {
            super(
                    Type.RULE,
                    "{field} " + unit.code() + " does not fit surfaces of type "
                            + type.name().toLowerCase(Locale.ROOT),
                    "unit");
        }
    }

    public static final class NegativeMinutes extends CatalogRefusal {
        private static final long serialVersionUID = 1;

        public NegativeMinutes() {
            super(Type.RULE, "{field} cannot be below zero", "minutesPerUnit");
        }
    }

    public static final class ItemTwice extends CatalogRefusal {
        private static final long serialVersionUID = 1;

        public ItemTwice() {
            super(Type.RULE, "{field} list an item twice. Keep one row for each item", "consumables");
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

    /** What has been in force stays as it was. */
    public static final class InThePast extends CatalogRefusal {
        private static final long serialVersionUID = 1;

        public InThePast(LocalDate from, LocalDate earliest) {
            super(
                    Type.RULE,
                    "{field} cannot be " + from + ", because days from then on may be billed. The earliest day is "
                            + earliest,
                    "from");
        }
    }

    /** A service's standard names a consumable that is not in stock's list. */
    public static final class NoSuchConsumable extends CatalogRefusal {
        private static final long serialVersionUID = 1;

        public NoSuchConsumable(StockItemId item) {
            super(Type.RULE, "{field} name an unknown item, " + item + ". Add the item to stock first", "consumables");
        }
    }

    /** A consumable is counted in another type of unit than stock counts it in. */
    public static final class ConsumableUnit extends CatalogRefusal {
        private static final long serialVersionUID = 1;

        public ConsumableUnit(String item, Unit unit) {
            super(Type.RULE, "{field} count " + item + " in " + unit.code() + ", which stock does not", "consumables");
        }
    }
}
