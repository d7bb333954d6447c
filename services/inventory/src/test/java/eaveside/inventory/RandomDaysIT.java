package eaveside.inventory;

import static eaveside.inventory.StockFixture.pieces;
import static eaveside.inventory.StockFixture.usd;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.inventory.ReceiveGoods.Received;
import eaveside.kernel.LocationId;
import eaveside.kernel.LotId;
import eaveside.kernel.Money;
import eaveside.ledger.DocumentType;
import eaveside.ledger.Posted;
import eaveside.testing.Bench;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import java.util.logging.Logger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/**
 * Receipts, uses, transfers and reversals on random days against a plain model that knows only the rule: a lot in a location is
 * never below zero on any day, and older lots go first. What the model allows must be posted, at the model's cost; what it
 * does not must be refused. {@code -Deaveside.seed=…} repeats a run.
 */
class RandomDaysIT {
    private static final Logger LOG = Logger.getLogger(RandomDaysIT.class.getName());
    private static final int STEPS = 300;
    private static final LocalDate FIRST = LocalDate.of(2026, 1, 1);
    private static final LocalDate TODAY = LocalDate.of(2026, 6, 30);

    @RegisterExtension
    static final Bench bench = new Bench();

    private final long seed = Long.getLong("eaveside.seed", 7_311_940_085L);
    private final Random random = new Random(seed);
    private final Model model = new Model();
    private final Map<Outcome, Integer> outcomes = new EnumMap<>(Outcome.class);

    private int step;

    private enum Outcome {
        RECEIVED,
        USED,
        TOO_MUCH_USED,
        MOVED,
        TOO_MUCH_MOVED,
        REVERSED,
        NOT_REVERSED
    }

    /** Whole pieces, each lot at whole dollars a piece, so that the model needs no rounding. */
    private static final class Model {
        record Lot(LotId id, LocalDate receivedOn, LocalDate posted, int order, long each) {}

        record Entry(LotId lot, LocationId location, LocalDate day, long pieces) {}

        record Part(Lot lot, long pieces) {}

        final List<Lot> lots = new ArrayList<>();
        final List<Entry> entries = new ArrayList<>();
        final Map<DocumentType, LocalDate> series = new EnumMap<>(DocumentType.class);

        LocalDate postingDay(DocumentType type, LocalDate day) {
            LocalDate last = series.getOrDefault(type, day);
            return last.isAfter(day) ? last : day;
        }

        /** The least at the end of the day and of every later one. */
        long free(LotId lot, LocationId location, LocalDate from) {
            TreeMap<LocalDate, Long> balances = new TreeMap<>();
            balances.put(from, 0L);
            for (Entry entry : entries) {
                if (entry.lot().equals(lot) && entry.location().equals(location)) {
                    balances.putIfAbsent(entry.day(), 0L);
                }
            }
            for (Entry entry : entries) {
                if (entry.lot().equals(lot) && entry.location().equals(location)) {
                    balances.tailMap(entry.day()).replaceAll((day, held) -> held + entry.pieces());
                }
            }
            return balances.tailMap(from).values().stream()
                    .mapToLong(Long::longValue)
                    .min()
                    .orElseThrow();
        }

        /** The oldest first; empty where there is not enough. */
        List<Part> parts(LocationId location, LocalDate day, long pieces) {
            List<Part> parts = new ArrayList<>();
            long left = pieces;
            for (Lot lot : lots.stream()
                    .sorted(Comparator.comparing(Lot::receivedOn)
                            .thenComparing(Lot::posted)
                            .thenComparing(Lot::order))
                    .toList()) {
                long part = Math.min(left, free(lot.id(), location, day));
                if (part > 0) {
                    parts.add(new Part(lot, part));
                    left -= part;
                }
            }
            return left == 0 ? parts : List.of();
        }

        boolean allows(List<Entry> more) {
            Set<List<Object>> seen = new HashSet<>();
            for (Entry entry : more) {
                long change = more.stream()
                        .filter(e -> e.lot().equals(entry.lot()) && e.location().equals(entry.location()))
                        .mapToLong(Entry::pieces)
                        .sum();
                if (seen.add(List.of(entry.lot(), entry.location()))
                        && change < 0
                        && free(entry.lot(), entry.location(), entry.day()) + change < 0) {
                    return false;
                }
            }
            return true;
        }
    }

    /** A document that may be reversed, with what it moved. */
    private record Reversible(Posted posted, List<Model.Entry> entries) {}

    private final List<Reversible> reversibles = new ArrayList<>();

    @Test
    void the_books_do_what_the_rule_allows_and_nothing_else() {
        LOG.info("Seed of the random days: " + seed);
        bench.clock().to(TODAY);
        StockFixture at = StockFixture.on(bench);
        StockItem item = at.gloves("unit");
        List<Location> locations = List.of(at.store, at.van);
        for (step = 0; step < STEPS; step++) {
            String where = "step " + step + ", seed " + seed;
            Location location = locations.get(random.nextInt(2));
            Location other = location == at.store ? at.van : at.store;
            Outcome outcome = switch (random.nextInt(5)) {
                case 0 -> receive(at, item, location);
                case 1, 2 -> use(at, item, location, where);
                case 3 -> transfer(at, item, location, other, where);
                default -> reversibles.isEmpty() ? receive(at, item, location) : reverse(at, where);
            };
            outcomes.merge(outcome, 1, Integer::sum);
            if (step % 100 == 0) {
                bench.verifyBooks();
            }
        }
        LOG.info("Outcomes " + outcomes + ", seed " + seed);
        for (Outcome outcome : Outcome.values()) {
            assertTrue(outcomes.getOrDefault(outcome, 0) > 5, outcome + " hardly happened: " + outcomes + ", " + seed);
        }
        for (Location location : locations) {
            long held = model.entries.stream()
                    .filter(e -> e.location().equals(location.id()))
                    .mapToLong(Model.Entry::pieces)
                    .sum();
            assertEquals(pieces(held), at.held(location, item), "seed " + seed);
        }
        bench.verifyBooks();
    }

    /** All go through the half year together, each document up to six days early or late. */
    private LocalDate someDay() {
        LocalDate day = FIRST.plusDays(6 + (long) step * 170 / STEPS + random.nextInt(13) - 6L);
        return day.isAfter(TODAY) ? TODAY : day;
    }

    private void posted(Posted posted, LocalDate expected, List<Model.Entry> entries, String where) {
        assertEquals(expected, posted.postingDate(), where);
        model.series.put(posted.type(), posted.postingDate());
        model.entries.addAll(entries);
    }

    private Outcome receive(StockFixture at, StockItem item, Location into) {
        LocalDate day = someDay();
        LocalDate posting = model.postingDay(DocumentType.RECEIPT, day);
        List<Received> lines = new ArrayList<>();
        List<Model.Entry> entries = new ArrayList<>();
        List<Model.Lot> lots = new ArrayList<>();
        for (int i = 0; i <= random.nextInt(3); i++) {
            long pieces = 1 + random.nextInt(20);
            long each = 1 + random.nextInt(9);
            // Ids in no order at all, as clients may make them.
            LotId lot = new LotId(new UUID(random.nextLong(), random.nextLong()));
            lines.add(new Received(lot, item.id(), null, pieces(pieces), dollars(pieces * each), ""));
            entries.add(new Model.Entry(lot, into.id(), posting, pieces));
            lots.add(new Model.Lot(lot, day, posting, model.lots.size() + lots.size(), each));
        }
        Posted posted = at.receive(day, into, lines.toArray(Received[]::new));
        model.lots.addAll(lots);
        posted(posted, posting, entries, "receipt, seed " + seed);
        reversibles.add(new Reversible(posted, entries));
        return Outcome.RECEIVED;
    }

    private static Money dollars(long amount) {
        return usd(BigDecimal.valueOf(amount).toPlainString());
    }

    private Outcome use(StockFixture at, StockItem item, Location from, String where) {
        LocalDate day = someDay();
        LocalDate posting = model.postingDay(DocumentType.WRITE_OFF, day);
        long pieces = 1 + random.nextInt(15);
        List<Model.Part> parts = model.parts(from.id(), posting, pieces);
        try {
            Posted posted = at.writeOff(day, from, Portion.of(item.id(), pieces(pieces)));
            assertTrue(!parts.isEmpty(), "the model has not so much: " + where);
            List<Model.Entry> entries = parts.stream()
                    .map(p -> new Model.Entry(p.lot().id(), from.id(), posting, -p.pieces()))
                    .toList();
            posted(posted, posting, entries, where);
            assertEquals(
                    dollars(parts.stream()
                            .mapToLong(p -> p.pieces() * p.lot().each())
                            .sum()),
                    usd(String.valueOf(bench.value(
                            "select -sum(value) from stock_entry where document_id = ?",
                            posted.id().value()))),
                    where);
            reversibles.add(new Reversible(posted, entries));
            return Outcome.USED;
        } catch (InventoryRefusal.NotEnough refused) {
            assertTrue(parts.isEmpty(), refused.text() + ", but the model has it: " + where);
            return Outcome.TOO_MUCH_USED;
        }
    }

    private Outcome transfer(StockFixture at, StockItem item, Location from, Location to, String where) {
        LocalDate day = someDay();
        LocalDate posting = model.postingDay(DocumentType.TRANSFER, day);
        long pieces = 1 + random.nextInt(15);
        List<Model.Part> parts = model.parts(from.id(), posting, pieces);
        try {
            Posted posted = at.transfer(day, from, to, Portion.of(item.id(), pieces(pieces)));
            assertTrue(!parts.isEmpty(), "the model has not so much: " + where);
            List<Model.Entry> entries = new ArrayList<>();
            for (Model.Part part : parts) {
                entries.add(new Model.Entry(part.lot().id(), from.id(), posting, -part.pieces()));
                entries.add(new Model.Entry(part.lot().id(), to.id(), posting, part.pieces()));
            }
            posted(posted, posting, entries, where);
            reversibles.add(new Reversible(posted, entries));
            return Outcome.MOVED;
        } catch (InventoryRefusal.NotEnough refused) {
            assertTrue(parts.isEmpty(), refused.text() + ", but the model has it: " + where);
            return Outcome.TOO_MUCH_MOVED;
        }
    }

    /** Never dated before what it reverses, and mostly of what was posted last: what lies further back is usually gone. */
    private Outcome reverse(StockFixture at, String where) {
        int back = Math.min(reversibles.size(), 1 + random.nextInt(12));
        Reversible original = reversibles.get(reversibles.size() - back);
        LocalDate asked = original.posted().postingDate().plusDays(random.nextInt(3));
        LocalDate day = asked.isAfter(TODAY) ? TODAY : asked;
        LocalDate posting = model.postingDay(DocumentType.REVERSAL, day);
        List<Model.Entry> mirror = original.entries().stream()
                .map(e -> new Model.Entry(e.lot(), e.location(), posting, -e.pieces()))
                .toList();
        boolean allowed = model.allows(mirror);
        try {
            Posted posted = at.reverse(original.posted(), day);
            assertTrue(allowed, "the model does not have it any more: " + where);
            posted(posted, posting, mirror, where);
            reversibles.remove(original);
            return Outcome.REVERSED;
        } catch (InventoryRefusal.GoodsGone refused) {
            assertTrue(!allowed, refused.text() + ", but the model has it: " + where);
            return Outcome.NOT_REVERSED;
        }
    }
}
