package eaveside.customers;

import eaveside.kernel.Unit;
import java.util.List;

/** What sort of surface it is, and what it is counted in. */
public enum SurfaceType {
    /** A field of solar panels; counted in panels. */
    ARRAY(Unit.PIECE),
    /** Counted one by one. */
    SKYLIGHT(Unit.PIECE),
    /** Counted in panes. */
    WINDOW(Unit.PIECE),
    /** Measured in square feet or square meters. */
    ROOF(Unit.SQUARE_FOOT, Unit.SQUARE_METER);

    @SuppressWarnings("ImmutableEnumChecker") // List.of is immutable
    private final List<Unit> units;

    SurfaceType(Unit... units) {
        this.units = List.of(units);
    }

    /** The units that an extent of this type may come in. */
    public List<Unit> units() {
        return units;
    }
}
