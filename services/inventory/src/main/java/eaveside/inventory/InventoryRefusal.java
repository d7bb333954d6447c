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

    public static final class NoSuchPack extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        public NoSuchPack(String item, String pack) {
            super(Type.RULE, item + " does not come in '" + pack + "'. Choose one of its packs", "pack");
        }
    }

    /** A base unit that no item of the type has. */
    public static final class WrongBaseUnit extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        public WrongBaseUnit(StockType type) {
            super(
                    Type.RULE,
                    switch (type) {
                        case PLAIN -> "{field} does not fit. Choose another one";
                        case CONCENTRATE -> "A soap concentrate is counted by volume. Choose fluid ounces or liters";
                        case RESIN -> "Resin is counted in the grains that it is rated for. Choose grains";
                        case BRUSH -> "A brush is counted in the pieces of work that it is rated for. Choose pieces";
                    },
                    "baseUnit");
        }
    }

    /** Type and base unit are fixed once there are lots, mixes or reorder points: their quantities would change their meaning. */
    public static final class TypeFixed extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        public TypeFixed(String item) {
            super(
                    Type.RULE,
                    item + " has lots, mixes or reorder points. Its type and base unit stay as they are",
                    "type",
                    "baseUnit");
        }
    }

    public static final class BadRatio extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        public BadRatio(String parts) {
            super(Type.RULE, "A mix cannot be 1 : " + parts + ". Enter the number on the label", "parts");
        }
    }

    public static final class NotAConcentrate extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        public NotAConcentrate(String item) {
            super(Type.RULE, item + " is not a soap concentrate. Choose another item", "concentrate");
        }
    }

    /** A lot of something else than what it is to be. */
    public static final class NotOfType extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        /** @param  item that the lot is of */
        public NotOfType(String item, StockType type, String field) {
            super(Type.RULE, item + " is not a " + said(type) + ". Choose another one", field);
        }

        private static String said(StockType type) {
            return switch (type) {
                case PLAIN -> "plain item";
                case CONCENTRATE -> "soap concentrate";
                case RESIN -> "canister of resin";
                case BRUSH -> "brush or pad";
            };
        }
    }

    public static final class BadReading extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        public BadReading(String field, String message) {
            super(Type.RULE, message, field);
        }
    }

    public static final class OnlyVansHaveTechnicians extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        public OnlyVansHaveTechnicians() {
            super(Type.RULE, "Only a van has technicians. Clear them, or choose van as the type", "technicians");
        }
    }

    public static final class TechnicianHasVan extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        public TechnicianHasVan(String van) {
            super(Type.RULE, "A technician has at most one van. One of these has " + van, "technicians");
        }
    }

    public static final class LocationNotEmpty extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        public LocationNotEmpty(String location) {
            super(Type.RULE, location + " still holds goods. Transfer them first", "active");
        }
    }

    public static final class SameLocation extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        public SameLocation() {
            super(Type.RULE, "Choose two different locations", "from", "to");
        }
    }

    /** Canisters and brushes are lots of their own: each needs its label, and a use says which. */
    public static final class LotNotNamed extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        public LotNotNamed(String item) {
            this(item, "lot");
        }

        /** @param  field where it is to be named */
        public LotNotNamed(String item, String field) {
            super(Type.RULE, "Each " + item + " is kept by itself. Choose the lot, or enter its number", field);
        }
    }

    public static final class OneAtATime extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        public OneAtATime(String item) {
            super(Type.RULE, "Each " + item + " is kept by itself. Enter one on each line", "quantity");
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
                    "On " + day + " the books hold " + held.said() + " of " + item + " in " + location
                            + (free.compareTo(held) < 0 ? ", of which later documents leave " + free.said() : "")
                            + ", not "
                            + asked.said() + ". If more is there, enter a physical count first",
                    "quantity");
        }
    }

    /** More of a lot was found on a day before the lot came in. */
    public static final class NotThereYet extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        public NotThereYet(String item, LocalDate day, LocalDate came) {
            super(
                    Type.RULE,
                    "That lot of " + item + " came in on " + came + ", after " + day + ". Correct the date",
                    "lot",
                    "date");
        }
    }

    /** More was to be drawn from a canister than the books hold, and what was read at it shows that it is spent. */
    public static final class CanisterSpent extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        public CanisterSpent(String item, String location, WaterReading reading, Quantity asked, Quantity held) {
            super(
                    Type.RULE,
                    "The pure water reads " + reading.pureWater() + ", more than " + WaterReading.SPENT_ABOVE
                            + ". This "
                            + item + " is spent, and the books hold " + held.said() + " of it in " + location + ", not "
                            + asked.said()
                            + ". Choose the canister that made the water, or enter a physical count first",
                    "reading");
        }
    }

    /** All of it was to be taken, and the books hold none on that day. */
    public static final class NothingThere extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        /** @param  field which named it, the item or one of its lots */
        public NothingThere(String item, String location, LocalDate day, String field) {
            super(Type.RULE, "On " + day + " the books hold no " + item + " in " + location, field);
        }
    }

    /** A canister or brush is transferred or written off whole. */
    public static final class NotWhole extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        public NotWhole(String item, Quantity held) {
            super(Type.RULE, "A " + item + " cannot be split. All of its " + held.said() + " go together", "quantity");
        }
    }

    /** More of an item was found than the books hold, and nothing tells what it is worth. */
    public static final class CostUnknown extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        public CostUnknown(String item) {
            super(Type.RULE, item + " was never received with a cost. Enter what the found goods are worth", "cost");
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
                    item + " in " + location + " has been used, moved or counted since: of the " + back.said()
                            + " to take back on " + day + ", " + free.said()
                            + " is there at its old value. Reverse what came"
                            + " later first");
        }
    }

    /** Reversed where it was entered, not here. */
    public static final class NotAStockDocument extends InventoryRefusal {
        private static final long serialVersionUID = 1;

        public NotAStockDocument(String document) {
            super(Type.RULE, document + " is not a receipt, transfer, physical count or write-off");
        }
    }
}
