package eaveside.customers;

import eaveside.kernel.Unit;
import java.util.List;

/** What sort of surface it is, and what it is counted in. */
public enum SurfaceKind {
    /** A field of solar modules; counted in panels. */
    ARRAY(Unit.PIECE),
    /** Counted one by one. */
    SKYLIGHT(Unit.PIECE),
    /** Counted in panes. */
    WINDOW(Unit.PIECE),
    /** Measured in square feet or square metres. */
    ROOF(Unit.SQUARE_FOOT, Unit.SQUARE_METRE);

    @SuppressWarnings("ImmutableEnumChecker") // List.of is immutable
    private final List<Unit> units;

    SurfaceKind(Unit... units) {
        this.units = List.of(units);
    }

    /** The units that an extent of this kind may come in. */
    public List<Unit> units() {
        return units;
    }
}
