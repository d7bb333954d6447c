package eaveside.inventory;

import static eaveside.inventory.StockFixture.DAY;
import static eaveside.inventory.StockFixture.gallons;
import static eaveside.inventory.StockFixture.line;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.kernel.KernelRefusal;
import eaveside.kernel.LocationId;
import eaveside.kernel.MixId;
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
                item.type(),
                item.baseUnit(),
                item.packs(),
                item.alkaline(),
                item.active(),
                item.version());
    }

    @Test
    void an_item_survives_retries_and_rivals() {
        SaveStockItem save = bench.get(SaveStockItem.class);
        StockItem asked = StockItem.of(StockItemId.next(), "A1", "Soap", StockType.CONCENTRATE, Unit.US_GALLON)
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
                () -> save.save(StockItem.of(StockItemId.next(), "A1", "X", StockType.PLAIN, Unit.PIECE)));
        assertThrows(
                InventoryRefusal.NoSuchItem.class,
                () -> save.save(new StockItem(
                        StockItemId.next(), "A9", "X", StockType.PLAIN, Unit.PIECE, List.of(), false, true, 3)));
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
    void an_item_in_use_keeps_its_type_and_unit() {
        StockItem soap = at.soap("KEEP");
        SaveStockItem save = bench.get(SaveStockItem.class);
        StockItem liters = save.save(new StockItem(
                soap.id(), "KEEP", soap.name(), soap.type(), Unit.LITER, List.of(), true, true, soap.version()));
        at.receive(DAY, at.store, line(liters, gallons("1"), "10"));
        assertEquals(Quantity.of("3.785412", Unit.LITER), at.held(at.store, liters));
        assertThrows(
                InventoryRefusal.TypeFixed.class,
                () -> save.save(new StockItem(
                        soap.id(),
                        "KEEP",
                        soap.name(),
                        soap.type(),
                        Unit.US_GALLON,
                        List.of(),
                        true,
                        true,
                        liters.version())));
        StockItem retired = save.save(new StockItem(
                soap.id(), "KEEP", soap.name(), soap.type(), Unit.LITER, List.of(), true, false, liters.version()));
        assertThrows(
                InventoryRefusal.Inactive.class, () -> at.receive(DAY, at.store, line(retired, gallons("1"), "10")));
        at.use(DAY, at.store, new Draw(soap.id(), null, Quantity.of(1, Unit.LITER)));
        bench.verifyBooks();
    }

    @Test
    void an_item_is_saved_with_its_reorder_points_or_not_at_all() {
        SaveStockItem save = bench.get(SaveStockItem.class);
        ReadStock read = bench.get(ReadStock.class);
        StockItem soap = save.save(
                StockItem.of(StockItemId.next(), "LEAST", "Soap", StockType.CONCENTRATE, Unit.LITER),
                Map.of(at.store.id(), Quantity.of(5, Unit.LITER), at.van.id(), Quantity.of(1500, Unit.MILLILITER)));
        assertEquals(
                Map.of(at.store.id(), Quantity.of(5, Unit.LITER), at.van.id(), Quantity.of("1.5", Unit.LITER)),
                read.reorderPoints(soap.id()));
        assertThrows(
                InventoryRefusal.Negative.class,
                () -> save.save(renamed(soap, "Better soap"), Map.of(at.van.id(), Quantity.of(-1, Unit.LITER))));
        assertEquals("Soap", read.item(soap.id()).name());
        assertThrows(
                InventoryRefusal.TypeFixed.class,
                () -> save.save(new StockItem(
                        soap.id(),
                        "LEAST",
                        "Soap",
                        StockType.PLAIN,
                        Unit.FOOT,
                        List.of(),
                        false,
                        true,
                        soap.version())));
        save.save(soap, Map.of(at.van.id(), Quantity.zero(Unit.LITER)));
        assertEquals(Map.of(at.store.id(), Quantity.of(5, Unit.LITER)), read.reorderPoints(soap.id()));
        assertThrows(
                KernelRefusal.NotPositive.class,
                () -> soap.with(new Pack("Drop", Quantity.of("0.0001", Unit.MILLILITER))));
    }

    @Test
    void the_database_keeps_an_items_unit_under_its_reorder_point() {
        StockItem rope = bench.get(SaveStockItem.class)
                .save(
                        StockItem.of(StockItemId.next(), "ROPE", "Rope", StockType.PLAIN, Unit.METER),
                        Map.of(at.store.id(), Quantity.of(20, Unit.METER)));
        SQLException refused = assertThrows(
                SQLException.class,
                () -> bench.executeAsApplication(
                        "update stock_item set base_unit = 'FOT' where id = ?",
                        rope.id().value()));
        assertTrue(refused.getMessage().contains("foreign key"), refused.getMessage());
    }

    @Test
    void of_first_reorder_points_set_at_once_each_finds_the_other() throws Exception {
        StockItem rope = bench.get(SaveStockItem.class)
                .save(StockItem.of(StockItemId.next(), "ROPE-2", "Second rope", StockType.PLAIN, Unit.METER));
        SetReorderPoint set = bench.get(SetReorderPoint.class);
        List<Callable<@Nullable Void>> rivals = new ArrayList<>();
        for (int meters = 1; meters <= 5; meters++) {
            Quantity least = Quantity.of(meters, Unit.METER);
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
        assertEquals(1, bench.get(ReadStock.class).reorderPoints(rope.id()).size());
    }

    @Test
    void a_van_becomes_a_store_room_once_its_technicians_leave() {
        SaveLocation save = bench.get(SaveLocation.class);
        UserId cid = at.technician("cid");
        Location van = save.save(Location.van(LocationId.next(), "Old van", cid));
        Location room =
                save.save(new Location(van.id(), "Old van", LocationType.STORE, List.of(), true, van.version()));
        assertEquals(room, bench.get(ReadStock.class).location(van.id()));
        assertEquals(Optional.empty(), bench.get(ReadStock.class).vanOf(cid));
    }

    @Test
    void a_technician_has_at_most_one_van() {
        UserId ana = at.technician("ana");
        UserId ben = at.technician("ben");
        SaveLocation save = bench.get(SaveLocation.class);
        Location shared = save.save(Location.van(LocationId.next(), "Shared van", ana, ben));
        assertEquals(Optional.of(shared), bench.get(ReadStock.class).vanOf(ben));
        assertThrows(
                InventoryRefusal.TechnicianHasVan.class,
                () -> save.save(Location.van(LocationId.next(), "Second van", ben)));
        Location smaller = save.save(
                new Location(shared.id(), "Shared van", LocationType.VAN, List.of(ana), true, shared.version()));
        save.save(Location.van(LocationId.next(), "Second van", ben));
        assertEquals(
                List.of(ana), bench.get(ReadStock.class).location(smaller.id()).technicians());
        assertThrows(
                InventoryRefusal.NoSuchTechnician.class,
                () -> save.save(Location.van(LocationId.next(), "Third van", UserId.next())));
        assertThrows(InventoryRefusal.NameTaken.class, () -> save.save(Location.van(LocationId.next(), "Second van")));
        AssertionError twice = assertThrows(
                AssertionError.class,
                () -> bench.execute(
                        "insert into location_technician (user_id, location_id) values (?, ?)",
                        ana.value(),
                        at.van.id().value()));
        assertTrue(String.valueOf(twice.getCause()).contains("location_technician_pkey"));
    }

    @Test
    void a_location_goes_out_of_use_only_when_empty() {
        SaveLocation save = bench.get(SaveLocation.class);
        Location shed = save.save(Location.store(LocationId.next(), "Shed"));
        StockItem soap = at.soap("SHED");
        at.receive(DAY, shed, line(soap, gallons("1"), "10"));
        Location closed = new Location(shed.id(), "Shed", LocationType.STORE, List.of(), false, shed.version());
        assertThrows(InventoryRefusal.LocationNotEmpty.class, () -> save.save(closed));
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
                InventoryRefusal.TypeFixed.class,
                () -> bench.get(SaveStockItem.class)
                        .save(new StockItem(
                                soap.id(),
                                "MIX",
                                soap.name(),
                                StockType.PLAIN,
                                soap.baseUnit(),
                                List.of(),
                                false,
                                true,
                                soap.version())));
    }
}
