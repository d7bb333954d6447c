package eaveside.inventory;

import eaveside.kernel.Quantity;
import eaveside.kernel.Unit;

/**
 * What a crew reads at the canister.
 *
 * @param  tapWater  before the resin
 * @param  pureWater after it; never above the tap water
 * @param  volume    of water that went through
 */
public record WaterReading(Ppm tapWater, Ppm pureWater, Quantity volume) {
    /** Water that reads more leaves spots on glass, so the canister before it counts as spent. Common practice, no source. */
    public static final Ppm SPENT_ABOVE = Ppm.of("10");

    public WaterReading {
        if (pureWater.value().compareTo(tapWater.value()) > 0) {
            throw new InventoryRefusal.BadReading(
                    "pureWater", "{field} cannot read more than the tap water (" + pureWater + ", " + tapWater + ")");
        }
        if (!volume.unit().isLike(Unit.LITER)) {
            throw new InventoryRefusal.BadReading("volume", volume + " is not a volume of water");
        }
        Limits.notNegative("volume", volume);
    }

    /** Whether the canister still did its work when this was read. */
    public boolean isPure() {
        return pureWater.value().compareTo(SPENT_ABOVE.value()) <= 0;
    }
}
