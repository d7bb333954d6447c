package eaveside.demo;

import static eaveside.customers.SurfaceType.ARRAY;
import static eaveside.customers.SurfaceType.ROOF;
import static eaveside.customers.SurfaceType.SKYLIGHT;
import static eaveside.customers.SurfaceType.WINDOW;

import eaveside.customers.SurfaceType;
import eaveside.kernel.Unit;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** What the company sells: its standard minutes, prices and consumables; all figures are invented. */
enum Work {
    PANEL(Line.ARRAYS, "PANEL", "Solar panel, washed and rinsed", Unit.PIECE, "1.6", ARRAY),
    GROUND_PANEL(Line.ARRAYS, "PANEL-GROUND", "Solar panel on a ground mount", Unit.PIECE, "0.9", ARRAY),
    SKYLIGHT_OUT(Line.SKYLIGHTS, "SKYLIGHT", "Skylight, outside", Unit.PIECE, "7", SKYLIGHT),
    SKYLIGHT_BOTH(Line.SKYLIGHTS, "SKYLIGHT-BOTH", "Skylight, inside and outside", Unit.PIECE, "12", SKYLIGHT),
    PANE_OUT(Line.WINDOWS, "PANE", "Window pane, outside", Unit.PIECE, "2.6", WINDOW),
    PANE_BOTH(Line.WINDOWS, "PANE-BOTH", "Window pane, inside and outside", Unit.PIECE, "4.5", WINDOW),
    SCREEN(Line.WINDOWS, "SCREEN", "Screen and track, wiped", Unit.PIECE, "2.5", WINDOW),
    ROOF_WASH(Line.ROOFS, "ROOF-SOFT", "Roof, soft wash", Unit.SQUARE_FOOT, "0.09", ROOF),
    MOSS(Line.ROOFS, "ROOF-MOSS", "Roof, moss treatment", Unit.SQUARE_FOOT, "0.06", ROOF),
    GUTTER(Line.ROOFS, "GUTTER", "Gutter, cleared and flushed", Unit.FOOT, "0.7", null);

    final Line line;
    final String code;
    final String title;
    final Unit unit;
    final String minutes;
    final @Nullable SurfaceType type;

    Work(Line line, String code, String title, Unit unit, String minutes, @Nullable SurfaceType type) {
        this.line = line;
        this.code = code;
        this.title = title;
        this.unit = unit;
        this.minutes = minutes;
        this.type = type;
    }

    /** A price from a quantity on, in cents per {@link #perUnits}. */
    record Step(int from, int cents) {}

    List<Step> steps() {
        return switch (this) {
            case PANEL -> List.of(new Step(0, 750), new Step(20, 675), new Step(60, 600));
            case GROUND_PANEL -> List.of(new Step(0, 550), new Step(100, 450), new Step(300, 390));
            case SKYLIGHT_OUT -> List.of(new Step(0, 1_400), new Step(8, 1_250));
            case SKYLIGHT_BOTH -> List.of(new Step(0, 2_400), new Step(8, 2_150));
            case PANE_OUT -> List.of(new Step(0, 550), new Step(20, 475), new Step(60, 400));
            case PANE_BOTH -> List.of(new Step(0, 900), new Step(20, 800), new Step(60, 700));
            case SCREEN -> List.of(new Step(0, 350));
            case ROOF_WASH -> List.of(new Step(0, 3_800), new Step(2_000, 3_400));
            case MOSS -> List.of(new Step(0, 2_600), new Step(2_000, 2_300));
            case GUTTER -> List.of(new Step(0, 175), new Step(200, 150));
        };
    }

    /** What a price is for: one, or 100 square feet. */
    int perUnits() {
        return unit == Unit.SQUARE_FOOT ? 100 : 1;
    }

    /** What one unit uses up by the company's standard. */
    Map<Goods, String> consumables() {
        return switch (this) {
            case PANEL -> Map.of(Goods.RESIN, "9", Goods.NEUTRAL, "0.06", Goods.ARRAY_BRUSH, "1");
            case GROUND_PANEL -> Map.of(Goods.RESIN, "7", Goods.ARRAY_BRUSH, "1");
            case SKYLIGHT_OUT, SKYLIGHT_BOTH -> Map.of(Goods.RESIN, "6", Goods.WINDOW_BRUSH, "1", Goods.CLOTH, "0.02");
            case PANE_OUT, PANE_BOTH -> Map.of(Goods.RESIN, "3", Goods.WINDOW_BRUSH, "1", Goods.RUBBER, "0.03");
            case SCREEN -> Map.of(Goods.CLOTH, "0.01");
            case ROOF_WASH -> Map.of(Goods.ALKALINE, "0.12");
            case MOSS -> Map.of(Goods.BIOCIDE, "0.1");
            case GUTTER -> Map.of(Goods.GLOVES, "0.03");
        };
    }

    /** The usual cautions, for the crew's sheet. */
    String cautions() {
        return switch (line) {
            case ARRAYS ->
                "Modules are live in daylight: do not touch wiring or connectors, do not stand on glass. Look at every"
                        + " panel first and leave cracked ones alone. Fall protection and electrical work follow local"
                        + " codes and licensed practice.";
            case SKYLIGHTS -> "Never step on a skylight. Fall protection follows local codes.";
            case WINDOWS -> "Footing and angle of the ladder before the first rung; keep poles clear of power lines.";
            case ROOFS ->
                "Slippery when wet. Eye and skin protection with alkaline soap and biocide; keep run-off out of drains"
                        + " and ponds. Fall protection follows local codes.";
        };
    }
}
