package eaveside.inventory;

import eaveside.kernel.Unit;

/** How an item is counted. */
public enum StockType {
    /** Counted as it is bought: squeegee rubber, gloves, fuel. */
    PLAIN,
    /** Soap or biocide counted by volume before it is mixed with water. */
    CONCENTRATE,
    /** Deionization resin: each canister is a lot, counted in the grains that it is rated to remove. */
    RESIN,
    /** A brush or pad: each is a lot, counted in the units of work that it is rated to last for. */
    BRUSH;

    /** Whether every single one is a lot with a label of its own, drawn by name. */
    public boolean isCountedSingly() {
        return this == RESIN || this == BRUSH;
    }

    /** Whether items of this type may be counted in that unit. */
    public boolean takes(Unit unit) {
        return switch (this) {
            case PLAIN -> true;
            case CONCENTRATE -> unit.isLike(Unit.LITER);
            case RESIN -> unit == Unit.GRAIN;
            case BRUSH -> unit == Unit.PIECE;
        };
    }

    /** The unit, if items of this type may be counted in it; refused as the item's {@code baseUnit} otherwise. */
    public Unit requireCounting(Unit baseUnit) {
        if (!takes(baseUnit)) {
            throw new InventoryRefusal.WrongBaseUnit(this);
        }
        return baseUnit;
    }
}
