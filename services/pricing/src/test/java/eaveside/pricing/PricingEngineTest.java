package eaveside.pricing;

import static eaveside.pricing.TestLists.ARRAYS;
import static eaveside.pricing.TestLists.GLASS;
import static eaveside.pricing.TestLists.PANELS;
import static eaveside.pricing.TestLists.PANES;
import static eaveside.pricing.TestLists.ROOF;
import static eaveside.pricing.TestLists.SKYLIGHTS;
import static eaveside.pricing.TestLists.each;
import static eaveside.pricing.TestLists.list;
import static eaveside.pricing.TestLists.minimum;
import static eaveside.pricing.TestLists.noCharge;
import static eaveside.pricing.TestLists.perOne;
import static eaveside.pricing.TestLists.percent;
import static eaveside.pricing.TestLists.price;
import static eaveside.pricing.TestLists.quoted;
import static eaveside.pricing.TestLists.usd;
import static eaveside.pricing.TestLists.work;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.customers.SurfaceAttribute;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Money;
import eaveside.kernel.Percent;
import eaveside.kernel.Quantity;
import eaveside.kernel.Refusal;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.Unit;
import eaveside.kernel.VisitLineId;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;

class PricingEngineTest {
    private static List<Money> nets(PricedWork priced) {
        return priced.lines().stream().map(PricedWork.Line::net).toList();
    }

    private static String sentence(PricedWork.Line line) {
        return ExplanationText.of(line.explanation(), Locale.US);
    }

    /**
     * By hand, all four services on one visit, so 5 % off each unit price. Panels from 40: 7.50 + 20 % 1.50 + 1.25 = 10.25,
     * less 0.5125 = 9.7375; × 48 = 467.40. Skylights 12 − 0.60 = 11.40; × 6 = 68.40. Panes from 20: 3.50 − 0.175 = 3.325;
     * × 22 = 73.15. Roof from 1,000: 0.285 − 0.0143 (0.01425 rounded up) = 0.2707; × 1,900 = 514.33. In all 1,123.28.
     */
    @Test
    void a_whole_house_worked_by_hand() {
        PricedWork priced = price(
                list("180"),
                work(PANELS, "48", Map.of(SurfaceAttribute.STORY, 2, SurfaceAttribute.SOILING_GRADE, 4)),
                work(SKYLIGHTS, "6"),
                work(PANES, "22"),
                work(ROOF, "1900"));
        assertEquals(List.of(usd("467.40"), usd("68.40"), usd("73.15"), usd("514.33")), nets(priced));
        assertEquals(usd("1123.28"), priced.total());
        assertEquals(perOne("9.7375", Unit.PIECE), priced.lines().getFirst().unitPrice());
        assertEquals(
                "48 at $7.50 each (the price from 40), plus 20% ($1.50) for story 2, plus $1.25 for soiling grade 4,"
                        + " less 5% ($0.5125) because 3 services share the visit, so $9.7375 each, makes $467.40.",
                sentence(priced.lines().getFirst()));
        assertEquals(
                "1,900 sq ft at $0.285 per sq ft (the price from 1,000 sq ft), less 5% ($0.0143) because 3 services share the"
                        + " visit, so $0.2707 per sq ft, makes $514.33.",
                sentence(priced.lines().getLast()));
    }

    /** By hand: 5 panels at 9.00 = 45.00; to the line's 60.00 15.00, to the visit's 100.00 another 40.00. */
    @Test
    void minimums_of_the_line_and_then_of_the_visit_top_up() {
        PricedWork priced = price(list("100", minimum(ARRAYS, "60")), work(PANELS, "5"));
        PricedWork.Line line = priced.lines().getFirst();
        assertEquals(usd("45.00"), line.netBeforeTopUp());
        assertEquals(usd("55.00"), line.topUp());
        assertEquals(usd("100.00"), priced.total());
        assertEquals(
                "5 at $9.00 each, makes $45.00, with $15.00 added to reach the service minimum of $60.00, $40.00"
                        + " added to reach the visit minimum of $100.00, makes $100.00.",
                sentence(line));
    }

    /**
     * By hand: skylights 12.00 and panes 3 × 4.00 = 12.00 and 1 × 4.00 = 4.00, in all 28.00, are 22.01 short of 50.01. By
     * net: 22.01 × 12 ÷ 28 = 9.43286 twice and 3.14429; cut 9.43, 9.43, 3.14 leave one cent, which goes to the largest
     * remainder, the third line.
     */
    @Test
    void the_odd_cent_goes_to_the_largest_remainder() {
        PricedWork priced =
                price(list("0", minimum(GLASS, "50.01")), work(SKYLIGHTS, "1"), work(PANES, "3"), work(PANES, "1"));
        assertEquals(List.of(usd("21.43"), usd("21.43"), usd("7.15")), nets(priced));
        assertEquals(usd("50.01"), priced.total());
    }

    @Test
    void the_step_counts_what_the_visit_holds_of_a_service_item() {
        PricedWork priced = price(list("0"), work(PANELS, "24"), work(PANELS, "24"));
        assertEquals(List.of(usd("180.00"), usd("180.00")), nets(priced));
        assertEquals(
                "24 at $7.50 each (the price from 40, reached with 48 on the visit), makes $180.00.",
                sentence(priced.lines().getFirst()));
        assertEquals(usd("312.00"), price(list("0"), work(PANELS, "39")).total(), "one below the step: 39 × 8.00");
    }

    /** By hand: 46 of 48 quoted panels done at the quoted 7.50 = 345.00; 4 extra skylights at 12.00 less 5 % = 45.60. */
    @Test
    void quoted_units_keep_their_price_when_fewer_are_done() {
        PricedWork priced = price(list("0"), quoted(PANELS, "46", "7.50"), work(SKYLIGHTS, "4"));
        assertEquals(List.of(usd("345.00"), usd("45.60")), nets(priced));
        assertEquals(
                "46 at the quoted $7.50 each, makes $345.00.",
                sentence(priced.lines().getFirst()));
        assertEquals(
                usd("82.50"), price(list("0"), quoted(PANELS, "11", "7.50")).total(), "even below the step");
    }

    @Test
    void no_charge_has_its_value_but_stays_out_of_bill_and_minimum() {
        PricedWork priced = price(list("60", minimum(GLASS, "50")), work(SKYLIGHTS, "2"), noCharge(SKYLIGHTS, "4"));
        assertEquals(List.of(usd("60.00"), usd("48.00")), nets(priced));
        assertEquals(usd("60.00"), priced.total());
        assertEquals(usd("48.00"), priced.noCharge());
        assertEquals(usd("0.00"), price(list("60"), noCharge(SKYLIGHTS, "4")).total(), "nothing billed, no minimum");
    }

    @Test
    void the_highest_threshold_reached_counts_once() {
        PriceList list = list("0");
        assertEquals(usd("9.00"), unit(list, Map.of(SurfaceAttribute.STORY, 1)));
        assertEquals(usd("10.80"), unit(list, Map.of(SurfaceAttribute.STORY, 2)));
        assertEquals(usd("13.50"), unit(list, Map.of(SurfaceAttribute.STORY, 7)));
        assertEquals(usd("9.00"), unit(list, Map.of()), "an unknown attribute is not charged");
    }

    private static Money unit(PriceList list, Map<SurfaceAttribute, Integer> attributes) {
        return price(list, work(PANELS, "1", attributes)).total();
    }

    @Test
    void quantities_in_another_unit_of_the_type_are_converted() {
        WorkLine metric = new WorkLine(VisitLineId.next(), ROOF, Quantity.of("100", Unit.SQUARE_METER), Map.of(), null);
        // 100 m² = 1,076.391042 ft², above the step at 1,000; × 0.285 = 306.77.
        PricedWork priced = price(list("0"), metric);
        assertEquals(usd("306.77"), priced.total());
        assertThrows(
                KernelRefusal.UnlikeUnits.class,
                () -> price(
                        list("0"),
                        new WorkLine(VisitLineId.next(), ROOF, Quantity.of("5", Unit.PIECE), Map.of(), null)));
    }

    @Test
    void what_cannot_be_priced_is_refused_by_name() {
        assertThrows(KernelRefusal.NoRows.class, () -> price(list("0")));
        assertThrows(KernelRefusal.NotPositive.class, () -> work(PANELS, "0"));
        assertThrows(KernelRefusal.Negative.class, () -> quoted(PANELS, "1", "-1"));
        WorkLine unknown =
                new WorkLine(VisitLineId.next(), ServiceItemId.next(), Quantity.of(1, Unit.PIECE), Map.of(), null);
        assertThrows(PricingRefusal.NotInBook.class, () -> price(list("0"), unknown));
    }

    @Test
    void lists_that_cannot_be_are_refused_by_name() {
        ServiceItemId id = ServiceItemId.next();
        refused("steps", () -> new ServiceItemPrice(id, List.of(), List.of()));
        refused("steps", () -> new ServiceItemPrice(id, List.of(each("1", "9")), List.of()));
        refused("steps", () -> new ServiceItemPrice(id, List.of(each("0", "9"), each("10", "9.01")), List.of()));
        refused("steps", () -> new ServiceItemPrice(id, List.of(each("0", "9"), each("0", "8")), List.of()));
        refused("price", () -> each("0", "0"));
        refused("price", () -> each("0", "1.00001"));
        refused("from", () -> each("-1", "5"));
        refused("percent", () -> percent(SurfaceAttribute.STORY, 2, "0"));
        refused(
                "surcharges",
                () -> new ServiceItemPrice(
                        id,
                        List.of(each("0", "9")),
                        List.of(percent(SurfaceAttribute.STORY, 2, "5"), percent(SurfaceAttribute.STORY, 2, "9"))));
        refused("visitMinimum", () -> list("-1"));
        refused("lineMinimums[1].serviceLine", () -> list("0", minimum(ARRAYS, "5"), minimum(ARRAYS, "6")));
        refused("amount", () -> minimum(ARRAYS, "0"));
        refused("atLeast", () -> percent(SurfaceAttribute.GROUND_MOUNT, 2, "5"));
        refused("percent", () -> new Surcharge(SurfaceAttribute.STORY, 2, null, null));
        refused("percent", () -> new Surcharge(SurfaceAttribute.STORY, 2, Percent.of("5"), perOne("1", Unit.PIECE)));
    }

    private static void refused(String field, Runnable making) {
        Refusal refusal = assertThrows(Refusal.class, making::run);
        assertEquals(List.of(field), refusal.fields(), refusal.text());
    }

    @Test
    void every_attribute_can_be_said() {
        for (SurfaceAttribute attribute : SurfaceAttribute.values()) {
            Explanation explanation = new Explanation(
                    Quantity.of(2, Unit.PIECE),
                    List.of(
                            new PriceReason.AsQuoted(perOne("5.00", Unit.PIECE)),
                            new PriceReason.Surcharged(attribute, 2, 1, null, perOne("1.00", Unit.PIECE))));
            String said = ExplanationText.of(explanation, Locale.US);
            assertTrue(said.endsWith(", so $6.00 each, makes $12.00."), said);
        }
        for (Unit unit : Unit.values()) {
            Explanation explanation =
                    new Explanation(Quantity.of("2.5", unit), List.of(new PriceReason.AsQuoted(perOne("5.00", unit))));
            String said = ExplanationText.of(explanation, Locale.US);
            assertTrue(said.startsWith("2.5") && said.endsWith("makes $12.50."), said);
        }
    }

    @Test
    void a_price_that_its_explanation_contradicts_cannot_be_made() {
        PricedWork.Line line = price(list("0"), work(SKYLIGHTS, "2")).lines().getFirst();
        assertThrows(
                PricingRefusal.Unexplained.class,
                () -> new PricedWork.Line(
                        line.key(),
                        line.serviceItem(),
                        line.serviceLine(),
                        line.quantity(),
                        line.unitPrice(),
                        line.netBeforeTopUp(),
                        line.topUp(),
                        usd("25.00"),
                        false,
                        line.explanation()));
        assertThrows(PricingRefusal.Unexplained.class, () -> new Explanation(line.quantity(), List.of()));
    }
}
