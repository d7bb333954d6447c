package eaveside.inventory;

import static eaveside.inventory.StockFixture.DAY;
import static eaveside.inventory.StockFixture.OWNER;
import static eaveside.inventory.StockFixture.gallons;
import static eaveside.inventory.StockFixture.line;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.inventory.SetReorderPoint.ReorderPoint;
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
        StockItem stored = save.save(asked, OWNER);
        assertEquals(stored, save.save(asked, OWNER), "the same again is a retry");
        assertThrows(KernelRefusal.Stale.class, () -> save.save(renamed(asked, "Other soap"), OWNER));
        StockItem better = save.save(renamed(stored, "Better soap").with(new Pack("Drum", gallons("55"))), OWNER);
        assertEquals("Better soap", bench.get(ReadStock.class).item(asked.id()).name());
        assertEquals(List.of(new Pack("Drum", gallons("55"))), better.packs());
        assertThrows(KernelRefusal.Stale.class, () -> save.save(renamed(stored, "Third"), OWNER));
        assertThrows(
                KernelRefusal.Taken.class,
                () -> save.save(StockItem.of(StockItemId.next(), "A1", "X", StockType.PLAIN, Unit.PIECE), OWNER));
        assertThrows(
                KernelRefusal.NotFound.class,
                () -> save.save(
                        new StockItem(
                                StockItemId.next(), "A9", "X", StockType.PLAIN, Unit.PIECE, List.of(), false, true, 3),
                        OWNER));
    }

    @Test
    void of_two_rivals_one_loses() throws Exception {
        StockItem stored = at.soap("RIVAL");
        try (ExecutorService pool = Executors.newFixedThreadPool(4)) {
            List<Callable<Boolean>> rivals = List.of("one", "two", "three", "four").stream()
                    .map(name -> (Callable<Boolean>) () -> {
                        try {
                            bench.get(SaveStockItem.class).save(renamed(stored, name), OWNER);
                            return true;
                        } catch (KernelRefusal.Stale loser) {
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
        StockItem liters = save.save(
                new StockItem(
                        soap.id(), "KEEP", soap.name(), soap.type(), Unit.LITER, List.of(), true, true, soap.version()),
                OWNER);
        at.receive(DAY, at.store, line(liters, gallons("1"), "10"));
        assertEquals(Quantity.of("3.785412", Unit.LITER), at.held(at.store, liters));
        assertThrows(
                InventoryRefusal.TypeFixed.class,
                () -> save.save(
                        new StockItem(
                                soap.id(),
                                "KEEP",
                                soap.name(),
                                soap.type(),
                                Unit.US_GALLON,
                                List.of(),
                                true,
                                true,
                                liters.version()),
                        OWNER));
        StockItem retired = save.save(
                new StockItem(
                        soap.id(),
                        "KEEP",
                        soap.name(),
                        soap.type(),
                        Unit.LITER,
                        List.of(),
                        true,
                        false,
                        liters.version()),
                OWNER);
        assertThrows(KernelRefusal.NotActive.class, () -> at.receive(DAY, at.store, line(retired, gallons("1"), "10")));
        at.use(DAY, at.store, new Draw(soap.id(), null, Quantity.of(1, Unit.LITER)));
        bench.verifyBooks();
    }

    @Test
    void an_item_is_saved_with_its_reorder_points_or_not_at_all() {
        SaveStockItem save = bench.get(SaveStockItem.class);
        ReadStock read = bench.get(ReadStock.class);
        StockItemId leastSoap = StockItemId.next();
        StockItem soap = save.save(
                StockItem.of(leastSoap, "LEAST", "Soap", StockType.CONCENTRATE, Unit.LITER),
                List.of(
                        new ReorderPoint(leastSoap, at.store.id(), Quantity.of(5, Unit.LITER)),
                        new ReorderPoint(leastSoap, at.van.id(), Quantity.of(1500, Unit.MILLILITER))),
                OWNER);
        assertEquals(
                Map.of(at.store.id(), Quantity.of(5, Unit.LITER), at.van.id(), Quantity.of("1.5", Unit.LITER)),
                read.reorderPoints(soap.id()));
        assertThrows(
                KernelRefusal.Negative.class,
                () -> new ReorderPoint(soap.id(), at.van.id(), Quantity.of(-1, Unit.LITER)));
        assertThrows(
                KernelRefusal.NotFound.class,
                () -> save.save(
                        renamed(soap, "Better soap"),
                        List.of(
                                new ReorderPoint(soap.id(), at.van.id(), Quantity.of(9, Unit.LITER)),
                                new ReorderPoint(soap.id(), LocationId.next(), Quantity.of(1, Unit.LITER))),
                        OWNER));
        assertEquals("Soap", read.item(soap.id()).name());
        assertEquals(
                Quantity.of("1.5", Unit.LITER), read.reorderPoints(soap.id()).get(at.van.id()));
        assertThrows(
                InventoryRefusal.TypeFixed.class,
                () -> save.save(
                        new StockItem(
                                soap.id(),
                                "LEAST",
                                "Soap",
                                StockType.PLAIN,
                                Unit.FOOT,
                                List.of(),
                                false,
                                true,
                                soap.version()),
                        OWNER));
        save.save(soap, List.of(new ReorderPoint(soap.id(), at.van.id(), Quantity.zero(Unit.LITER))), OWNER);
        assertEquals(Map.of(at.store.id(), Quantity.of(5, Unit.LITER)), read.reorderPoints(soap.id()));
        assertThrows(
                KernelRefusal.NotPositive.class,
                () -> soap.with(new Pack("Drop", Quantity.of("0.0001", Unit.MILLILITER))));
    }

    @Test
    void the_database_keeps_an_items_unit_under_its_reorder_point() {
        StockItem rope = bench.get(SaveStockItem.class)
                .save(StockItem.of(StockItemId.next(), "ROPE", "Rope", StockType.PLAIN, Unit.METER), OWNER);
        bench.get(SetReorderPoint.class)
                .set(new ReorderPoint(rope.id(), at.store.id(), Quantity.of(20, Unit.METER)), OWNER);
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
                .save(StockItem.of(StockItemId.next(), "ROPE-2", "Second rope", StockType.PLAIN, Unit.METER), OWNER);
        SetReorderPoint set = bench.get(SetReorderPoint.class);
        List<Callable<@Nullable Void>> rivals = new ArrayList<>();
        for (int meters = 1; meters <= 5; meters++) {
            Quantity least = Quantity.of(meters, Unit.METER);
            rivals.add(() -> {
                set.set(new ReorderPoint(rope.id(), at.store.id(), least), OWNER);
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
        Location van = save.save(Location.van(LocationId.next(), "Old van", cid), OWNER);
        Location room =
                save.save(new Location(van.id(), "Old van", LocationType.STORE, List.of(), true, van.version()), OWNER);
        assertEquals(room, bench.get(ReadStock.class).location(van.id()));
        assertEquals(Optional.empty(), bench.get(ReadStock.class).vanOf(cid));
    }

    @Test
    void a_technician_has_at_most_one_van() {
        UserId ana = at.technician("ana");
        UserId ben = at.technician("ben");
        SaveLocation save = bench.get(SaveLocation.class);
        Location shared = save.save(Location.van(LocationId.next(), "Shared van", ana, ben), OWNER);
        assertEquals(Optional.of(shared), bench.get(ReadStock.class).vanOf(ben));
        assertThrows(
                InventoryRefusal.TechnicianHasVan.class,
                () -> save.save(Location.van(LocationId.next(), "Second van", ben), OWNER));
        Location smaller = save.save(
                new Location(shared.id(), "Shared van", LocationType.VAN, List.of(ana), true, shared.version()), OWNER);
        save.save(Location.van(LocationId.next(), "Second van", ben), OWNER);
        assertEquals(
                List.of(ana), bench.get(ReadStock.class).location(smaller.id()).technicians());
        assertThrows(
                KernelRefusal.NotFound.class,
                () -> save.save(Location.van(LocationId.next(), "Third van", UserId.next()), OWNER));
        assertThrows(KernelRefusal.Taken.class, () -> save.save(Location.van(LocationId.next(), "Second van"), OWNER));
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
        Location shed = save.save(Location.store(LocationId.next(), "Shed"), OWNER);
        StockItem soap = at.soap("SHED");
        at.receive(DAY, shed, line(soap, gallons("1"), "10"));
        Location closed = new Location(shed.id(), "Shed", LocationType.STORE, List.of(), false, shed.version());
        assertThrows(InventoryRefusal.LocationNotEmpty.class, () -> save.save(closed, OWNER));
        at.transfer(DAY, shed, at.store, new Portion(soap.id(), null, null));
        save.save(closed, OWNER);
        assertThrows(KernelRefusal.NotActive.class, () -> at.receive(DAY, shed, line(soap, gallons("1"), "10")));
        assertThrows(
                KernelRefusal.NotActive.class,
                () -> at.transfer(DAY, at.store, shed, Portion.of(soap.id(), gallons("1"))));
        bench.verifyBooks();
    }

    @Test
    void a_mix_is_made_of_a_concentrate() {
        SaveMix save = bench.get(SaveMix.class);
        StockItem soap = at.soap("MIX");
        Mix stored = save.save(Mix.of(MixId.next(), "Array wash", soap.id(), MixRatio.addedToWater("40")), OWNER);
        assertEquals(
                stored, save.save(Mix.of(stored.id(), "Array wash", soap.id(), MixRatio.addedToWater("40.0")), OWNER));
        Mix weaker = save.save(
                new Mix(stored.id(), "Array wash", soap.id(), MixRatio.addedToWater("60"), true, stored.version()),
                OWNER);
        assertEquals(weaker, bench.get(ReadStock.class).mix(stored.id()));
        assertThrows(
                KernelRefusal.Stale.class,
                () -> save.save(
                        new Mix(
                                stored.id(),
                                "Array wash",
                                soap.id(),
                                MixRatio.addedToWater("80"),
                                true,
                                stored.version()),
                        OWNER));
        assertThrows(
                InventoryRefusal.NotAConcentrate.class,
                () -> save.save(
                        Mix.of(MixId.next(), "Glove soup", at.gloves("GL").id(), MixRatio.addedToWater("2")), OWNER));
        assertThrows(
                InventoryRefusal.TypeFixed.class,
                () -> bench.get(SaveStockItem.class)
                        .save(
                                new StockItem(
                                        soap.id(),
                                        "MIX",
                                        soap.name(),
                                        StockType.PLAIN,
                                        soap.baseUnit(),
                                        List.of(),
                                        false,
                                        true,
                                        soap.version()),
                                OWNER));
    }

    private static long audited(Object subject) {
        return ((Number) bench.value("select count(*) from audit_event where subject = ?", subject.toString()))
                .longValue();
    }

    @Test
    void what_is_new_has_version_0_and_stored_begins_at_1_with_its_audit_line() {
        StockItem soap = StockItem.of(StockItemId.next(), "NEW", "New soap", StockType.CONCENTRATE, Unit.US_GALLON);
        Location shed = Location.store(LocationId.next(), "New shed");
        Mix mix = Mix.of(MixId.next(), "New mix", soap.id(), MixRatio.inSolution("4"));

        assertEquals(1, bench.get(SaveStockItem.class).save(soap, OWNER).version());
        assertEquals(1, bench.get(SaveLocation.class).save(shed, OWNER).version());
        assertEquals(1, bench.get(SaveMix.class).save(mix, OWNER).version());
        assertEquals(1, bench.get(SaveStockItem.class).save(soap, OWNER).version(), "a retry");
        assertEquals(1, bench.get(SaveLocation.class).save(shed, OWNER).version(), "a retry");
        assertEquals(1, bench.get(SaveMix.class).save(mix, OWNER).version(), "a retry");

        for (Object subject : List.of(soap.id(), shed.id(), mix.id())) {
            assertEquals(1L, audited(subject), subject.toString());
        }
        assertEquals(
                3L,
                bench.value("select count(*) from audit_event a join (select id, xmin from stock_item"
                        + " union all select id, xmin from location union all select id, xmin from mix) v"
                        + " on a.subject = v.id::text and a.xmin = v.xmin where v.id in ('" + soap.id() + "', '"
                        + shed.id() + "', '" + mix.id() + "')"),
                "each line is written in the transaction of its deed");
    }

    @Test
    void whoever_saves_second_is_refused_with_both_contents() {
        StockItem first = at.soap("BOTH");
        StockItem theirs = bench.get(SaveStockItem.class).save(renamed(first, "Their soap"), OWNER);

        var refusal = assertThrows(
                KernelRefusal.Stale.class, () -> bench.get(SaveStockItem.class).save(renamed(first, "My soap"), OWNER));

        assertEquals("stock-item.stale", refusal.code());
        assertEquals(theirs, refusal.theirs());
        assertEquals(List.of("name"), refusal.fields());
    }

    @Test
    void two_at_once_on_a_new_id_are_one() throws Exception {
        StockItem item = StockItem.of(StockItemId.next(), "TWINS", "Twins", StockType.PLAIN, Unit.PIECE)
                .with(new Pack("Case", Quantity.of(6, Unit.PIECE)));
        Location shed = Location.store(LocationId.next(), "Twin shed");
        Mix mix = Mix.of(MixId.next(), "Twin mix", at.soap("TWIN-SOAP").id(), MixRatio.addedToWater("9"));
        List<Callable<Integer>> saves = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            saves.add(() -> bench.get(SaveStockItem.class).save(item, OWNER).version());
            saves.add(() -> bench.get(SaveLocation.class).save(shed, OWNER).version());
            saves.add(() -> bench.get(SaveMix.class).save(mix, OWNER).version());
        }
        try (ExecutorService all = Executors.newFixedThreadPool(saves.size())) {
            for (Future<Integer> saved : all.invokeAll(saves)) {
                assertEquals(1, saved.get());
            }
        }
        assertEquals(1L, audited(item.id()));
        assertEquals(1L, audited(shed.id()));
        assertEquals(1L, audited(mix.id()));
    }

    @Test
    void packs_are_the_same_in_whatever_unit_they_are_entered() {
        StockItem ounces = StockItem.of(
                        StockItemId.next(), "OUNCES", "Soap", StockType.CONCENTRATE, Unit.US_FLUID_OUNCE)
                .with(new Pack("Jug", gallons("1")), new Pack("Drum", gallons("55")));
        StockItem stored = bench.get(SaveStockItem.class).save(ounces, OWNER);

        assertEquals(
                Quantity.of(7040, Unit.US_FLUID_OUNCE),
                stored.packs().getFirst().content());
        assertEquals(
                stored,
                bench.get(SaveStockItem.class)
                        .save(
                                stored.with(
                                        new Pack("Jug", Quantity.of(128, Unit.US_FLUID_OUNCE)),
                                        new Pack("Drum", gallons("55"))),
                                OWNER),
                "nothing has changed");
    }

    @Test
    void everything_wrong_with_an_item_is_said_at_once() {
        var refused = assertThrows(
                KernelRefusal.Several.class,
                () -> new StockItem(
                        StockItemId.next(),
                        "",
                        " ",
                        StockType.RESIN,
                        Unit.PIECE,
                        List.of(new Pack("Bag", Quantity.of(50, Unit.POUND))),
                        false,
                        true,
                        0));
        assertEquals(List.of("name", "code", "baseUnit", "packs[0].content"), refused.fields());
    }

    @Test
    void a_reorder_point_set_again_is_a_retry() {
        StockItem rope = at.item("ROPE-3", StockType.PLAIN, Unit.METER);
        ReorderPoint least = new ReorderPoint(rope.id(), at.store.id(), Quantity.of("0.5", Unit.KILOMETER));
        SetReorderPoint set = bench.get(SetReorderPoint.class);

        assertEquals(Quantity.of(500, Unit.METER), set.set(least, OWNER).quantity());
        assertEquals(Quantity.of(500, Unit.METER), set.set(least, OWNER).quantity());
        assertEquals(1L, audited(at.store.id() + "/" + rope.id()));
        set.set(new ReorderPoint(rope.id(), at.store.id(), Quantity.zero(Unit.METER)), OWNER);
        assertEquals(Map.of(), bench.get(ReadStock.class).reorderPoints(rope.id()));
        assertEquals(2L, audited(at.store.id() + "/" + rope.id()));
    }
}
