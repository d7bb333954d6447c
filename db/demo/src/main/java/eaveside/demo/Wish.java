package eaveside.demo;

import eaveside.customers.Surface;
import eaveside.customers.SurfaceAttribute;
import eaveside.customers.SurfaceType;
import eaveside.kernel.Quantity;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.Unit;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Work that a customer wants done. */
record Wish(Work work, @Nullable SurfaceId surface, Quantity quantity) {
    /** Some of what could be done on the surfaces; at least one thing. */
    static List<Wish> some(List<Surface> surfaces, Dice dice) {
        List<Wish> wishes = new ArrayList<>();
        for (Surface surface : surfaces) {
            if (dice.percent(chance(surface.type()))) {
                add(wishes, surface, dice);
            }
        }
        if (wishes.isEmpty()) {
            add(wishes, surfaces.getFirst(), dice);
        }
        return wishes;
    }

    /** Everything that the surfaces call for. */
    static List<Wish> all(List<Surface> surfaces, Dice dice) {
        List<Wish> wishes = new ArrayList<>();
        surfaces.forEach(surface -> add(wishes, surface, dice));
        return wishes;
    }

    static Wish gutters(int feet) {
        return new Wish(Work.GUTTER, null, Quantity.of(feet, Unit.FOOT));
    }

    /** Treatment of the roof that lichen was seen on. */
    static Wish moss(List<Surface> surfaces) {
        Surface roof = surfaces.stream()
                .filter(surface -> surface.type() == SurfaceType.ROOF)
                .findFirst()
                .orElseThrow();
        return new Wish(Work.MOSS, roof.id(), roof.extent());
    }

    private static int chance(SurfaceType type) {
        return switch (type) {
            case ARRAY -> 78;
            case WINDOW -> 66;
            case SKYLIGHT -> 60;
            case ROOF -> 22;
        };
    }

    private static void add(List<Wish> wishes, Surface surface, Dice dice) {
        Work work = switch (surface.type()) {
            case ARRAY ->
                surface.attributes().getOrDefault(SurfaceAttribute.GROUND_MOUNT, 0) == 1
                        ? Work.GROUND_PANEL
                        : Work.PANEL;
            case SKYLIGHT -> dice.percent(70) ? Work.SKYLIGHT_OUT : Work.SKYLIGHT_BOTH;
            case WINDOW -> dice.percent(60) ? Work.PANE_OUT : Work.PANE_BOTH;
            case ROOF -> dice.percent(60) ? Work.ROOF_WASH : Work.MOSS;
        };
        wishes.add(new Wish(work, surface.id(), surface.extent()));
        if (work == Work.PANE_BOTH && dice.percent(30)) {
            wishes.add(new Wish(Work.SCREEN, surface.id(), surface.extent()));
        }
    }
}
