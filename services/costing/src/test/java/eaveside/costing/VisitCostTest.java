package eaveside.costing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.catalog.StandardMinutes;
import eaveside.costing.AppliedCost.SharedBy;
import eaveside.kernel.Exact;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.Unit;
import eaveside.kernel.UnitPrice;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.Function;
import java.util.stream.LongStream;
import org.joda.money.CurrencyUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class VisitCostTest {
    private static final LocalDate DAY = LocalDate.of(2026, 3, 1);
    private static final ServiceLineId ARRAYS = ServiceLineId.next();
    private static final ServiceLineId ROOFS = ServiceLineId.next();
    private static final ServiceLineId WINDOWS = ServiceLineId.next();

    private static Money usd(String amount) {
        return Money.of(CurrencyUnit.USD, amount);
    }

    private static CostRates rates(String labor, String travel, Unit unit, String overhead) {
        return new CostRates(
                DAY, usd(labor), UnitPrice.perOne(CurrencyUnit.USD, new BigDecimal(travel), unit), usd(overhead));
    }

    private static LineWork work(ServiceLineId line, String minutes) {
        return new LineWork(line, StandardMinutes.of(minutes));
    }

    private static Effort effort(int onSite, int driving, int loading, String miles) {
        return new Effort(onSite, driving, loading, Quantity.of(miles, Unit.MILE));
    }

    @Test
    void each_total_is_rounded_once_and_the_cents_go_to_the_largest_remainder() {
        AppliedCost cost = VisitCost.of(
                rates("31.50", "0.725", Unit.MILE, "7.25"),
                effort(185, 50, 20, "23"),
                List.of(work(ARRAYS, "120"), work(ROOFS, "60"), work(WINDOWS, "1")),
                List.of());
        assertEquals(usd("107.63"), cost.labor(), "205 min x 31.50 / 60 = 107.625");
        assertEquals(usd("42.93"), cost.travel(), "50 min x 31.50 / 60 + 23 x 0.725 = 26.25 + 16.675 = 42.925");
        assertEquals(usd("30.81"), cost.overhead(), "255 min x 7.25 / 60 = 30.8125");
        assertEquals(usd("181.37"), cost.total());
        assertEquals(SharedBy.DONE, cost.sharedBy());
        assertEquals(
                List.of(
                        new LineCost(ARRAYS, usd("71.36"), usd("28.46"), usd("20.43")),
                        new LineCost(ROOFS, usd("35.68"), usd("14.23"), usd("10.21")),
                        new LineCost(WINDOWS, usd("0.59"), usd("0.24"), usd("0.17"))),
                cost.lines());
    }

    @Test
    void works_of_one_line_are_added_up_in_the_order_of_their_first() {
        AppliedCost cost = VisitCost.of(
                rates("60", "0", Unit.MILE, "0"),
                effort(60, 0, 0, "0"),
                List.of(work(ROOFS, "10"), work(ARRAYS, "20"), work(ROOFS, "10")),
                List.of(work(WINDOWS, "500")));
        assertEquals(
                List.of(
                        new LineCost(ROOFS, usd("30"), usd("0"), usd("0")),
                        new LineCost(ARRAYS, usd("30"), usd("0"), usd("0"))),
                cost.lines());
    }

    @Test
    void where_nothing_was_done_the_plan_carries_the_cost() {
        CostRates rates = rates("60", "0.50", Unit.MILE, "0");
        Effort effort = effort(0, 60, 0, "40");
        AppliedCost cost =
                VisitCost.of(rates, effort, List.of(work(ROOFS, "0")), List.of(work(ROOFS, "90"), work(ARRAYS, "30")));
        assertEquals(SharedBy.PLANNED, cost.sharedBy());
        assertEquals(
                List.of(
                        new LineCost(ROOFS, usd("0"), usd("60"), usd("0")),
                        new LineCost(ARRAYS, usd("0"), usd("20"), usd("0"))),
                cost.lines());
    }

    @Test
    void without_standard_minutes_the_lines_share_evenly() {
        CostRates rates = rates("60", "0", Unit.MILE, "0");
        AppliedCost done = VisitCost.of(
                rates, effort(1, 0, 0, "0"), List.of(work(ROOFS, "0"), work(ARRAYS, "0")), List.of(work(WINDOWS, "0")));
        assertEquals(SharedBy.EVENLY, done.sharedBy());
        assertEquals(
                List.of(usd("0.50"), usd("0.50")),
                done.lines().stream().map(LineCost::labor).toList());
        AppliedCost planned = VisitCost.of(rates, effort(1, 0, 0, "0"), List.of(), List.of(work(WINDOWS, "0")));
        assertEquals(WINDOWS, planned.lines().getFirst().serviceLine());
        assertThrows(
                CostingRefusal.NoLines.class, () -> VisitCost.of(rates, effort(1, 0, 0, "0"), List.of(), List.of()));
    }

    @Test
    void miles_are_costed_at_a_rate_per_kilometer_and_the_other_way_round() {
        // 1 international mile = 1.609344 km exactly (NIST Handbook 44, Appendix C; from memory).
        Effort hundredMiles = effort(0, 0, 0, "100");
        assertEquals(
                usd("80.47"),
                VisitCost.of(
                                rates("0", "0.50", Unit.KILOMETER, "0"),
                                hundredMiles,
                                List.of(work(ROOFS, "1")),
                                List.of())
                        .travel());
        Effort kilometers = new Effort(0, 0, 0, Quantity.of("160.9344", Unit.KILOMETER));
        assertEquals(
                usd("72.50"),
                VisitCost.of(rates("0", "0.725", Unit.MILE, "0"), kilometers, List.of(work(ROOFS, "1")), List.of())
                        .travel());
    }

    @Test
    void effort_and_rates_that_cannot_be_are_refused() {
        assertThrows(KernelRefusal.Negative.class, () -> effort(-1, 0, 0, "0"));
        assertThrows(KernelRefusal.Negative.class, () -> effort(0, 0, 0, "-1"));
        assertThrows(KernelRefusal.OutOfRange.class, () -> effort(0, 100_001, 0, "0"));
        assertThrows(KernelRefusal.WrongUnit.class, () -> new Effort(0, 0, 0, Quantity.of(1, Unit.US_GALLON)));
        assertThrows(KernelRefusal.Negative.class, () -> rates("-1", "0", Unit.MILE, "0"));
        assertThrows(KernelRefusal.Negative.class, () -> rates("1", "-0.1", Unit.MILE, "0"));
        assertThrows(KernelRefusal.WrongUnit.class, () -> rates("1", "0.1", Unit.LITER, "0"));
        assertThrows(
                CostingRefusal.MixedCurrencies.class,
                () -> new CostRates(
                        DAY, usd("1"), UnitPrice.perOne(CurrencyUnit.EUR, BigDecimal.ONE, Unit.MILE), usd("1")));
        assertEquals(rates("1", "0.7", Unit.MILE, "1"), rates("1.00", "0.70", Unit.MILE, "1.0"));
    }

    static LongStream seeds() {
        return LongStream.rangeClosed(1, 300);
    }

    /** Whatever was done: shares add up to the totals, none is off its exact share by a cent, none is negative. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void shares_add_up_and_are_fair(long seed) {
        Random random = new Random(seed);
        CostRates rates = rates(
                cents(random, 9_000),
                "0." + (random.nextInt(900) + 100),
                random.nextBoolean() ? Unit.MILE : Unit.KILOMETER,
                cents(random, 4_000));
        Effort effort = new Effort(
                random.nextInt(2_000),
                random.nextInt(400),
                random.nextInt(100),
                Quantity.of(cents(random, 30_000), random.nextBoolean() ? Unit.MILE : Unit.KILOMETER));
        List<LineWork> done = works(random);
        List<LineWork> planned = works(random);
        if (planned.isEmpty()) {
            planned.add(work(ROOFS, "5"));
        }
        AppliedCost cost = VisitCost.of(rates, effort, done, planned);
        assertEquals(cost, VisitCost.of(rates, effort, done, planned), "the same input gives the same shares");
        assertEquals(cost.labor(), sum(cost, LineCost::labor));
        assertEquals(cost.travel(), sum(cost, LineCost::travel));
        assertEquals(cost.overhead(), sum(cost, LineCost::overhead));
        assertEquals(cost.total(), sum(cost, LineCost::total));
        assertFalse(cost.lines().isEmpty());
        assertEquals(
                cost.lines().size(),
                cost.lines().stream().map(LineCost::serviceLine).distinct().count());
        if (cost.sharedBy() == SharedBy.DONE) {
            assertFair(cost, done);
        }
    }

    private static void assertFair(AppliedCost cost, List<LineWork> done) {
        BigDecimal all = minutes(done);
        for (LineCost line : cost.lines()) {
            BigDecimal own = minutes(done.stream()
                    .filter(work -> work.serviceLine().equals(line.serviceLine()))
                    .toList());
            BigDecimal exact = Exact.ratio(cost.labor().amount(), own, all);
            assertFalse(line.labor().isNegative()
                    || line.travel().isNegative()
                    || line.overhead().isNegative());
            assertTrue(
                    exact.subtract(line.labor().amount()).abs().compareTo(new BigDecimal("0.01")) < 0,
                    () -> line + " should be near " + exact);
        }
    }

    private static BigDecimal minutes(List<LineWork> works) {
        return works.stream().map(work -> work.minutes().value()).reduce(BigDecimal.ZERO, BigDecimal::add);
    }

    private static Money sum(AppliedCost cost, Function<LineCost, Money> part) {
        return Money.sum(CurrencyUnit.USD, cost.lines().stream().map(part).toList());
    }

    private static String cents(Random random, int most) {
        return BigDecimal.valueOf(random.nextInt(most), 2).toPlainString();
    }

    private static List<LineWork> works(Random random) {
        List<ServiceLineId> lines = List.of(ARRAYS, ROOFS, WINDOWS);
        List<LineWork> works = new ArrayList<>();
        for (int i = random.nextInt(6); i > 0; i--) {
            String minutes = random.nextInt(5) == 0
                    ? "0"
                    : BigDecimal.valueOf(random.nextInt(1_000_000), 4).toPlainString();
            works.add(work(lines.get(random.nextInt(lines.size())), minutes));
        }
        return works;
    }
}
