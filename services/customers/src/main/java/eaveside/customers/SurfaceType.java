package eaveside.customers;

import eaveside.kernel.Unit;
import java.util.List;
import java.util.stream.Stream;

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

    /** What can be known of a surface of this type. */
    public List<SurfaceAttribute> attributes() {
        return Stream.of(SurfaceAttribute.values())
                .filter(attribute -> attribute.appliesTo(this))
                .toList();
    }

    /** What a surface of this type does not have: components of {@link Surface}, and attributes. */
    public List<String> lacks() {
        return Stream.concat(
                        this == ARRAY ? Stream.of() : Stream.of("rows", "panelManufacturer"),
                        Stream.of(SurfaceAttribute.values())
                                .filter(attribute -> !attribute.appliesTo(this))
                                .map(Enum::name))
                .toList();
    }

    /** The units that an extent of this type may come in. */
    public List<Unit> units() {
        return units;
    }
}
