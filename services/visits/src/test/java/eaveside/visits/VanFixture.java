package eaveside.visits;

import static eaveside.visits.VisitsFixture.usd;

import eaveside.inventory.Location;
import eaveside.inventory.Mix;
import eaveside.inventory.MixRatio;
import eaveside.inventory.ReceiveGoods;
import eaveside.inventory.SaveLocation;
import eaveside.inventory.SaveMix;
import eaveside.inventory.SaveStockItem;
import eaveside.inventory.StockItem;
import eaveside.inventory.StockType;
import eaveside.kernel.DocumentId;
import eaveside.kernel.LocationId;
import eaveside.kernel.LotId;
import eaveside.kernel.MixId;
import eaveside.kernel.Quantity;
import eaveside.kernel.StockItemId;
import eaveside.kernel.Unit;
import eaveside.kernel.UserId;
import eaveside.testing.Bench;
import java.util.List;

/**
 * A van with alkaline soap (1,280 fl oz at 0.50), a canister (10,000 grains at 0.018), a brush (5,000 units at 0.03) and
 * parts (10 at 42.00); its mix is 1 : 31 added to water.
 */
final class VanFixture {
    final LocationId van = LocationId.next();
    final LocationId store = LocationId.next();
    final StockItemId soap = StockItemId.next();
    final StockItemId resin = StockItemId.next();
    final StockItemId brushes = StockItemId.next();
    final StockItemId parts = StockItemId.next();
    final LotId canister = LotId.next();
    final LotId brush = LotId.next();
    final MixId mix = MixId.next();
    private final Bench bench;
    private final UserId owner;

    VanFixture(Bench bench, UserId owner, UserId technician) {
        this.bench = bench;
        this.owner = owner;
        save(new StockItem(soap, "SOAP", "Soap", StockType.CONCENTRATE, Unit.US_FLUID_OUNCE, List.of(), true, true, 0));
        save(StockItem.of(resin, "RESIN", "Canister", StockType.RESIN, Unit.GRAIN));
        save(StockItem.of(brushes, "BRUSH", "Brush", StockType.BRUSH, Unit.PIECE));
        save(StockItem.of(parts, "PARTS", "Parts", StockType.PLAIN, Unit.PIECE));
        bench.get(SaveMix.class).save(Mix.of(mix, "Strong mix", soap, MixRatio.addedToWater("31")), owner);
        bench.get(SaveLocation.class).save(Location.van(van, "Van 1", technician), owner);
        bench.get(SaveLocation.class).save(Location.store(store, "Store room"), owner);
        bench.get(ReceiveGoods.class)
                .receive(new ReceiveGoods.Receipt(
                        DocumentId.next(),
                        VisitsFixture.TODAY,
                        van,
                        "Suds & Co",
                        "",
                        List.of(
                                received(LotId.next(), soap, Quantity.of(1280, Unit.US_FLUID_OUNCE), "640.00", ""),
                                received(canister, resin, Quantity.of(10_000, Unit.GRAIN), "180.00", "C-1"),
                                received(brush, brushes, Quantity.of(5_000, Unit.PIECE), "150.00", "B-1"),
                                received(LotId.next(), parts, Quantity.of(10, Unit.PIECE), "420.00", "")),
                        owner));
    }

    private void save(StockItem item) {
        bench.get(SaveStockItem.class).save(item, owner);
    }

    private static ReceiveGoods.Received received(
            LotId lot, StockItemId item, Quantity quantity, String cost, String label) {
        return new ReceiveGoods.Received(lot, item, null, quantity, usd(cost), label);
    }

    /** Another canister in the van, of 1,000 grains at 0.018. */
    LotId anotherCanister(String label) {
        LotId lot = LotId.next();
        bench.get(ReceiveGoods.class)
                .receive(new ReceiveGoods.Receipt(
                        DocumentId.next(),
                        VisitsFixture.TODAY,
                        van,
                        "Suds & Co",
                        "",
                        List.of(received(lot, resin, Quantity.of(1_000, Unit.GRAIN), "18.00", label)),
                        owner));
        return lot;
    }
}
