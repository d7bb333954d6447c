package eaveside.inventory;

import static eaveside.inventory.StockFixture.DAY;
import static eaveside.inventory.StockFixture.gallons;
import static eaveside.inventory.StockFixture.line;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.kernel.KernelRefusal;
import eaveside.kernel.MixId;
import eaveside.kernel.PlaceId;
import eaveside.kernel.Quantity;
import eaveside.kernel.StockItemId;
import eaveside.kernel.Unit;
import eaveside.kernel.UserId;
import eaveside.testing.Bench;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

class SaveStockIT {
    @RegisterExtension
    static final Bench bench = new Bench();

    private static StockFixture at;

    @BeforeAll
    static void found() {
        at = StockFixture.on(bench);
    }

    private static StockItem renamed(StockItem item, String name) {
        return new StockItem(
                item.id(),
                item.code(),
                name,
                item.kind(),
                item.baseUnit(),
                item.packs(),
                item.alkaline(),
                item.active(),
                item.version());
    }

    @Test
    void an_item_survives_retries_and_rivals() {
        SaveStockItem save = bench.get(SaveStockItem.class);
        StockItem asked = StockItem.of(StockItemId.next(), "A1", "Soap", StockKind.CONCENTRATE, Unit.US_GALLON)
                .with(new Pack("Jug", gallons("1")), new Pack("Case", gallons("4")));
        StockItem stored = save.save(asked);
        assertEquals(stored, save.save(asked), "the same again is a retry");
        assertThrows(InventoryRefusal.IdTaken.class, () -> save.save(renamed(asked, "Other soap")));
        StockItem better = save.save(renamed(stored, "Better soap").with(new Pack("Drum", gallons("55"))));
        assertEquals("Better soap", bench.get(ReadStock.class).item(asked.id()).name());
        assertEquals(List.of(new Pack("Drum", gallons("55"))), better.packs());
        assertThrows(InventoryRefusal.Stale.class, () -> save.save(renamed(stored, "Third")));
        assertThrows(
                InventoryRefusal.NameTaken.class,
                () -> save.save(StockItem.of(StockItemId.next(), "A1", "X", StockKind.PLAIN, Unit.PIECE)));
        assertThrows(
                InventoryRefusal.NoSuchItem.class,
                () -> save.save(new StockItem(
                        StockItemId.next(), "A9", "X", StockKind.PLAIN, Unit.PIECE, List.of(), false, true, 3)));
    }

    @Test
    void of_two_rivals_one_loses() throws Exception {
        StockItem stored = at.soap("RIVAL");
        try (ExecutorService pool = Executors.newFixedThreadPool(4)) {
            List<Callable<Boolean>> rivals = List.of("one", "two", "three", "four").stream()
                    .map(name -> (Callable<Boolean>) () -> {
                        try {
                            bench.get(SaveStockItem.class).save(renamed(stored, name));
                            return true;
                        } catch (InventoryRefusal.Stale loser) {
                            return false;
                        }
                    })
                    .toList();
            int won = 0;
            for (Future<Boolean> result : pool.invokeAll(rivals)) {
                won += result.get() ? 1 : 0;
            }
            assertEquals(1, won);
        }
    }

    @Test
    void an_item_in_use_keeps_its_kind_and_unit() {
        StockItem soap = at.soap("KEEP");
        SaveStockItem save = bench.get(SaveStockItem.class);
        StockItem litres = save.save(new StockItem(
                soap.id(), "KEEP", soap.name(), soap.kind(), Unit.LITRE, List.of(), true, true, soap.version()));
        at.receive(DAY, at.store, line(litres, gallons("1"), "10"));
        assertEquals(Quantity.of("3.785412", Unit.LITRE), at.held(at.store, litres));
        assertThrows(
                InventoryRefusal.KindFixed.class,
                () -> save.save(new StockItem(
                        soap.id(),
                        "KEEP",
                        soap.name(),
                        soap.kind(),
                        Unit.US_GALLON,
                        List.of(),
                        true,
                        true,
                        litres.version())));
        StockItem retired = save.save(new StockItem(
                soap.id(), "KEEP", soap.name(), soap.kind(), Unit.LITRE, List.of(), true, false, litres.version()));
        assertThrows(
                InventoryRefusal.Inactive.class, () -> at.receive(DAY, at.store, line(retired, gallons("1"), "10")));
        at.use(DAY, at.store, new Draw(soap.id(), null, Quantity.of(1, Unit.LITRE)));
        bench.verifyBooks();
    }

    @Test
    void an_item_is_saved_with_its_minimums_or_not_at_all() {
        SaveStockItem save = bench.get(SaveStockItem.class);
        ReadStock read = bench.get(ReadStock.class);
        StockItem soap = save.save(
                StockItem.of(StockItemId.next(), "LEAST", "Soap", StockKind.CONCENTRATE, Unit.LITRE),
                Map.of(at.store.id(), Quantity.of(5, Unit.LITRE), at.van.id(), Quantity.of(1500, Unit.MILLILITRE)));
        assertEquals(
                Map.of(at.store.id(), Quantity.of(5, Unit.LITRE), at.van.id(), Quantity.of("1.5", Unit.LITRE)),
                read.minimums(soap.id()));
        assertThrows(
                InventoryRefusal.Negative.class,
                () -> save.save(renamed(soap, "Better soap"), Map.of(at.van.id(), Quantity.of(-1, Unit.LITRE))));
        assertEquals("Soap", read.item(soap.id()).name());
        assertThrows(
                InventoryRefusal.KindFixed.class,
                () -> save.save(new StockItem(
                        soap.id(),
                        "LEAST",
                        "Soap",
                        StockKind.PLAIN,
                        Unit.FOOT,
                        List.of(),
                        false,
                        true,
                        soap.version())));
        save.save(soap, Map.of(at.van.id(), Quantity.zero(Unit.LITRE)));
        assertEquals(Map.of(at.store.id(), Quantity.of(5, Unit.LITRE)), read.minimums(soap.id()));
        assertThrows(
                KernelRefusal.NotPositive.class,
                () -> soap.with(new Pack("Drop", Quantity.of("0.0001", Unit.MILLILITRE))));
    }

    @Test
    void the_database_keeps_an_items_unit_under_its_minimum() {
        StockItem rope = bench.get(SaveStockItem.class)
                .save(
                        StockItem.of(StockItemId.next(), "ROPE", "Rope", StockKind.PLAIN, Unit.METRE),
                        Map.of(at.store.id(), Quantity.of(20, Unit.METRE)));
        SQLException refused = assertThrows(
                SQLException.class,
                () -> bench.executeAsApplication(
                        "update stock_item set base_unit = 'FOT' where id = ?",
                        rope.id().value()));
        assertTrue(refused.getMessage().contains("foreign key"), refused.getMessage());
    }

    @Test
    void of_first_minimums_set_at_once_each_finds_the_other() throws Exception {
        StockItem rope = bench.get(SaveStockItem.class)
                .save(StockItem.of(StockItemId.next(), "ROPE-2", "Second rope", StockKind.PLAIN, Unit.METRE));
        SetMinimum set = bench.get(SetMinimum.class);
        List<Callable<@Nullable Void>> rivals = new ArrayList<>();
        for (int metres = 1; metres <= 5; metres++) {
            Quantity least = Quantity.of(metres, Unit.METRE);
            rivals.add(() -> {
                set.set(rope.id(), at.store.id(), least);
                return null;
            });
        }
        try (ExecutorService all = Executors.newFixedThreadPool(rivals.size())) {
            for (Future<@Nullable Void> one : all.invokeAll(rivals)) {
                one.get();
            }
        }
        assertEquals(1, bench.get(ReadStock.class).minimums(rope.id()).size());
    }

    @Test
    void a_van_becomes_a_store_room_once_its_technicians_leave() {
        SavePlace save = bench.get(SavePlace.class);
        UserId cid = at.technician("cid");
        Place van = save.save(Place.van(PlaceId.next(), "Old van", cid));
        Place room = save.save(new Place(van.id(), "Old van", PlaceKind.STORE, List.of(), true, van.version()));
        assertEquals(room, bench.get(ReadStock.class).place(van.id()));
        assertEquals(Optional.empty(), bench.get(ReadStock.class).vanOf(cid));
    }

    @Test
    void a_technician_has_at_most_one_van() {
        UserId ana = at.technician("ana");
        UserId ben = at.technician("ben");
        SavePlace save = bench.get(SavePlace.class);
        Place shared = save.save(Place.van(PlaceId.next(), "Shared van", ana, ben));
        assertEquals(Optional.of(shared), bench.get(ReadStock.class).vanOf(ben));
        assertThrows(
                InventoryRefusal.TechnicianHasVan.class, () -> save.save(Place.van(PlaceId.next(), "Second van", ben)));
        Place smaller =
                save.save(new Place(shared.id(), "Shared van", PlaceKind.VAN, List.of(ana), true, shared.version()));
        save.save(Place.van(PlaceId.next(), "Second van", ben));
        assertEquals(
                List.of(ana), bench.get(ReadStock.class).place(smaller.id()).technicians());
        assertThrows(
                InventoryRefusal.NoSuchTechnician.class,
                () -> save.save(Place.van(PlaceId.next(), "Third van", UserId.next())));
        assertThrows(InventoryRefusal.NameTaken.class, () -> save.save(Place.van(PlaceId.next(), "Second van")));
        AssertionError twice = assertThrows(
                AssertionError.class,
                () -> bench.execute(
                        "insert into place_technician (user_id, place_id) values (?, ?)",
                        ana.value(),
                        at.van.id().value()));
        assertTrue(String.valueOf(twice.getCause()).contains("place_technician_pkey"));
    }

    @Test
    void a_place_goes_out_of_use_only_when_empty() {
        SavePlace save = bench.get(SavePlace.class);
        Place shed = save.save(Place.store(PlaceId.next(), "Shed"));
        StockItem soap = at.soap("SHED");
        at.receive(DAY, shed, line(soap, gallons("1"), "10"));
        Place closed = new Place(shed.id(), "Shed", PlaceKind.STORE, List.of(), false, shed.version());
        assertThrows(InventoryRefusal.PlaceNotEmpty.class, () -> save.save(closed));
        at.transfer(DAY, shed, at.store, new Portion(soap.id(), null, null));
        save.save(closed);
        assertThrows(InventoryRefusal.Inactive.class, () -> at.receive(DAY, shed, line(soap, gallons("1"), "10")));
        assertThrows(
                InventoryRefusal.Inactive.class,
                () -> at.transfer(DAY, at.store, shed, Portion.of(soap.id(), gallons("1"))));
        bench.verifyBooks();
    }

    @Test
    void a_mix_is_made_of_a_concentrate() {
        SaveMix save = bench.get(SaveMix.class);
        StockItem soap = at.soap("MIX");
        Mix stored = save.save(Mix.of(MixId.next(), "Array wash", soap.id(), MixRatio.addedToWater("40")));
        assertEquals(stored, save.save(Mix.of(stored.id(), "Array wash", soap.id(), MixRatio.addedToWater("40.0"))));
        Mix weaker = save.save(
                new Mix(stored.id(), "Array wash", soap.id(), MixRatio.addedToWater("60"), true, stored.version()));
        assertEquals(weaker, bench.get(ReadStock.class).mix(stored.id()));
        assertThrows(
                InventoryRefusal.Stale.class,
                () -> save.save(new Mix(
                        stored.id(), "Array wash", soap.id(), MixRatio.addedToWater("80"), true, stored.version())));
        assertThrows(
                InventoryRefusal.NotAConcentrate.class,
                () -> save.save(
                        Mix.of(MixId.next(), "Glove soup", at.gloves("GL").id(), MixRatio.addedToWater("2"))));
        assertThrows(
                InventoryRefusal.KindFixed.class,
                () -> bench.get(SaveStockItem.class)
                        .save(new StockItem(
                                soap.id(),
                                "MIX",
                                soap.name(),
                                StockKind.PLAIN,
                                soap.baseUnit(),
                                List.of(),
                                false,
                                true,
                                soap.version())));
    }
}
