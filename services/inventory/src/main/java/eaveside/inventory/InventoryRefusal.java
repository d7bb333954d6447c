package eaveside.inventory;

import eaveside.kernel.Quantity;
import eaveside.kernel.Refusal;
import java.time.LocalDate;

/** What the inventory refuses. */
public abstract sealed class InventoryRefusal extends Refusal {
    private static final long serialVersionUID = 1;

    private InventoryRefusal(Type type, String message, String... fields) {
        super(type, message, fields);
    }

    public static final class NoSuchItem extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        public NoSuchItem(String id) {
            super(Type.NOT_FOUND, "There is no consumable " + id, "item");
        }
    }

    public static final class NoSuchLocation extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        public NoSuchLocation(String id) {
            super(Type.NOT_FOUND, "There is no location " + id, "location");
        }
    }

    public static final class NoSuchLot extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        public NoSuchLot(String id) {
            super(Type.NOT_FOUND, "There is no lot " + id + " of that consumable", "lot");
        }
    }

    public static final class NoSuchMix extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        public NoSuchMix(String id) {
            super(Type.NOT_FOUND, "There is no mix " + id, "mix");
        }
    }

    public static final class NoSuchPack extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        public NoSuchPack(String item, String pack) {
            super(Type.RULE, item + " does not come in '" + pack + "'", "pack");
        }
    }

    /** A code, name or label that must be unique is in use. */
    public static final class NameTaken extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        public NameTaken(String field, String value) {
            super(Type.CONFLICT, "The " + field + " '" + value + "' is already in use", field);
        }
    }

    /** One id, two contents. */
    public static final class IdTaken extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        public IdTaken(String id, String existing) {
            super(Type.CONFLICT, "The id " + id + " was already used with other content, for " + existing);
        }
    }

    /** Somebody else has changed it since it was read. */
    public static final class Stale extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        public Stale(String what) {
            super(Type.CONFLICT, what + " has been changed by somebody else since you opened it");
        }
    }

    /** A unit that the item cannot be counted in. */
    public static final class WrongUnit extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        public WrongUnit(String item, String unit, String field) {
            super(Type.RULE, item + " cannot be counted in " + unit, field);
        }
    }

    /** Type and base unit are fixed once there are lots, mixes or minimums: their quantities would change their meaning. */
    public static final class TypeFixed extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        public TypeFixed(String item) {
            super(Type.RULE, item + " is in use: its type and base unit cannot change", "type", "baseUnit");
        }
    }

    public static final class BadRatio extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        public BadRatio(String parts) {
            super(Type.RULE, "A mix cannot be 1 : " + parts, "ratio");
        }
    }

    public static final class NotAConcentrate extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        public NotAConcentrate(String item) {
            super(Type.RULE, item + " is not a concentrate", "concentrate");
        }
    }

    public static final class BadReading extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        public BadReading(String message) {
            super(Type.RULE, message, "reading");
        }
    }

    public static final class Negative extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        public Negative(String field) {
            super(Type.RULE, "The " + field + " cannot be below zero", field);
        }
    }

    public static final class TooLarge extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        public TooLarge(String field, String value) {
            super(Type.RULE, "The " + field + " is too large: " + value, field);
        }
    }

    public static final class NothingEntered extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        public NothingEntered() {
            super(Type.RULE, "The document has no lines", "lines");
        }
    }

    public static final class OnlyVansHaveTechnicians extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        public OnlyVansHaveTechnicians(String location) {
            super(Type.RULE, location + " is not a van: technicians are assigned to vans only", "technicians");
        }
    }

    public static final class TechnicianHasVan extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        public TechnicianHasVan(String van) {
            super(Type.RULE, "A technician has at most one van, and one of these is assigned to " + van, "technicians");
        }
    }

    public static final class NoSuchTechnician extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        public NoSuchTechnician(String id) {
            super(Type.NOT_FOUND, "There is no technician " + id, "technicians");
        }
    }

    /** The item or location is no longer in use, so nothing more comes in. */
    public static final class Inactive extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        public Inactive(String what, String field) {
            super(Type.RULE, what + " is no longer in use", field);
        }
    }

    public static final class LocationNotEmpty extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        public LocationNotEmpty(String location) {
            super(Type.RULE, location + " still holds goods: move them before it goes out of use", "active");
        }
    }

    public static final class SameLocation extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        public SameLocation() {
            super(Type.RULE, "Goods are moved from one location to another", "from", "to");
        }
    }

    /** Canisters and brushes are lots of their own: each needs its label, and a use says which. */
    public static final class LotNotNamed extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        public LotNotNamed(String item) {
            super(Type.RULE, "Each " + item + " is kept by itself: name the one that is meant", "lot");
        }
    }

    public static final class OneAtATime extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        public OneAtATime(String item) {
            super(Type.RULE, "Each " + item + " is kept by itself: enter one to a line", "quantity");
        }
    }

    /** The books of the location hold less than is to be taken: on that day, or on a later one that needs the goods too. */
    public static final class NotEnough extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        /**
         * @param  held what is there at the end of the day
         * @param  free what of it no later day needs; at most what is there
         */
        public NotEnough(String item, String location, LocalDate day, Quantity asked, Quantity held, Quantity free) {
            super(
                    Type.RULE,
                    "On " + day + " the books hold " + held + " of " + item + " in " + location
                            + (free.compareTo(held) < 0 ? ", of which later documents leave " + free : "") + ", not "
                            + asked + "; if more is there, declare the difference as a count",
                    "quantity");
        }
    }

    /** More of a lot was found on a day before the lot came in. */
    public static final class NotThereYet extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        public NotThereYet(String item, LocalDate day, LocalDate came) {
            super(Type.RULE, "That lot of " + item + " came in on " + came + ", after " + day, "lot", "date");
        }
    }

    /** More was to be drawn from a canister than the books hold, and what was read at it shows that it is spent. */
    public static final class CanisterSpent extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        public CanisterSpent(String item, String location, WaterReading reading, Quantity asked, Quantity held) {
            super(
                    Type.RULE,
                    "The pure water reads " + reading.pureWater() + ", more than " + WaterReading.SPENT_ABOVE
                            + ": this "
                            + item + " is spent, and the books hold " + held + " of it in " + location + ", not "
                            + asked
                            + "; name the canister that made the water, or declare the difference as a count",
                    "reading");
        }
    }

    /** All of it was to be taken, and the books hold none on that day. */
    public static final class NothingThere extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        public NothingThere(String item, String location, LocalDate day) {
            super(Type.RULE, "On " + day + " the books hold no " + item + " in " + location, "item");
        }
    }

    /** A canister or brush moves or is thrown away whole. */
    public static final class NotWhole extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        public NotWhole(String item, Quantity held) {
            super(Type.RULE, "A " + item + " cannot be split: all of its " + held + " go together", "quantity");
        }
    }

    /** A count that says two things about the same goods. */
    public static final class CountedTwice extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        public CountedTwice(String item) {
            super(Type.RULE, item + " is counted twice in this document", "lines");
        }
    }

    /** More of an item was found than the books hold, and nothing tells what it is worth. */
    public static final class CostUnknown extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        public CostUnknown(String item) {
            super(Type.RULE, item + " was never received with a cost: say what the found goods are worth", "cost");
        }
    }

    /** The goods of a document to be reversed have been used, moved or counted since. */
    public static final class GoodsGone extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        /**
         * @param  back what the reversal would take back
         * @param  free what of it is there on the reversal's day and every later one
         */
        public GoodsGone(String item, String location, LocalDate day, Quantity back, Quantity free) {
            super(
                    Type.RULE,
                    item + " in " + location + " has been used, moved or counted since: of the " + back
                            + " to take back on " + day + ", " + free + " is there at its old value; reverse what came"
                            + " later first");
        }
    }

    /** Reversed where it was entered, not here. */
    public static final class NotAStockDocument extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        public NotAStockDocument(String document) {
            super(Type.RULE, document + " is not a receipt, transfer, count or writing off");
        }
    }

    /** A location in a list that cannot be read. */
    public static final class BadPage extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        public BadPage(String key) {
            super(Type.MALFORMED, "'" + key + "' is not a location in this list", "after");
        }
    }
}
