package eaveside.inventory;

import eaveside.kernel.Quantity;
import eaveside.kernel.Unit;

/**
 * What a crew reads at the canister.
 *
 * @param feed    before the resin
 * @param product after it; never above the feed
 * @param volume  of water that went through
 */
public record WaterReading(Ppm feed, Ppm product, Quantity volume) {
    public WaterReading {
        if (product.value().compareTo(feed.value()) > 0) {
            throw new InventoryRefusal.BadReading(
                    "The product water reads more than the feed (" + product + ", " + feed + ")");
        }
        if (!volume.unit().isLike(Unit.LITRE)) {
            throw new InventoryRefusal.BadReading(volume + " is not a volume of water");
        }
        Limits.notNegative("volume", volume);
    }
}
