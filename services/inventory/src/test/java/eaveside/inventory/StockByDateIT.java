package eaveside.inventory;

import static eaveside.inventory.StockFixture.grains;
import static eaveside.inventory.StockFixture.labeled;
import static eaveside.inventory.StockFixture.line;
import static eaveside.inventory.StockFixture.pieces;
import static eaveside.inventory.StockFixture.usd;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.inventory.ReceiveGoods.Received;
import eaveside.kernel.LotId;
import eaveside.kernel.Quantity;
import eaveside.kernel.Refusal;
import eaveside.kernel.Unit;
import eaveside.ledger.Posted;
import eaveside.testing.Bench;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import org.joda.money.CurrencyUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** What a location holds of a lot on a day decides what may leave it that day. */
class StockByDateIT {
    /** Number series remember their last day, so each test has weeks of its own. */
    private static final int WEEKS = 3;

    @RegisterExtension
    static final Bench bench = new Bench();

    private static StockFixture at;
    private static int tests;

    private LocalDate day = StockFixture.DAY;

    @BeforeAll
    static void found() {
        at = StockFixture.on(bench);
    }

    @BeforeEach
    void weeks_of_its_own() {
        day = StockFixture.DAY.plusWeeks((long) WEEKS * tests++);
        bench.clock().to(day.plusDays(13));
    }

    @AfterEach
    void books_are_true() {
        bench.verifyBooks();
    }

    private static List<LotId> fallingIds(int count) {
        List<LotId> ids =
                new ArrayList<>(Stream.generate(LotId::next).limit(count).toList());
        ids.sort(Comparator.comparing(LotId::toString).reversed());
        return ids;
    }

    private static Received priced(LotId lot, StockItem item, long pieces, String each) {
        return new Received(lot, item.id(), null, pieces(pieces), usd(each).times(BigDecimal.valueOf(pieces)), "");
    }

    private Drawn use(StockItem item, long pieces) {
        return at.use(day, at.store, new Draw(item.id(), null, pieces(pieces)));
    }

    /** 2 at $2, 3 at $3 and 2 of the 5 at $5: 4 + 9 + 10. By falling ids it would be 25 + 6 = 31. */
    @Test
    void lots_of_one_delivery_leave_by_their_line() {
        StockItem item = at.gloves("LINES");
        List<LotId> ids = fallingIds(3);
        at.receive(
                day,
                at.store,
                priced(ids.get(0), item, 2, "2"),
                priced(ids.get(1), item, 3, "3"),
                priced(ids.get(2), item, 5, "5"));
        assertEquals(usd("23"), use(item, 7).cost());
        assertEquals(
                usd("5"),
                bench.get(ReadStock.class).newestCost(item.id()).orElseThrow().times(pieces(1)),
                "the newest cost is that of the last line");
    }

    @Test
    void deliveries_of_one_day_leave_in_the_order_of_their_receipts() {
        StockItem item = at.gloves("DOCS");
        List<LotId> ids = fallingIds(3);
        at.receive(day, at.store, priced(ids.get(0), item, 2, "2"));
        at.receive(day, at.store, priced(ids.get(1), item, 3, "3"));
        at.receive(day, at.store, priced(ids.get(2), item, 5, "5"));
        assertEquals(
                ids,
                bench.get(ReadStock.class).lots(at.store.id(), item.id()).stream()
                        .map(LotLevel::lot)
                        .toList());
        assertEquals(usd("23"), use(item, 7).cost());
        assertEquals(
                usd("5"),
                bench.get(ReadStock.class).newestCost(item.id()).orElseThrow().times(pieces(1)));
    }

    @Test
    void goods_that_a_count_found_queue_with_the_deliveries_of_the_day() {
        StockItem item = at.gloves("FOUND");
        at.receive(day, at.store, priced(LotId.next(), item, 1, "2"));
        at.count(
                day,
                at.store,
                CountedItem.difference(item.id(), null, pieces(1)).worth(usd("3")));
        at.receive(day, at.store, priced(LotId.next(), item, 1, "5"));
        assertEquals(usd("5"), use(item, 2).cost());
    }

    private static void assertSays(Refusal refused, String... parts) {
        for (String part : parts) {
            assertTrue(refused.text().contains(part), refused.text() + " should say " + part);
        }
    }

    @Test
    void nothing_is_written_off_used_or_moved_before_it_came() {
        StockItem item = at.gloves("EARLY");
        at.receive(day, at.store, line(item, pieces(10), "20"));
        InventoryRefusal.NotEnough early = assertThrows(
                InventoryRefusal.NotEnough.class,
                () -> at.writeOff(day.minusDays(10), at.store, Portion.of(item.id(), pieces(3))));
        assertSays(early, day.minusDays(10).toString(), "0 H87", "3 H87", "Store room");
        assertThrows(
                InventoryRefusal.NotEnough.class,
                () -> at.use(day.minusDays(1), at.store, new Draw(item.id(), null, pieces(3))));
        assertThrows(
                InventoryRefusal.NotEnough.class,
                () -> at.transfer(day.minusDays(1), at.store, at.van, Portion.of(item.id(), pieces(3))));
        InventoryRefusal.NothingThere none = assertThrows(
                InventoryRefusal.NothingThere.class,
                () -> at.writeOff(day.minusDays(10), at.store, new Portion(item.id(), null, null)));
        assertSays(none, day.minusDays(10).toString(), "Store room");
        assertEquals(pieces(10), at.held(at.store, item), "a refusal leaves nothing half-written");
        at.writeOff(day, at.store, Portion.of(item.id(), pieces(3)));
    }

    @Test
    void what_later_documents_use_is_not_there_for_an_earlier_one() {
        StockItem item = at.gloves("LATER");
        at.receive(day, at.store, line(item, pieces(10), "20"));
        at.transfer(day.plusDays(5), at.store, at.van, Portion.of(item.id(), pieces(8)));
        at.receive(day.plusDays(6), at.store, line(item, pieces(100), "300"));
        InventoryRefusal.NotEnough taken = assertThrows(
                InventoryRefusal.NotEnough.class,
                () -> at.writeOff(day.plusDays(2), at.store, Portion.of(item.id(), pieces(3))));
        assertSays(taken, day.plusDays(2).toString(), "10 H87", "2 H87", "3 H87");
        at.writeOff(day.plusDays(2), at.store, Portion.of(item.id(), pieces(2)));
        assertThrows(
                InventoryRefusal.NotEnough.class,
                () -> at.writeOff(day.plusDays(4), at.store, new Portion(item.id(), null, null)),
                "all that was there that day is partly gone since");
        at.writeOff(day.plusDays(6), at.store, Portion.of(item.id(), pieces(100)));
        assertEquals(pieces(0), at.held(at.store, item));
    }

    @Test
    void goods_that_came_back_later_are_not_there_before() {
        StockItem item = at.gloves("BACK");
        at.receive(day, at.store, line(item, pieces(4), "20"));
        at.transfer(day.plusDays(1), at.store, at.van, Portion.of(item.id(), pieces(4)));
        at.transfer(day.plusDays(8), at.van, at.store, Portion.of(item.id(), pieces(4)));
        for (int i = 0; i < 8; i++) {
            int days = i;
            assertThrows(
                    InventoryRefusal.class,
                    () -> at.writeOff(day.plusDays(days), at.store, Portion.of(item.id(), pieces(1))),
                    "day " + days);
        }
        at.writeOff(day.plusDays(8), at.store, Portion.of(item.id(), pieces(4)));
    }

    @Test
    void a_draw_takes_from_each_lot_what_its_day_allows() {
        StockItem item = at.gloves("SPLIT");
        Received old = priced(LotId.next(), item, 5, "2");
        Received young = priced(LotId.next(), item, 5, "3");
        at.receive(day, at.store, old);
        at.receive(day.plusDays(1), at.store, young);
        at.transfer(day.plusDays(9), at.store, at.van, new Portion(item.id(), old.lot(), pieces(4)));
        Drawn drawn = at.use(day.plusDays(3), at.store, new Draw(item.id(), null, pieces(3)));
        assertEquals(
                List.of(old.lot(), young.lot()),
                drawn.lines().stream().map(Drawn.DrawnLine::lot).toList());
        assertEquals(usd("8"), drawn.cost(), "the one of the older lot that stays, and two of the newer");
    }

    @Test
    void a_reversal_takes_back_only_what_its_day_and_every_later_one_leave() {
        StockItem item = at.gloves("REV");
        Posted receipt = at.receive(day, at.store, line(item, pieces(5), "20"));
        at.transfer(day.plusDays(2), at.store, at.van, Portion.of(item.id(), pieces(5)));
        at.transfer(day.plusDays(10), at.van, at.store, Portion.of(item.id(), pieces(5)));
        InventoryRefusal.GoodsGone gone =
                assertThrows(InventoryRefusal.GoodsGone.class, () -> at.reverse(receipt, day.plusDays(1)));
        assertSays(gone, day.plusDays(1).toString(), "5 H87", "0 H87", "Store room");
        at.reverse(receipt, day.plusDays(10));
        assertEquals(pieces(0), at.held(at.store, item));
    }

    @Test
    void a_canister_moves_whole_only_where_no_later_day_needs_it() {
        StockItem resin = at.item("DI", StockType.RESIN, Unit.GRAIN);
        Received canister = labeled(resin, grains("2500"), "90.00", "C-1");
        at.receive(day, at.store, canister);
        at.use(day.plusDays(4), at.store, new Draw(resin.id(), canister.lot(), grains("500")));
        assertThrows(
                InventoryRefusal.NotEnough.class,
                () -> at.transfer(day.plusDays(2), at.store, at.van, Portion.whole(resin.id(), canister.lot())));
        at.transfer(day.plusDays(4), at.store, at.van, Portion.whole(resin.id(), canister.lot()));
        assertEquals(grains("2000"), at.held(at.van, resin));
    }

    /** A late document posts where its series stands: the day of its entries decides, not the day that was asked for. */
    @Test
    void a_late_document_is_held_to_the_day_on_which_it_posts() {
        StockItem item = at.gloves("LATE");
        at.receive(day, at.store, line(item, pieces(5), "20"));
        StockItem other = at.gloves("OTHER");
        at.receive(day.minusDays(5), at.van, line(other, pieces(1), "1"));
        assertThrows(
                InventoryRefusal.NotEnough.class,
                () -> at.writeOff(day.minusDays(1), at.van, Portion.of(other.id(), pieces(1))),
                "its receipt was entered late and stands on the day of the last receipt");
        at.writeOff(day.plusDays(3), at.van, Portion.of(other.id(), pieces(1)));
        Posted late = at.writeOff(day.minusDays(3), at.store, Portion.of(item.id(), pieces(5)));
        assertEquals(
                day.plusDays(3), late.postingDate(), "goods that came after the day asked for, but not after this");
    }

    @Test
    void a_count_is_held_against_what_was_there_on_its_day() {
        StockItem item = at.gloves("COUNT");
        at.receive(day, at.store, line(item, pieces(10), "20"));
        at.transfer(day.plusDays(4), at.store, at.van, Portion.of(item.id(), pieces(6)));
        at.receive(day.plusDays(5), at.store, line(item, pieces(50), "150"));
        Posted missing = at.count(day.plusDays(2), at.store, CountedItem.found(item.id(), null, pieces(9)));
        assertEquals(day.plusDays(2), missing.postingDate());
        assertEquals(pieces(53), at.held(at.store, item), "one was missing of the ten, whatever came and went later");
        assertThrows(
                InventoryRefusal.NotEnough.class,
                () -> at.count(day.plusDays(3), at.store, CountedItem.found(item.id(), null, pieces(2))),
                "six of the nine leave later, so seven cannot have been missing");
        Received named = priced(LotId.next(), item, 1, "3");
        at.receive(day.plusDays(8), at.store, named);
        InventoryRefusal before = assertThrows(
                InventoryRefusal.class,
                () -> at.count(day.plusDays(6), at.store, CountedItem.difference(item.id(), named.lot(), pieces(1))),
                "more of a lot cannot be found before the lot came");
        assertSays(before, day.plusDays(6).toString(), day.plusDays(8).toString());
    }

    /** A later count moves the series, and so the day on which an earlier one posts: it is still a count of its own day. */
    @Test
    void a_lot_is_not_counted_before_it_came_although_counts_of_later_days_are_posted() {
        StockItem item = at.gloves("COUNTED-EARLY");
        Received lot = priced(LotId.next(), item, 10, "3");
        at.receive(day.plusDays(2), at.store, lot);
        at.count(day.plusDays(3), at.store, CountedItem.found(item.id(), null, pieces(10)));
        for (LocalDate before : List.of(day.plusDays(1), day.minusYears(6))) {
            for (CountedItem counted : List.of(
                    CountedItem.found(item.id(), lot.lot(), pieces(10)),
                    CountedItem.difference(item.id(), lot.lot(), pieces(2)))) {
                InventoryRefusal refused =
                        assertThrows(InventoryRefusal.class, () -> at.count(before, at.store, counted));
                assertSays(refused, before.toString(), day.plusDays(2).toString());
            }
        }
        at.transfer(day.plusDays(4), at.store, at.van, new Portion(item.id(), lot.lot(), pieces(4)));
        InventoryRefusal notInTheVan = assertThrows(
                InventoryRefusal.class,
                () -> at.count(day.plusDays(3), at.van, CountedItem.found(item.id(), lot.lot(), pieces(4))));
        assertSays(notInTheVan, day.plusDays(3).toString(), day.plusDays(4).toString());
        at.count(day.plusDays(4), at.van, CountedItem.found(item.id(), lot.lot(), pieces(4)));
        assertEquals(pieces(4), at.held(at.van, item));
        at.count(day.plusDays(2), at.store, CountedItem.found(item.id(), lot.lot(), pieces(9)));
        assertEquals(pieces(5), at.held(at.store, item));
    }

    /** What was paid for goods found later does not make an earlier use dearer. */
    @Test
    void an_earlier_use_costs_what_the_lot_was_worth_that_day() {
        StockItem item = at.gloves("WORTH");
        Received lot = priced(LotId.next(), item, 2, "10");
        at.receive(day, at.store, lot);
        at.count(
                day.plusDays(5),
                at.store,
                CountedItem.difference(item.id(), lot.lot(), pieces(2)).worth(usd("200")));
        assertEquals(
                usd("20"),
                at.use(day.plusDays(1), at.store, new Draw(item.id(), lot.lot(), pieces(2)))
                        .cost());
        assertEquals(usd("200"), at.value(at.store, item));
        assertEquals(Quantity.of(2, Unit.PIECE), at.held(at.store, item));
        assertEquals(CurrencyUnit.USD, at.value(at.store, item).currency());
    }

    /**
     * Rivals on different days, some of which move to the last day of their series while they wait: each is posted or
     * refused by name, never stopped by the database.
     */
    @Test
    void rivals_on_different_days_share_what_each_day_allows() throws InterruptedException, ExecutionException {
        long seed = Long.getLong("eaveside.seed", 4_711L);
        Random random = new Random(seed);
        StockItem item = at.gloves("RIVALS");
        for (int i = 0; i < 4; i++) {
            at.receive(day.plusDays(i), at.store, line(item, pieces(10), "99.99"));
        }
        List<Callable<Boolean>> works = new ArrayList<>();
        for (int i = 0; i < 60; i++) {
            LocalDate on = day.plusDays(random.nextInt(6));
            Location from = random.nextInt(3) == 0 ? at.van : at.store;
            Location to = from == at.van ? at.store : at.van;
            Quantity some = pieces(1 + random.nextInt(3));
            boolean moved = random.nextBoolean();
            works.add(() -> {
                try {
                    if (moved) {
                        at.transfer(on, from, to, Portion.of(item.id(), some));
                    } else {
                        at.use(on, from, new Draw(item.id(), null, some));
                    }
                    return true;
                } catch (InventoryRefusal.NotEnough refused) {
                    return false;
                }
            });
        }
        Set<Boolean> outcomes = new HashSet<>();
        try (ExecutorService pool = Executors.newFixedThreadPool(8)) {
            for (Future<Boolean> outcome : pool.invokeAll(works)) {
                outcomes.add(outcome.get());
            }
        }
        assertEquals(Set.of(true, false), outcomes, "seed " + seed);
    }

    /** What came back is there from the day of its reversal on, and no reversal is entered before the goods came at all. */
    @Test
    void a_reversal_is_not_dated_before_the_goods_came() {
        StockItem item = at.gloves("UNDO");
        at.receive(day.plusDays(2), at.store, line(item, pieces(5), "20"));
        Posted used = at.writeOff(day.plusDays(3), at.store, Portion.of(item.id(), pieces(5)));
        assertThrows(Refusal.class, () -> at.reverse(used, day));
        at.reverse(used, day.plusDays(6));
        assertThrows(
                InventoryRefusal.NotEnough.class,
                () -> at.writeOff(day.plusDays(5), at.store, Portion.of(item.id(), pieces(1))));
        at.writeOff(day.plusDays(6), at.store, Portion.of(item.id(), pieces(1)));
    }
}
