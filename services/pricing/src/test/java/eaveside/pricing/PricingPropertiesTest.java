package eaveside.pricing;

import static eaveside.pricing.TestLists.ARRAYS;
import static eaveside.pricing.TestLists.GLASS;
import static eaveside.pricing.TestLists.PANELS;
import static eaveside.pricing.TestLists.PANES;
import static eaveside.pricing.TestLists.ROOF;
import static eaveside.pricing.TestLists.ROOFS;
import static eaveside.pricing.TestLists.SKYLIGHTS;
import static eaveside.pricing.TestLists.USD;
import static eaveside.pricing.TestLists.minimum;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.customers.SurfaceAttribute;
import eaveside.kernel.Money;
import eaveside.kernel.Percent;
import eaveside.kernel.Quantity;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.Unit;
import eaveside.kernel.UnitPrice;
import eaveside.kernel.VisitLineId;
import eaveside.pricing.internal.PricingEngine;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What holds for any price list and any work; the seed is in each test's name. */
class PricingPropertiesTest {
    private static final List<ServiceItemId> SERVICE_ITEMS = List.of(PANELS, SKYLIGHTS, PANES, ROOF);
    private static final List<ServiceLineId> LINES = List.of(ARRAYS, GLASS, ROOFS);
    private static final List<SurfaceAttribute> ATTRIBUTES =
            List.of(SurfaceAttribute.STORY, SurfaceAttribute.PITCH_DEGREES, SurfaceAttribute.YEARS_SINCE_CLEAN);
    private static final Pattern LAST_MONEY = Pattern.compile("makes \\$([0-9,]+\\.[0-9]{2})\\.$");

    static LongStream seeds() {
        return LongStream.rangeClosed(1, 300);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void top_ups_add_up_to_the_minimums_and_nothing_is_lost(long seed) {
        Random random = new Random(seed);
        PriceList list = list(random);
        PricedWork priced = PricingEngine.price(list, work(random), TestLists.LINES::get);
        List<PricedWork.Line> billed =
                priced.lines().stream().filter(l -> !l.noCharge()).toList();
        Money before = sum(billed.stream().map(PricedWork.Line::netBeforeTopUp).toList());
        Money topUps = sum(billed.stream().map(PricedWork.Line::topUp).toList());
        assertEquals(priced.total(), before.plus(topUps));
        Money owed = Money.zero(USD);
        for (ServiceLineId serviceLine : LINES) {
            List<PricedWork.Line> of = billed.stream()
                    .filter(l -> l.serviceLine().equals(serviceLine))
                    .toList();
            Money net = sum(of.stream().map(PricedWork.Line::netBeforeTopUp).toList());
            Money least = list.minimumOf(serviceLine).map(LineMinimum::amount).orElse(Money.zero(USD));
            owed = owed.plus(of.isEmpty() || net.compareTo(least) > 0 ? net : least);
        }
        Money expected = billed.isEmpty() || owed.compareTo(list.visitMinimum()) > 0 ? owed : list.visitMinimum();
        assertEquals(expected, priced.total());
        assertTrue(priced.lines().stream().noneMatch(l -> l.topUp().isNegative()));
        assertTrue(priced.lines().stream()
                .filter(PricedWork.Line::noCharge)
                .allMatch(l -> l.topUp().isZero()));
    }

    /** Of two billed lines of one service, the one with the larger net never carries the smaller top-up, but for a cent. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void top_ups_follow_the_net(long seed) {
        Random random = new Random(seed);
        PricedWork priced = PricingEngine.price(list(random), work(random), TestLists.LINES::get);
        for (PricedWork.Line one : priced.lines()) {
            for (PricedWork.Line other : priced.lines()) {
                boolean comparable = !one.noCharge()
                        && !other.noCharge()
                        && one.serviceLine().equals(other.serviceLine());
                if (comparable && one.netBeforeTopUp().compareTo(other.netBeforeTopUp()) > 0) {
                    Money slack = Money.of(USD, "0.02");
                    assertTrue(one.topUp().plus(slack).compareTo(other.topUp()) >= 0);
                }
            }
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void a_larger_quantity_never_has_a_higher_unit_price_and_within_a_step_never_costs_less(long seed) {
        Random random = new Random(seed);
        PriceList list = list(random);
        ServiceItemId serviceItem = SERVICE_ITEMS.get(random.nextInt(SERVICE_ITEMS.size()));
        Map<SurfaceAttribute, Integer> attributes = attributes(random);
        int less = 1 + random.nextInt(60);
        int more = less + random.nextInt(60);
        PricedWork.Line small = alone(list, serviceItem, less, attributes);
        PricedWork.Line large = alone(list, serviceItem, more, attributes);
        assertTrue(large.unitPrice().amount().compareTo(small.unitPrice().amount()) <= 0);
        if (large.unitPrice().equals(small.unitPrice())) {
            assertTrue(large.netBeforeTopUp().compareTo(small.netBeforeTopUp()) >= 0);
        }
    }

    /** Calculates the price again from the figures alone that the sentence shows. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void the_figures_of_the_sentence_equal_the_price(long seed) {
        Random random = new Random(seed);
        PricedWork priced = PricingEngine.price(list(random), work(random), TestLists.LINES::get);
        for (PricedWork.Line line : priced.lines()) {
            String said = ExplanationText.of(line.explanation(), Locale.US);
            BigDecimal unitPrice = BigDecimal.ZERO;
            BigDecimal topUp = BigDecimal.ZERO;
            Matcher clause = Pattern.compile(
                            "(at the quoted|at|plus [0-9.]+% \\(|plus|less [0-9.]+% \\()\\s?\\$([0-9.,]+)")
                    .matcher(said);
            while (clause.find()) {
                BigDecimal figure = figure(clause.group(2));
                unitPrice = clause.group(1).startsWith("less") ? unitPrice.subtract(figure) : unitPrice.add(figure);
            }
            Matcher added = Pattern.compile("\\$([0-9.,]+) added").matcher(said);
            while (added.find()) {
                topUp = topUp.add(figure(added.group(1)));
            }
            Matcher whole = LAST_MONEY.matcher(said);
            assertTrue(whole.find(), said);
            assertEquals(0, unitPrice.compareTo(line.unitPrice().amount()), said);
            assertEquals(line.net(), Money.of(USD, figure(whole.group(1))), said);
            Money worked = Money.rounded(USD, unitPrice.multiply(line.quantity().value()));
            assertEquals(line.net(), worked.plus(Money.of(USD, topUp)), said);
        }
    }

    private static BigDecimal figure(String text) {
        String plain = text.replace(",", "");
        return new BigDecimal(plain.endsWith(".") ? plain.substring(0, plain.length() - 1) : plain);
    }

    private static Money sum(List<Money> amounts) {
        return Money.sum(USD, amounts);
    }

    private static PricedWork.Line alone(
            PriceList list, ServiceItemId serviceItem, int quantity, Map<SurfaceAttribute, Integer> attributes) {
        WorkLine line = new WorkLine(
                VisitLineId.next(), serviceItem, Quantity.of(quantity, unitOf(serviceItem)), attributes, null);
        return PricingEngine.price(list, List.of(line), TestLists.LINES::get)
                .lines()
                .getFirst();
    }

    private static Unit unitOf(ServiceItemId serviceItem) {
        return serviceItem.equals(ROOF) ? Unit.SQUARE_FOOT : Unit.PIECE;
    }

    private static List<WorkLine> work(Random random) {
        List<WorkLine> work = new ArrayList<>();
        for (int i = 1 + random.nextInt(6); i > 0; i--) {
            ServiceItemId serviceItem = SERVICE_ITEMS.get(random.nextInt(SERVICE_ITEMS.size()));
            Unit unit = unitOf(serviceItem);
            UnitPrice fixed = random.nextInt(4) == 0 ? perOne(random, 2000, unit) : null;
            work.add(new WorkLine(
                    VisitLineId.next(),
                    serviceItem,
                    Quantity.of(1 + random.nextInt(60), unit),
                    attributes(random),
                    fixed,
                    random.nextInt(6) == 0));
        }
        return work;
    }

    private static Map<SurfaceAttribute, Integer> attributes(Random random) {
        Map<SurfaceAttribute, Integer> attributes = new EnumMap<>(SurfaceAttribute.class);
        for (SurfaceAttribute attribute : ATTRIBUTES) {
            if (random.nextBoolean()) {
                attributes.put(attribute, random.nextInt(6));
            }
        }
        return attributes;
    }

    private static PriceList list(Random random) {
        List<LineMinimum> minimums = new ArrayList<>();
        for (ServiceLineId line : LINES) {
            if (random.nextBoolean()) {
                minimums.add(minimum(line, cents(1 + random.nextInt(40_000)).toPlainString()));
            }
        }
        return new PriceList(
                "Any",
                LocalDate.of(2026, 3, 1),
                Money.of(USD, cents(random.nextInt(60_000))),
                Percent.of(BigDecimal.valueOf(random.nextInt(9999), 2)),
                minimums,
                SERVICE_ITEMS.stream().map(o -> serviceItemPrice(random, o)).toList());
    }

    private static ServiceItemPrice serviceItemPrice(Random random, ServiceItemId serviceItem) {
        Unit unit = unitOf(serviceItem);
        List<QuantityStep> steps = new ArrayList<>();
        long ticks = 100_000 + random.nextInt(200_000);
        int from = 0;
        for (int i = random.nextInt(4); i >= 0; i--) {
            steps.add(new QuantityStep(
                    Quantity.of(from, unit), UnitPrice.perOne(USD, BigDecimal.valueOf(ticks, 4), unit)));
            from += 1 + random.nextInt(25);
            ticks -= random.nextInt(20_000);
        }
        List<Surcharge> surcharges = new ArrayList<>();
        for (SurfaceAttribute attribute : ATTRIBUTES) {
            for (int atLeast = 1; atLeast < 5; atLeast++) {
                if (random.nextInt(3) == 0) {
                    surcharges.add(
                            random.nextBoolean()
                                    ? Surcharge.ofPrice(
                                            attribute,
                                            atLeast,
                                            Percent.of(BigDecimal.valueOf(1 + random.nextInt(9000), 2)))
                                    : Surcharge.fixed(attribute, atLeast, perOne(random, 500, unit)));
                }
            }
        }
        return new ServiceItemPrice(serviceItem, steps, surcharges);
    }

    private static UnitPrice perOne(Random random, int mostCents, Unit unit) {
        return UnitPrice.perOne(USD, cents(1 + random.nextInt(mostCents)), unit);
    }

    private static BigDecimal cents(int cents) {
        return BigDecimal.valueOf(cents, 2);
    }
}
