package eaveside.inventory;

import eaveside.kernel.MixId;
import eaveside.kernel.StockItemId;
import eaveside.kernel.Texts;
import org.jspecify.annotations.Nullable;

/**
 * What crews mix: a visit uses mix, the books use the concentrate in it.
 *
 * @param  version as read; null for a new mix
 */
public record Mix(
        MixId id,
        String name,
        StockItemId concentrate,
        MixRatio ratio,
        boolean active,
        @Nullable Integer version) {
    public Mix {
        name = Texts.required("name", name, 100);
    }

    public static Mix of(MixId id, String name, StockItemId concentrate, MixRatio ratio) {
        return new Mix(id, name, concentrate, ratio, true, null);
    }
}
