package eaveside.inventory;

import static eaveside.inventory.StockFixture.OWNER;
import static eaveside.inventory.StockFixture.labeled;
import static eaveside.inventory.StockFixture.line;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.kernel.DocumentId;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.LotId;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.Unit;
import eaveside.ledger.AccountRole;
import eaveside.ledger.ClosePeriod;
import eaveside.ledger.LedgerRefusal;
import eaveside.ledger.Posted;
import eaveside.testing.Bench;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.logging.Logger;
import org.joda.money.CurrencyUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/**
 * Months of stock documents at random. {@code -Deaveside.seed=…} repeats a run; the seed is logged, and named where a
 * check fails.
 */
class RandomStockIT {
    private static final Logger LOG = Logger.getLogger(RandomStockIT.class.getName());
    private static final int STEPS = 500;

    @RegisterExtension
    static final Bench bench = new Bench();

    private final long seed = Long.getLong("eaveside.seed", 6_079_521_329_180L);
    private final Random random = new Random(seed);
    private final List<Posted> posted = new ArrayList<>();
    private final Map<Step, Integer> done = new EnumMap<>(Step.class);
    private LocalDate day = LocalDate.of(2026, 1, 5);
    private int labels;

    private enum Step {
        RECEIVE,
        TRANSFER,
        USE,
        COUNT,
        WRITE_OFF,
        REVERSE
    }

    @Test
    void months_of_documents_at_random_leave_true_books() {
        LOG.info("Seed of the random stock run: " + seed);
        StockFixture at = StockFixture.on(bench);
        List<Location> locations = List.of(at.store, at.van, at.otherVan);
        List<StockItem> items = List.of(
                at.soap("soap"),
                at.gloves("gloves"),
                at.item("resin", StockType.RESIN, Unit.GRAIN),
                at.item("brush", StockType.BRUSH, Unit.PIECE));
        for (int i = 0; i < STEPS; i++) {
            advance();
            Step step = Step.values()[random.nextInt(Step.values().length)];
            try {
                perform(step, at, pick(locations), pick(locations), pick(items));
                done.merge(step, 1, Integer::sum);
            } catch (InventoryRefusal.NotEnough
                    | InventoryRefusal.NothingThere
                    | InventoryRefusal.CostUnknown
                    | InventoryRefusal.GoodsGone
                    | KernelRefusal.NotFound
                    | InventoryRefusal.NotThereYet
                    | InventoryRefusal.SameLocation
                    | LedgerRefusal.AlreadyReversed
                    | LedgerRefusal.NotReversible refused) {
                // A random step may ask for what cannot be; what matters is that it leaves nothing behind.
                continue;
            }
            if (i % 100 == 0) {
                bench.verifyBooks();
            }
        }
        LOG.info("Went through: " + done + ", seed " + seed);
        for (Step step : Step.values()) {
            assertTrue(done.getOrDefault(step, 0) > 5, step + " hardly happened, seed " + seed);
        }
        Money value = Money.sum(
                CurrencyUnit.USD,
                locations.stream()
                        .flatMap(p -> bench.get(ReadStock.class).levels(p.id()).stream())
                        .map(StockLevel::value)
                        .toList());
        assertEquals(value, at.balance(AccountRole.INVENTORY), "seed " + seed);
        bench.verifyBooks();
    }

    private <T> T pick(List<T> from) {
        return from.get(random.nextInt(from.size()));
    }

    /** A day passes now and then; a month that is over is closed, so that late documents meet closed periods. */
    private void advance() {
        if (random.nextInt(4) == 0) {
            LocalDate before = day;
            day = day.plusDays(1 + random.nextInt(2));
            bench.clock().to(day);
            if (!YearMonth.from(before).equals(YearMonth.from(day))) {
                bench.get(ClosePeriod.class)
                        .close(new ClosePeriod.Close(DocumentId.next(), YearMonth.from(before), OWNER));
            }
        } else {
            bench.clock().to(day);
        }
    }

    private LocalDate lately() {
        return day.minusDays(random.nextInt(4));
    }

    private void perform(Step step, StockFixture at, Location location, Location other, StockItem item) {
        switch (step) {
            case RECEIVE -> posted.add(at.receive(lately(), location, goods(item), goods(item)));
            case TRANSFER -> posted.add(at.transfer(lately(), location, other, portion(location, item)));
            case USE -> use(at, location, item);
            case COUNT -> posted.add(at.count(lately(), location, counted(location, item)));
            case WRITE_OFF -> posted.add(at.writeOff(lately(), location, portion(location, item)));
            case REVERSE -> {
                if (!posted.isEmpty()) {
                    // Mostly what was posted last: what lies further back is usually gone.
                    int back = Math.min(posted.size(), 1 + random.nextInt(8));
                    posted.add(at.reverse(posted.get(posted.size() - back), day));
                }
            }
        }
    }

    private ReceiveGoods.Received goods(StockItem item) {
        String cost = BigDecimal.valueOf(random.nextInt(20_000), 2).toPlainString();
        return item.type().isCountedSingly()
                ? labeled(item, Quantity.of(500 + random.nextInt(3000), item.baseUnit()), cost, "L-" + ++labels)
                : line(item, amount(item), cost);
    }

    private Quantity amount(StockItem item) {
        return item.type() == StockType.PLAIN || item.type() == StockType.BRUSH
                ? Quantity.of(1 + random.nextInt(30), item.baseUnit())
                : Quantity.of(BigDecimal.valueOf(1 + random.nextInt(6_000_000), 6), item.baseUnit());
    }

    /** A lot that the location holds; a made-up one where it holds none, which is then refused. */
    private LotId someLot(Location location, StockItem item) {
        List<LotLevel> lots = bench.get(ReadStock.class).lots(location.id(), item.id());
        return lots.isEmpty() ? LotId.next() : pick(lots).lot();
    }

    private Portion portion(Location location, StockItem item) {
        if (item.type().isCountedSingly()) {
            return Portion.whole(item.id(), someLot(location, item));
        }
        return random.nextInt(4) == 0 ? new Portion(item.id(), null, null) : Portion.of(item.id(), amount(item));
    }

    private CountedItem counted(Location location, StockItem item) {
        if (item.type().isCountedSingly()) {
            LotId lot =
                    bench.get(ReadStock.class).lots(location.id(), item.id()).isEmpty()
                            ? null
                            : someLot(location, item);
            return lot == null
                    ? CountedItem.difference(item.id(), null, amount(item))
                    : CountedItem.found(item.id(), lot, amount(item));
        }
        return CountedItem.found(item.id(), null, amount(item));
    }

    private void use(StockFixture at, Location location, StockItem item) {
        LotId lot = item.type().isCountedSingly() ? someLot(location, item) : null;
        Drawn drawn = at.use(
                lately(), location, new Draw(item.id(), lot, amount(item)), new Draw(item.id(), lot, amount(item)));
        assertEquals(drawn.cost(), drawn.costOf(0).plus(drawn.costOf(1)), "seed " + seed);
    }
}
