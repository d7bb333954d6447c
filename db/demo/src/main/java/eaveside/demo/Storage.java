package eaveside.demo;

import eaveside.inventory.CountStock;
import eaveside.inventory.CountedItem;
import eaveside.inventory.KeepVehicles;
import eaveside.inventory.Location;
import eaveside.inventory.LotLevel;
import eaveside.inventory.Mix;
import eaveside.inventory.MixRatio;
import eaveside.inventory.Portion;
import eaveside.inventory.ReadStock;
import eaveside.inventory.ReceiveGoods;
import eaveside.inventory.ReverseStockDocument;
import eaveside.inventory.SaveLocation;
import eaveside.inventory.SaveMix;
import eaveside.inventory.SaveStockItem;
import eaveside.inventory.SetReorderPoint;
import eaveside.inventory.SetReorderPoint.ReorderPoint;
import eaveside.inventory.StockCount;
import eaveside.inventory.TransferStock;
import eaveside.inventory.Vehicle;
import eaveside.inventory.WriteOffStock;
import eaveside.kernel.DocumentId;
import eaveside.kernel.LocationId;
import eaveside.kernel.LotId;
import eaveside.kernel.MixId;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.StockItemId;
import eaveside.kernel.Unit;
import eaveside.kernel.UserId;
import eaveside.kernel.VehicleId;
import eaveside.ledger.ReverseDocument;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** Receives, transfers, counts and writes off what the crews use up. */
@Dependent
class Storage {
    /** Canisters with less than this share of their rating left are spent. */
    private static final int SPENT_BELOW_PERCENT = 8;

    private final SaveStockItem saveStockItem;
    private final SaveLocation saveLocation;
    private final KeepVehicles keepVehicles;
    private final SaveMix saveMix;
    private final SetReorderPoint setReorderPoint;
    private final ReceiveGoods receiveGoods;
    private final TransferStock transferStock;
    private final CountStock countStock;
    private final WriteOffStock writeOffStock;
    private final ReverseStockDocument reverseStockDocument;
    private final ReadStock readStock;

    @Inject
    Storage(
            SaveStockItem saveStockItem,
            SaveLocation saveLocation,
            KeepVehicles keepVehicles,
            SaveMix saveMix,
            SetReorderPoint setReorderPoint,
            ReceiveGoods receiveGoods,
            TransferStock transferStock,
            CountStock countStock,
            WriteOffStock writeOffStock,
            ReverseStockDocument reverseStockDocument,
            ReadStock readStock) {
        this.saveStockItem = saveStockItem;
        this.saveLocation = saveLocation;
        this.keepVehicles = keepVehicles;
        this.saveMix = saveMix;
        this.setReorderPoint = setReorderPoint;
        this.receiveGoods = receiveGoods;
        this.transferStock = transferStock;
        this.countStock = countStock;
        this.writeOffStock = writeOffStock;
        this.reverseStockDocument = reverseStockDocument;
        this.readStock = readStock;
    }

    Map<Goods, StockItemId> list(UserId by) {
        Map<Goods, StockItemId> ids = new EnumMap<>(Goods.class);
        for (Goods what : Goods.values()) {
            StockItemId id = StockItemId.next();
            saveStockItem.save(what.item(id), by);
            ids.put(what, id);
        }
        return ids;
    }

    Depots furnish(Map<Goods, StockItemId> goods, Staff staff) {
        UserId by = staff.owner();
        LocationId store = saveLocation
                .save(Location.store(LocationId.next(), "Store room"), by)
                .id();
        List<LocationId> vans = new ArrayList<>();
        for (String name : List.of("Van 1, white", "Van 2, green")) {
            UserId[] crew = staff.crews().get(vans.size()).toArray(UserId[]::new);
            vans.add(saveLocation
                    .save(Location.van(LocationId.next(), name, crew), by)
                    .id());
            keepVehicles.save(new Vehicle(VehicleId.next(), name, "DEMO 10" + vans.size(), "", true, 0), by);
        }
        Depots depots = new Depots(
                store,
                vans,
                goods,
                mix("Alkaline roof mix, 1 to 20", goods.get(Goods.ALKALINE), MixRatio.addedToWater("20"), by),
                mix("Neutral panel mix, 1 to 128", goods.get(Goods.NEUTRAL), MixRatio.addedToWater("128"), by),
                mix("Moss mix, 1 in 10", goods.get(Goods.BIOCIDE), MixRatio.inSolution("10"), by),
                new Deliveries());
        setReorderPoints(depots, by);
        return depots;
    }

    private MixId mix(String name, @Nullable StockItemId concentrate, MixRatio ratio, UserId by) {
        return saveMix.save(Mix.of(MixId.next(), name, Objects.requireNonNull(concentrate), ratio), by)
                .id();
    }

    private void setReorderPoints(Depots depots, UserId by) {
        for (Goods what : Goods.values()) {
            int packs = what.type.isCountedSingly() ? 1 : 2;
            setReorderPoint.set(
                    new ReorderPoint(depots.id(what), depots.store(), what.of((long) packs * what.content)), by);
        }
        for (LocationId van : depots.vans()) {
            setReorderPoint.set(new ReorderPoint(depots.id(Goods.NEUTRAL), van, Goods.NEUTRAL.of(64)), by);
            setReorderPoint.set(new ReorderPoint(depots.id(Goods.ALKALINE), van, Goods.ALKALINE.of(256)), by);
            setReorderPoint.set(new ReorderPoint(depots.id(Goods.RESIN), van, Goods.RESIN.of(4_000)), by);
            setReorderPoint.set(new ReorderPoint(depots.id(Goods.GLOVES), van, Goods.GLOVES.of(30)), by);
            setReorderPoint.set(new ReorderPoint(depots.id(Goods.FILTER), van, Goods.FILTER.of(2)), by);
        }
    }

    /** One delivery of so many packs each; prices creep up with every delivery. */
    DocumentId receive(Depots depots, LocalDate day, Map<Goods, Integer> packs, int pricePercent, UserId by) {
        List<ReceiveGoods.Received> lines = new ArrayList<>();
        packs.forEach((what, count) -> {
            boolean single = what.type.isCountedSingly();
            for (int i = 0; i < (single ? count : 1); i++) {
                int quantity = single ? 1 : count;
                lines.add(new ReceiveGoods.Received(
                        LotId.next(),
                        depots.id(what),
                        what.pack,
                        Quantity.of(quantity, Unit.PIECE),
                        cost(what, quantity, pricePercent),
                        single ? what.code + "-" + depots.deliveries().nextSerial() : ""));
            }
        });
        lines.forEach(line -> depots.deliveries().delivered(line.cost()));
        DocumentId id = DocumentId.next();
        receiveGoods.receive(new ReceiveGoods.Receipt(
                id,
                day,
                depots.store(),
                "Tansyford Trade Supply",
                "CT-" + depots.deliveries().nextSerial(),
                lines,
                by));
        return id;
    }

    private static Money cost(Goods what, int packs, int percent) {
        return Dollars.of(what.packCost).times(BigDecimal.valueOf((long) packs * percent), BigDecimal.valueOf(100));
    }

    VanStock look(LocationId van) {
        return new VanStock(van, readStock.levels(van), readStock.countedSingly(van));
    }

    /** Sees to it that the van holds so much, from the store room or from the supplier. */
    void ensure(Scene scene, VanStock stock, Goods what, Quantity needed) {
        VanStock now = stock;
        while (!now.holds(scene.depots().id(what), needed)) {
            fetch(scene, now.van(), what);
            now = look(now.van());
        }
    }

    /** The canister or brush in the van to use; a new one where none lasts. */
    LotId single(Scene scene, VanStock stock, Goods what, int needed) {
        StockItemId item = scene.depots().id(what);
        return stock.lasting(item, what.of(needed)).orElseGet(() -> {
            fetch(scene, stock.van(), what);
            return look(stock.van()).lasting(item, what.of(needed)).orElseThrow();
        });
    }

    private Quantity held(Depots depots, LocationId location, Goods what) {
        return readStock.lots(location, depots.id(what)).stream()
                .map(LotLevel::quantity)
                .reduce(Quantity.zero(what.unit), Quantity::plus);
    }

    /** A pack from the store room into the van; the supplier delivers first where there is none left. */
    private void fetch(Scene scene, LocationId van, Goods what) {
        Depots depots = scene.depots();
        if (held(depots, depots.store(), what).compareTo(what.of(what.content)) < 0) {
            receive(
                    depots,
                    scene.day(),
                    Map.of(what, what.type.isCountedSingly() ? 3 : 4),
                    104,
                    scene.staff().biller());
        }
        transfer(depots, scene.day(), van, Map.of(what, 1), scene.staff().scheduler());
    }

    /** The van's first load. */
    void load(Scene scene, LocationId van) {
        Map<Goods, Integer> packs = new EnumMap<>(Goods.class);
        for (Goods what : Goods.values()) {
            packs.put(what, what == Goods.RESIN || what == Goods.NEUTRAL ? 2 : 1);
        }
        transfer(scene.depots(), scene.day(), van, packs, scene.staff().scheduler());
    }

    private void transfer(Depots depots, LocalDate day, LocationId van, Map<Goods, Integer> packs, UserId by) {
        List<Portion> portions = new ArrayList<>();
        packs.forEach((what, count) -> {
            if (what.type.isCountedSingly()) {
                readStock.lots(depots.store(), depots.id(what)).stream()
                        .limit(count)
                        .forEach(lot -> portions.add(Portion.whole(depots.id(what), lot.lot())));
            } else {
                portions.add(Portion.of(depots.id(what), what.of((long) count * what.content)));
            }
        });
        transferStock.transfer(
                new TransferStock.Transfer(DocumentId.next(), day, depots.store(), van, "For the week", portions, by));
    }

    /** Throws away the canisters in the van that are as good as spent. */
    void writeOffSpent(Scene scene, LocationId van) {
        Quantity least = Goods.RESIN.of((long) Goods.RESIN.content * SPENT_BELOW_PERCENT / 100);
        List<Portion> spent = readStock.lots(van, scene.depots().id(Goods.RESIN)).stream()
                .filter(lot -> lot.quantity().compareTo(least) < 0)
                .map(lot -> Portion.whole(scene.depots().id(Goods.RESIN), lot.lot()))
                .toList();
        if (!spent.isEmpty()) {
            writeOffStock.writeOff(new WriteOffStock.WriteOff(
                    DocumentId.next(),
                    scene.day(),
                    van,
                    "Pure water above 10 ppm",
                    spent,
                    scene.staff()
                            .crews()
                            .get(scene.depots().vans().indexOf(van))
                            .getFirst()));
        }
    }

    /** Counts what gets lost most easily in the store room; a little of each is missing. */
    void count(Scene scene) {
        Depots depots = scene.depots();
        List<CountedItem> lines = new ArrayList<>();
        for (Goods what : List.of(Goods.GLOVES, Goods.CLOTH, Goods.RUBBER)) {
            Quantity held = held(depots, depots.store(), what);
            Quantity found = held.minus(what.of(scene.dice().between(0, 4)));
            lines.add(CountedItem.found(depots.id(what), null, found.isNegative() ? what.of(0) : found));
        }
        countStock.count(new StockCount(
                DocumentId.next(),
                scene.day(),
                depots.store(),
                "Month-end count",
                lines,
                scene.staff().biller()));
    }

    /** A delivery entered with a wrong quantity, taken back and entered again. */
    void receiveWrongly(Scene scene) {
        UserId by = scene.staff().biller();
        DocumentId wrong = receive(scene.depots(), scene.day(), Map.of(Goods.CLOTH, 22), 100, by);
        scene.depots().deliveries().delivered(cost(Goods.CLOTH, 22, 100).negated());
        reverseStockDocument.reverse(new ReverseDocument.Reversal(
                DocumentId.next(), wrong, scene.day(), "Two bundles came, not twenty-two", by));
        receive(scene.depots(), scene.day(), Map.of(Goods.CLOTH, 2), 100, by);
    }
}
