package eaveside.demo;

import eaveside.inventory.CountStock;
import eaveside.inventory.Mix;
import eaveside.inventory.MixRatio;
import eaveside.inventory.Place;
import eaveside.inventory.ReadStock;
import eaveside.inventory.ReceiveGoods;
import eaveside.inventory.SaveMix;
import eaveside.inventory.SavePlace;
import eaveside.inventory.SaveStockItem;
import eaveside.inventory.ScrapStock;
import eaveside.inventory.SetMinimum;
import eaveside.inventory.TransferStock;
import eaveside.kernel.DocumentId;
import eaveside.kernel.LotId;
import eaveside.kernel.MixId;
import eaveside.kernel.Money;
import eaveside.kernel.PlaceId;
import eaveside.kernel.Quantity;
import eaveside.kernel.StockItemId;
import eaveside.kernel.Unit;
import eaveside.kernel.UserId;
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

/** Buys, moves, counts and throws away what the crews use up. */
@Dependent
class Storage {
    /** Canisters with less than this share of their rating left are spent. */
    private static final int SPENT_BELOW_PERCENT = 8;

    private final SaveStockItem saveStockItem;
    private final SavePlace savePlace;
    private final SaveMix saveMix;
    private final SetMinimum setMinimum;
    private final ReceiveGoods receiveGoods;
    private final TransferStock transferStock;
    private final CountStock countStock;
    private final ScrapStock scrapStock;
    private final ReadStock readStock;
    private int serial;

    @Inject
    Storage(
            SaveStockItem saveStockItem,
            SavePlace savePlace,
            SaveMix saveMix,
            SetMinimum setMinimum,
            ReceiveGoods receiveGoods,
            TransferStock transferStock,
            CountStock countStock,
            ScrapStock scrapStock,
            ReadStock readStock) {
        this.saveStockItem = saveStockItem;
        this.savePlace = savePlace;
        this.saveMix = saveMix;
        this.setMinimum = setMinimum;
        this.receiveGoods = receiveGoods;
        this.transferStock = transferStock;
        this.countStock = countStock;
        this.scrapStock = scrapStock;
        this.readStock = readStock;
    }

    /** How much a van should start its week with, in packs; a canister and a brush in use come on top. */
    private enum VanLoad {
        ALKALINE(Goods.ALKALINE, 1),
        NEUTRAL(Goods.NEUTRAL, 2),
        BIOCIDE(Goods.BIOCIDE, 1),
        RESIN(Goods.RESIN, 2),
        ARRAY_BRUSH(Goods.ARRAY_BRUSH, 1),
        WINDOW_BRUSH(Goods.WINDOW_BRUSH, 1),
        RUBBER(Goods.RUBBER, 1),
        GLOVES(Goods.GLOVES, 1),
        FILTER(Goods.FILTER, 1),
        CLOTH(Goods.CLOTH, 1);

        final Goods what;
        final int packs;

        VanLoad(Goods what, int packs) {
            this.what = what;
            this.packs = packs;
        }
    }

    Map<Goods, StockItemId> list() {
        Map<Goods, StockItemId> ids = new EnumMap<>(Goods.class);
        for (Goods what : Goods.values()) {
            StockItemId id = StockItemId.next();
            saveStockItem.save(what.item(id));
            ids.put(what, id);
        }
        return ids;
    }

    Depots furnish(Map<Goods, StockItemId> goods, Staff staff) {
        PlaceId store =
                savePlace.save(Place.store(PlaceId.next(), "Store room")).id();
        List<PlaceId> vans = new ArrayList<>();
        for (String name : List.of("Van 1, white", "Van 2, green")) {
            UserId[] crew = staff.crews().get(vans.size()).toArray(UserId[]::new);
            vans.add(savePlace.save(Place.van(PlaceId.next(), name, crew)).id());
        }
        Depots depots = new Depots(
                store,
                vans,
                goods,
                mix("Alkaline roof mix, 1 to 20", goods.get(Goods.ALKALINE), MixRatio.addedToWater("20")),
                mix("Neutral panel mix, 1 to 128", goods.get(Goods.NEUTRAL), MixRatio.addedToWater("128")),
                mix("Moss mix, 1 in 10", goods.get(Goods.BIOCIDE), MixRatio.inSolution("10")));
        setMinimums(depots);
        return depots;
    }

    private MixId mix(String name, @Nullable StockItemId concentrate, MixRatio ratio) {
        return saveMix.save(Mix.of(MixId.next(), name, Objects.requireNonNull(concentrate), ratio))
                .id();
    }

    private void setMinimums(Depots depots) {
        for (Goods what : Goods.values()) {
            int packs = what.kind.isCountedSingly() ? 1 : 2;
            setMinimum.set(depots.id(what), depots.store(), what.of((long) packs * what.content));
        }
        for (PlaceId van : depots.vans()) {
            setMinimum.set(depots.id(Goods.NEUTRAL), van, Goods.NEUTRAL.of(64));
            setMinimum.set(depots.id(Goods.ALKALINE), van, Goods.ALKALINE.of(256));
            setMinimum.set(depots.id(Goods.RESIN), van, Goods.RESIN.of(4_000));
            setMinimum.set(depots.id(Goods.GLOVES), van, Goods.GLOVES.of(30));
            setMinimum.set(depots.id(Goods.FILTER), van, Goods.FILTER.of(2));
        }
    }

    /** One delivery of so many packs each; prices creep up with every delivery. */
    DocumentId receive(Depots depots, LocalDate day, Map<Goods, Integer> packs, int pricePercent, UserId by) {
        List<ReceiveGoods.Received> lines = new ArrayList<>();
        packs.forEach((what, count) -> {
            boolean single = what.kind.isCountedSingly();
            for (int i = 0; i < (single ? count : 1); i++) {
                int quantity = single ? 1 : count;
                lines.add(new ReceiveGoods.Received(
                        LotId.next(),
                        depots.id(what),
                        what.pack,
                        Quantity.of(quantity, Unit.PIECE),
                        cost(what, quantity, pricePercent),
                        single ? what.code + "-" + (1_000 + ++serial) : ""));
            }
        });
        DocumentId id = DocumentId.next();
        receiveGoods.receive(new ReceiveGoods.Receipt(
                id, day, depots.store(), "Clearspring Trade Supply", "CT-" + (40_200 + serial), lines, by));
        return id;
    }

    private static Money cost(Goods what, int packs, int percent) {
        return Dollars.of(what.packCost).times(BigDecimal.valueOf((long) packs * percent), BigDecimal.valueOf(100));
    }
}
