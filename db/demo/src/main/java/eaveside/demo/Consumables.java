package eaveside.demo;

import eaveside.inventory.CountBasis;
import eaveside.inventory.Ppm;
import eaveside.inventory.WaterReading;
import eaveside.kernel.DocumentId;
import eaveside.kernel.LotId;
import eaveside.kernel.MixId;
import eaveside.kernel.Quantity;
import eaveside.kernel.Unit;
import eaveside.visits.JobSheet;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What a visit used up, taken from the crew's van; what is short there is fetched from the store room before. */
@Dependent
class Consumables {
    /** Grains that a gallon leaves in the resin at the hardest water in town, rounded up. */
    private static final int MOST_GRAINS_A_GALLON = 13;

    private final Storage storage;

    @Inject
    Consumables(Storage storage) {
        this.storage = storage;
    }

    /** Goods of a sheet as it gives them. */
    record Taken(List<JobSheet.Reading> readings, List<JobSheet.Used> used) {}

    Taken take(Scene scene, Report report, Dice dice) {
        VanStock van = storage.look(scene.vanOf(report.visit().crew().getFirst()));
        List<JobSheet.Reading> readings = new ArrayList<>();
        List<JobSheet.Used> used = new ArrayList<>();
        pureWater(scene, van, report, dice).ifPresent(readings::add);
        soap(scene, van, report, Goods.NEUTRAL, scene.depots().neutralMix(), "0.06", used, Work.PANEL);
        soap(scene, van, report, Goods.ALKALINE, scene.depots().alkalineMix(), "0.02", used, Work.ROOF_WASH);
        soap(scene, van, report, Goods.BIOCIDE, scene.depots().biocideMix(), "0.008", used, Work.MOSS);
        brush(scene, van, report, Goods.ARRAY_BRUSH, Line.ARRAYS, used, Work.PANEL, Work.GROUND_PANEL);
        brush(scene, van, report, Goods.WINDOW_BRUSH, Line.WINDOWS, used, Work.PANE_OUT, Work.PANE_BOTH);
        plain(scene, van, Goods.RUBBER, units(report, Work.PANE_OUT, Work.PANE_BOTH) / 30, used);
        plain(scene, van, Goods.GLOVES, dice.between(1, 3) * 2, used);
        plain(scene, van, Goods.CLOTH, dice.percent(25) ? 1 : 0, used);
        plain(scene, van, Goods.FILTER, dice.percent(6) ? 1 : 0, used);
        return new Taken(readings, used);
    }

    /** More gloves in the van than the books say, declared with the sheet. */
    JobSheet.Declared declareGloves(Scene scene) {
        return new JobSheet.Declared(
                DocumentId.next(),
                "A box from the last delivery was never entered",
                List.of(new JobSheet.Counted(
                        scene.depots().id(Goods.GLOVES), null, CountBasis.DIFFERENCE, Goods.GLOVES.of(40))));
    }

    private Optional<JobSheet.Reading> pureWater(Scene scene, VanStock van, Report report, Dice dice) {
        int hundredths = units(report, Work.PANEL) * 90
                + units(report, Work.GROUND_PANEL) * 60
                + units(report, Work.PANE_OUT, Work.PANE_BOTH) * 30
                + units(report, Work.SKYLIGHT_OUT, Work.SKYLIGHT_BOTH) * 60;
        int gallons = hundredths * dice.between(85, 120) / 10_000;
        if (gallons == 0) {
            return Optional.empty();
        }
        LotId canister = storage.single(scene, van, Goods.RESIN, gallons * MOST_GRAINS_A_GALLON);
        return Optional.of(new JobSheet.Reading(
                new WaterReading(
                        Ppm.of(Integer.toString(dice.between(130, 210))),
                        Ppm.of(Integer.toString(dice.between(0, 8))),
                        Quantity.of(gallons, Unit.US_GALLON)),
                canister,
                null));
    }

    private void soap(
            Scene scene,
            VanStock van,
            Report report,
            Goods concentrate,
            MixId mix,
            String gallonsPerUnit,
            List<JobSheet.Used> used,
            Work work) {
        Quantity gallons = Quantity.of(
                BigDecimal.valueOf(units(report, work))
                        .multiply(new BigDecimal(gallonsPerUnit))
                        .setScale(1, RoundingMode.HALF_UP),
                Unit.US_GALLON);
        if (gallons.isPositive()) {
            // No mix here is stronger than one part in ten.
            storage.ensure(
                    scene, van, concentrate, gallons.in(Unit.US_FLUID_OUNCE).times(new BigDecimal("0.1")));
            used.add(new JobSheet.Used.OfMix(mix, gallons, scene.range().id(work.line)));
        }
    }

    private void brush(
            Scene scene, VanStock van, Report report, Goods brush, Line line, List<JobSheet.Used> used, Work... works) {
        int units = units(report, works);
        if (units > 0) {
            used.add(new JobSheet.Used.OfBrush(
                    storage.single(scene, van, brush, units),
                    Quantity.of(units, Unit.PIECE),
                    scene.range().id(line)));
        }
    }

    private void plain(Scene scene, VanStock van, Goods what, int quantity, List<JobSheet.Used> used) {
        if (quantity > 0) {
            storage.ensure(scene, van, what, what.of(quantity));
            used.add(new JobSheet.Used.OfItem(scene.depots().id(what), what.of(quantity), null));
        }
    }

    private static int units(Report report, Work... works) {
        Map<Work, Quantity> done = report.done();
        int units = 0;
        for (Work work : works) {
            if (done.containsKey(work)) {
                units += done.get(work).value().intValue();
            }
        }
        return units;
    }
}
