package eaveside.inventory;

import static eaveside.inventory.StockFixture.DAY;
import static eaveside.inventory.StockFixture.gallons;
import static eaveside.inventory.StockFixture.line;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.kernel.Quantity;
import eaveside.kernel.Unit;
import eaveside.ledger.Posted;
import eaveside.testing.Bench;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

class ConcurrentStockIT {
    private static final int THREADS = 12;

    @RegisterExtension
    static final Bench bench = new Bench();

    private static StockFixture at;

    @BeforeAll
    static void found() {
        at = StockFixture.on(bench);
    }

    @AfterEach
    void books_are_true() {
        bench.verifyBooks();
    }

    /** Runs all; true where it went through, false where the stock was refused. Anything else, a deadlock too, fails. */
    private static List<Boolean> runAll(List<Callable<?>> works) throws InterruptedException, ExecutionException {
        List<Boolean> outcomes = new ArrayList<>();
        try (ExecutorService pool = Executors.newFixedThreadPool(THREADS)) {
            List<Callable<Boolean>> told = works.stream()
                    .map(work -> (Callable<Boolean>) () -> {
                        try {
                            work.call();
                            return true;
                        } catch (InventoryRefusal refused) {
                            return false;
                        }
                    })
                    .toList();
            for (Future<Boolean> outcome : pool.invokeAll(told)) {
                outcomes.add(outcome.get());
            }
        }
        return outcomes;
    }

    @Test
    void many_draw_from_the_same_lots_until_nothing_is_left() throws Exception {
        StockItem soap = at.soap("C1");
        for (int i = 0; i < 5; i++) {
            at.receive(DAY, at.van, line(soap, gallons("3.3"), "10.0" + i));
        }
        List<Callable<?>> draws = new ArrayList<>();
        for (int i = 0; i < 60; i++) {
            draws.add(() -> at.use(DAY, at.van, new Draw(soap.id(), null, gallons("0.4"))));
        }
        long went = runAll(draws).stream().filter(b -> b).count();
        assertEquals(41, went, "16.5 gallons last for 41 draws of 0.4");
        assertEquals(gallons("0.1"), at.held(at.van, soap));
        assertEquals(
                0L, bench.value("select count(*) from lot_stock where quantity < 0 or (quantity = 0 and value <> 0)"));
    }

    @Test
    void the_same_receipt_sent_many_times_at_once_posts_once() throws Exception {
        StockItem soap = at.soap("C2");
        var receipt = StockFixture.receipt(DAY, at.store, line(soap, gallons("2"), "20.00"));
        List<Callable<?>> same = new ArrayList<>();
        Set<Posted> answers = ConcurrentHashMap.newKeySet();
        for (int i = 0; i < 20; i++) {
            same.add(() -> answers.add(bench.get(ReceiveGoods.class).receive(receipt)));
        }
        runAll(same);
        assertEquals(1, answers.size());
        assertEquals(gallons("2"), at.held(at.store, soap));
    }

    /**
     * Draws, transfers both ways, counts with a draw behind them and reversals, on the same lots in three locations: whatever
     * the order, nobody waits in a ring.
     */
    @Test
    void every_type_of_document_at_once_never_deadlocks() throws Exception {
        long seed = Long.getLong("eaveside.seed", 20_261_125L);
        Random random = new Random(seed);
        List<StockItem> items = List.of(at.soap("C3"), at.soap("C4"), at.soap("C5"));
        List<Location> locations = List.of(at.store, at.van, at.otherVan);
        for (StockItem item : items) {
            for (Location location : locations) {
                at.receive(DAY, location, line(item, gallons("20"), "199.99"));
            }
        }
        List<Callable<?>> works = new ArrayList<>();
        for (int i = 0; i < 160; i++) {
            Location from = locations.get(random.nextInt(3));
            Location to = locations.get((locations.indexOf(from) + 1 + random.nextInt(2)) % 3);
            StockItem one = items.get(random.nextInt(3));
            StockItem other = items.get(random.nextInt(3));
            Quantity some = Quantity.of(1 + random.nextInt(3), Unit.US_GALLON);
            works.add(
                    switch (random.nextInt(4)) {
                        case 0 ->
                            () -> at.use(DAY, from, new Draw(one.id(), null, some), new Draw(other.id(), null, some));
                        case 1 ->
                            () -> at.transfer(DAY, from, to, Portion.of(one.id(), some), Portion.of(other.id(), some));
                        case 2 ->
                            () -> bench.inTransaction(() -> {
                                bench.get(CountStock.class)
                                        .countWithin(StockFixture.countOf(
                                                DAY, from, CountedItem.difference(one.id(), null, some)));
                                return at.useWithin(DAY, from, new Draw(other.id(), null, some));
                            });
                        default -> () -> at.reverse(at.writeOff(DAY, from, Portion.of(other.id(), some)), DAY);
                    });
        }
        List<Boolean> outcomes = runAll(works);
        long went = outcomes.stream().filter(b -> b).count();
        assertTrue(went > 80, "of 160 documents " + went + " went through, seed " + seed);
        Set<Object> negative = bench.rows("select lot_id from lot_stock where quantity < 0 or value < 0").stream()
                .flatMap(r -> r.values().stream())
                .collect(Collectors.toSet());
        assertEquals(Set.of(), negative, "seed " + seed);
    }
}
