package eaveside.demo;

import eaveside.kernel.LocationId;
import eaveside.kernel.MixId;
import eaveside.kernel.StockItemId;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * Where the consumables are.
 *
 * @param  vans in the order of the crews
 */
record Depots(
        LocationId store,
        List<LocationId> vans,
        Map<Goods, StockItemId> goods,
        MixId alkalineMix,
        MixId neutralMix,
        MixId biocideMix,
        Deliveries deliveries) {
    Depots {
        vans = List.copyOf(vans);
        goods = Map.copyOf(goods);
    }

    StockItemId id(Goods what) {
        return Objects.requireNonNull(goods.get(what));
    }
}
