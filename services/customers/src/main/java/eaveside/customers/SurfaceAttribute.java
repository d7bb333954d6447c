package eaveside.customers;

import static eaveside.customers.SurfaceType.ARRAY;
import static eaveside.customers.SurfaceType.ROOF;
import static eaveside.customers.SurfaceType.SKYLIGHT;
import static eaveside.customers.SurfaceType.WINDOW;

import java.util.List;

/**
 * What changes the price or the minutes of a clean. Each is a whole number within its range, and the higher one is
 * never the easier one, so that a surcharge can begin at a value. The grades are common practice, no source.
 */
public enum SurfaceAttribute {
    /** 0 at ground level, 1 the ground floor, 2 the floor above, and so on. */
    STORY(0, 60, ARRAY, SKYLIGHT, WINDOW, ROOF),
    /** Slope against level ground, in degrees. */
    PITCH_DEGREES(0, 90, ARRAY, SKYLIGHT, ROOF),
    /** 1 where the array stands on the ground. */
    GROUND_MOUNT(0, 1, ARRAY),
    /** 0 dust, 1 film, 2 droppings and streaks, 3 caked, 4 lichen or cement. */
    SOILING_GRADE(0, 4, ARRAY, SKYLIGHT, WINDOW),
    /** Whole years since it was last cleaned. */
    YEARS_SINCE_CLEAN(0, 100, ARRAY, SKYLIGHT, WINDOW, ROOF),
    /** 0 every row in reach of a pole, 1 from one side only, 2 from a ladder, 3 from a lift. */
    ROW_ACCESS(0, 3, ARRAY),
    /** 1 where the panes are divided by bars. */
    DIVIDED_PANES(0, 1, WINDOW),
    /** 1 where screens come off and tracks are wiped. */
    SCREENS(0, 1, WINDOW),
    /** Hard-water stain: 0 none, 1 spots, 2 a haze, 3 etched in. */
    HARD_WATER(0, 3, SKYLIGHT, WINDOW, ARRAY),
    /** 1 where it must be cleaned from inside. */
    FROM_INSIDE(0, 1, SKYLIGHT, WINDOW),
    /** 1 where the seals are old and take no pressure. */
    WEAK_SEALS(0, 1, SKYLIGHT, WINDOW),
    /** Moss, algae or lichen: 0 none, 1 patches, 2 the shaded side, 3 all over, 4 thick cushions. */
    GROWTH_GRADE(0, 4, ROOF),
    /** 1 where the covering may not be stepped on. */
    FRAGILE_COVERING(0, 1, ROOF),
    /** 1 where gutters are in the way. */
    GUTTERS_IN_WAY(0, 1, ROOF);

    private final int lowest;
    private final int highest;

    @SuppressWarnings("ImmutableEnumChecker") // List.of is immutable
    private final List<SurfaceType> types;

    SurfaceAttribute(int lowest, int highest, SurfaceType... types) {
        this.lowest = lowest;
        this.highest = highest;
        this.types = List.of(types);
    }

    public int lowest() {
        return lowest;
    }

    public int highest() {
        return highest;
    }

    /** Whether surfaces of that type have it. */
    public boolean appliesTo(SurfaceType type) {
        return types.contains(type);
    }
}
