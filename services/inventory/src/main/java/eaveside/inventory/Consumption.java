package eaveside.inventory;

import eaveside.kernel.Decision;
import eaveside.kernel.Exact;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.LotId;
import eaveside.kernel.Quantity;
import eaveside.kernel.StockItemId;
import eaveside.kernel.Unit;
import java.math.BigDecimal;
import java.util.List;

/** Turns what a crew reports (mix sprayed, water readings, units brushed) into draws of stock. */
@Decision
public final class Consumption {
    private static final BigDecimal MILLIGRAMS_PER_GRAIN =
            Quantity.of(1, Unit.GRAIN).exactlyIn(Unit.GRAM).movePointRight(3);

    private Consumption() {}

    /** The concentrate in that much mix, oldest lots first. */
    public static Draw ofMix(Mix mix, Quantity volume) {
        if (!volume.unit().isLike(Unit.LITER)) {
            throw new KernelRefusal.WrongUnit("volume", mix.name(), volume.unit(), List.of(Unit.US_GALLON, Unit.LITER));
        }
        Limits.notNegative("volume", volume);
        return new Draw(
                mix.concentrate(),
                null,
                Limits.notNegative("volume", mix.ratio().concentrateIn(volume)));
    }

    /** The grains that a canister removed: an estimate, see {@link #grains}; the reading itself says whether it works. */
    public static Draw ofCanister(StockItemId resin, LotId canister, WaterReading reading) {
        return new Draw(resin, canister, Limits.notNegative("volume", grains(reading)), reading);
    }

    /** The life that a brush gave up: one for each unit done with it. */
    public static Draw ofBrush(StockItemId brush, LotId lot, Quantity unitsDone) {
        return new Draw(brush, lot, Limits.notNegative("units", unitsDone));
    }

    /**
     * Grains of dissolved solids removed: (tap water − pure water) × volume, rounded HALF_UP once to six decimals. An estimate:
     * readings vary through the day, meters show conductivity, and resins are rated under other water. The factor, one
     * grain in a US gallon = 17.11806 mg/L, follows from the definitions of the two units.
     */
    public static Quantity grains(WaterReading reading) {
        BigDecimal removed =
                reading.tapWater().value().subtract(reading.pureWater().value());
        BigDecimal milligrams = removed.multiply(reading.volume().exactlyIn(Unit.LITER));
        return Quantity.rounded(milligrams.divide(MILLIGRAMS_PER_GRAIN, Exact.WORKING), Unit.GRAIN);
    }
}
