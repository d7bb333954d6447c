package eaveside.inventory.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.inventory.Draw;
import eaveside.inventory.Drawn.DrawnLine;
import eaveside.inventory.InventoryRefusal;
import eaveside.inventory.Portion;
import eaveside.inventory.Ppm;
import eaveside.inventory.StockItem;
import eaveside.inventory.StockType;
import eaveside.inventory.WaterReading;
import eaveside.inventory.internal.LotsOnHand.Change;
import eaveside.inventory.internal.LotsOnHand.Held;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.LotId;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.StockItemId;
import eaveside.kernel.Unit;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.joda.money.CurrencyUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LotsOnHandTest {
    private static final StockItem SOAP =
            StockItem.of(StockItemId.next(), "S", "Soap", StockType.CONCENTRATE, Unit.US_GALLON);
    private static final StockItem RESIN = StockItem.of(StockItemId.next(), "R", "Resin", StockType.RESIN, Unit.GRAIN);

    private static Held held(StockItem item, String quantity, String value) {
        return new Held(LotId.next(), item.id(), Quantity.of(quantity, item.baseUnit()), usd(value));
    }

    private static Money usd(String amount) {
        return Money.of(CurrencyUnit.USD, amount);
    }

    private static LotsOnHand lotsOnHand(Held... lots) {
        return new LotsOnHand(
                "Van 1", LocalDate.of(2026, 2, 10), Map.of(SOAP.id(), SOAP, RESIN.id(), RESIN), List.of(lots));
    }

    private static Draw draw(LotId lot, String gallons) {
        return new Draw(SOAP.id(), lot, Quantity.of(gallons, Unit.US_GALLON));
    }

    private static List<String> told(List<DrawnLine> lines) {
        return lines.stream()
                .map(l -> l.index() + ": " + l.quantity() + " at " + l.cost())
                .toList();
    }

    @Test
    void the_last_unit_takes_the_rest_of_the_value() {
        LotsOnHand lotsOnHand = lotsOnHand(held(SOAP, "3", "10.00"));
        assertEquals(
                List.of("0: 1 GLL at USD 3.33", "1: 1 GLL at USD 3.34", "2: 1 GLL at USD 3.33"),
                told(lotsOnHand.take(List.of(draw(null, "1"), draw(null, "1"), draw(null, "1")))));
        assertEquals(Quantity.zero(Unit.US_GALLON), lotsOnHand.held(SOAP.id(), null));
    }

    @Test
    void the_oldest_lot_goes_first() {
        LotsOnHand lotsOnHand = lotsOnHand(held(SOAP, "2", "20.00"), held(SOAP, "5", "60.00"));
        assertEquals(
                List.of("0: 2 GLL at USD 20.00", "0: 1.5 GLL at USD 18.00"),
                told(lotsOnHand.take(List.of(draw(null, "3.5")))));
    }

    private static Draw through(Held canister, String grains, String pureWater) {
        return new Draw(
                RESIN.id(),
                canister.lot(),
                Quantity.of(grains, Unit.GRAIN),
                new WaterReading(Ppm.of("300"), Ppm.of(pureWater), Quantity.of(100, Unit.US_GALLON)));
    }

    @Test
    void pure_water_shows_that_a_canister_holds_more_than_the_books_say() {
        Held canister = held(RESIN, "1000", "18.00");
        LotsOnHand lotsOnHand = lotsOnHand(canister);
        assertEquals(
                List.of("0: 900 GRN at USD 16.20", "1: 600 GRN at USD 1.80", "2: 50 GRN at USD 0.00"),
                told(lotsOnHand.take(List.of(
                        through(canister, "900", "0"), through(canister, "600", "10"), through(canister, "50", "3")))));
        assertEquals(
                List.of("501 GRN", "50 GRN"),
                lotsOnHand.overruns().stream().map(o -> o.quantity().toString()).toList());
        assertEquals(Quantity.of(1, Unit.GRAIN), lotsOnHand.held(RESIN.id(), canister.lot()), "to be named again");
    }

    @Test
    void a_canister_is_believed_only_while_it_makes_pure_water_and_only_where_it_is() {
        Held canister = held(RESIN, "1000", "18.00");
        assertThrows(
                InventoryRefusal.CanisterSpent.class,
                () -> lotsOnHand(canister).take(List.of(through(canister, "1001", "10.1"))));
        assertEquals(
                List.of("0: 1000 GRN at USD 18.00"),
                told(lotsOnHand(canister).take(List.of(through(canister, "1000", "10.1")))));
        assertThrows(
                InventoryRefusal.NotEnough.class,
                () -> lotsOnHand(held(RESIN, "1000", "18.00")).take(List.of(through(canister, "5", "0"))));
        assertThrows(
                InventoryRefusal.NotEnough.class,
                () -> lotsOnHand(canister)
                        .take(List.of(new Draw(RESIN.id(), canister.lot(), Quantity.of(1001, Unit.GRAIN)))));
    }

    @Test
    void a_named_lot_is_kept_for_the_draw_that_names_it() {
        Held old = held(SOAP, "2", "20.00");
        LotsOnHand lotsOnHand = lotsOnHand(old, held(SOAP, "5", "60.00"));
        assertEquals(
                List.of("0: 1 GLL at USD 12.00", "1: 2 GLL at USD 20.00"),
                told(lotsOnHand.take(List.of(draw(null, "1"), draw(old.lot(), "2")))));
    }

    @Test
    void other_units_of_the_type_are_converted() {
        LotsOnHand lotsOnHand = lotsOnHand(held(SOAP, "2", "20.00"));
        assertEquals(
                List.of("0: 0.5 GLL at USD 5.00"),
                told(lotsOnHand.take(List.of(new Draw(SOAP.id(), null, Quantity.of(64, Unit.US_FLUID_OUNCE))))));
        assertThrows(
                KernelRefusal.WrongUnit.class,
                () -> lotsOnHand.take(List.of(new Draw(SOAP.id(), null, Quantity.of(1, Unit.POUND)))));
    }

    @Test
    void more_than_there_is_names_what_the_books_hold() {
        LotsOnHand lotsOnHand = lotsOnHand(held(SOAP, "2", "20.00"), held(SOAP, "0.25", "1.00"));
        var refused =
                assertThrows(InventoryRefusal.NotEnough.class, () -> lotsOnHand.take(List.of(draw(null, "2.250001"))));
        assertTrue(refused.text().contains("2.25 GLL of Soap in Van 1"), refused.text());
        assertThrows(
                InventoryRefusal.NotEnough.class,
                () -> lotsOnHand(held(SOAP, "2", "2.00")).take(List.of(draw(null, "1.5"), draw(null, "1"))));
    }

    private static Change change(String quantity, String value) {
        return new Change(Quantity.of(quantity, Unit.US_GALLON), usd(value));
    }

    private static Held before(String quantity, String value, Change... later) {
        return Held.before(LotId.next(), SOAP.id(), Quantity.of(quantity, Unit.US_GALLON), usd(value), List.of(later));
    }

    @Test
    void only_what_no_later_day_needs_is_free() {
        // 10 on the day, 3 after the first later day, 8 in the end.
        Held lot = before("8", "80.00", change("5", "50.00"), change("-7", "-70.00"));
        assertEquals(Quantity.of("10", Unit.US_GALLON), lot.onDay());
        assertEquals(Quantity.of("3", Unit.US_GALLON), lot.free());
        var refused = assertThrows(
                InventoryRefusal.NotEnough.class, () -> lotsOnHand(lot).take(List.of(draw(null, "3.000001"))));
        assertTrue(
                refused.text()
                        .contains("On 2026-02-10 the books hold 10 GLL of Soap in Van 1, of which later documents"
                                + " leave 3 GLL, not 3.000001 GLL"),
                refused.text());
        assertEquals(List.of("0: 3 GLL at USD 30.00"), told(lotsOnHand(lot).take(List.of(draw(null, "3")))));
        assertThrows(
                InventoryRefusal.NotEnough.class,
                () -> lotsOnHand(lot).takePortions(List.of(new Portion(SOAP.id(), null, null))),
                "all of it was ten");
    }

    @Test
    void a_lot_that_comes_later_is_not_there() {
        Held young = before("5", "50.00", change("5", "50.00"));
        LotsOnHand lotsOnHand = lotsOnHand(young);
        assertEquals(Quantity.zero(Unit.US_GALLON), lotsOnHand.held(SOAP.id(), null));
        assertEquals(Quantity.of("5", Unit.US_GALLON), lotsOnHand.now(SOAP.id(), null));
        assertThrows(InventoryRefusal.NotEnough.class, () -> lotsOnHand.take(List.of(draw(null, "1"))));
        assertThrows(
                InventoryRefusal.NothingThere.class,
                () -> lotsOnHand.takePortions(List.of(new Portion(SOAP.id(), null, null))));
    }

    @Test
    void books_that_were_below_zero_have_nothing_free() {
        Held old = before("4", "40.00", change("6", "60.00"));
        assertEquals(Quantity.of("-2", Unit.US_GALLON), old.onDay());
        assertEquals(Quantity.zero(Unit.US_GALLON), old.free());
    }

    @Test
    void nothing_is_drawn_for_zero() {
        assertEquals(List.of(), lotsOnHand(held(SOAP, "2", "20.00")).take(List.of(draw(null, "0"))));
    }

    @Test
    void canisters_are_named_and_go_whole() {
        Held canister = held(RESIN, "2500", "90.00");
        LotsOnHand lotsOnHand = lotsOnHand(canister);
        assertThrows(
                InventoryRefusal.LotNotNamed.class,
                () -> lotsOnHand.take(List.of(new Draw(RESIN.id(), null, Quantity.of(1, Unit.GRAIN)))));
        assertThrows(
                InventoryRefusal.NotWhole.class,
                () -> lotsOnHand.takePortions(
                        List.of(new Portion(RESIN.id(), canister.lot(), Quantity.of(2400, Unit.GRAIN)))));
        assertEquals(
                List.of("0: 2500 GRN at USD 90.00"),
                told(lotsOnHand.takePortions(List.of(Portion.whole(RESIN.id(), canister.lot())))));
        assertThrows(
                InventoryRefusal.NothingThere.class,
                () -> lotsOnHand.takePortions(List.of(Portion.whole(RESIN.id(), canister.lot()))));
    }

    /** Against a plain reckoning: whatever is drawn, quantity and value out plus what is left are what was there. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 20261125, 77, 4096})
    void nothing_is_lost_or_made(long seed) {
        Random random = new Random(seed);
        List<Held> lots = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            lots.add(new Held(
                    LotId.next(),
                    SOAP.id(),
                    Quantity.of(BigDecimal.valueOf(1 + random.nextInt(5_000_000), 6), Unit.US_GALLON),
                    Money.of(CurrencyUnit.USD, BigDecimal.valueOf(random.nextInt(400), 2))));
        }
        Quantity there = lots.stream().map(Held::quantity).reduce(Quantity.zero(Unit.US_GALLON), Quantity::plus);
        Money worth = Money.sum(CurrencyUnit.USD, lots.stream().map(Held::value).toList());
        LotsOnHand lotsOnHand = lotsOnHand(lots.toArray(Held[]::new));
        Quantity out = Quantity.zero(Unit.US_GALLON);
        Money cost = usd("0");
        List<LotId> order = new ArrayList<>();
        while (lotsOnHand.held(SOAP.id(), null).isPositive()) {
            Quantity asked = Quantity.of(BigDecimal.valueOf(1 + random.nextInt(900_000), 6), Unit.US_GALLON)
                    .min(lotsOnHand.held(SOAP.id(), null));
            for (DrawnLine line : lotsOnHand.take(List.of(new Draw(SOAP.id(), null, asked)))) {
                out = out.plus(line.quantity());
                cost = cost.plus(line.cost());
                if (order.isEmpty() || !order.getLast().equals(line.lot())) {
                    order.add(line.lot());
                }
            }
        }
        assertEquals(there, out, "seed " + seed);
        assertEquals(worth, cost, "seed " + seed);
        assertEquals(lots.stream().map(Held::lot).toList(), order, "oldest first, seed " + seed);
    }
}
