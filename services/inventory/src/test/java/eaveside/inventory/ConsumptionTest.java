package eaveside.inventory;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import eaveside.kernel.KernelRefusal;
import eaveside.kernel.LocationId;
import eaveside.kernel.LotId;
import eaveside.kernel.MixId;
import eaveside.kernel.Quantity;
import eaveside.kernel.StockItemId;
import eaveside.kernel.Unit;
import eaveside.kernel.UserId;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ConsumptionTest {
    private static final Quantity TANK = Quantity.of(100, Unit.US_GALLON);

    @Test
    void a_mix_draws_its_concentrate_oldest_first() {
        StockItemId soap = StockItemId.next();
        Mix mix = Mix.of(MixId.next(), "Array wash", soap, MixRatio.addedToWater("40"));
        assertEquals(
                new Draw(soap, null, Quantity.of(5, Unit.US_GALLON)),
                Consumption.ofMix(mix, Quantity.of(205, Unit.US_GALLON)));
        assertThrows(KernelRefusal.WrongUnit.class, () -> Consumption.ofMix(mix, Quantity.of(1, Unit.POUND)));
    }

    @Test
    void a_brush_gives_up_one_unit_of_life_for_each_unit_done() {
        StockItemId brush = StockItemId.next();
        LotId lot = LotId.next();
        assertEquals(
                new Draw(brush, lot, Quantity.of(48, Unit.PIECE)),
                Consumption.ofBrush(brush, lot, Quantity.of(48, Unit.PIECE)));
    }

    @Test
    void readings_that_cannot_be_are_refused() {
        assertThrows(InventoryRefusal.BadReading.class, () -> new WaterReading(Ppm.of("8"), Ppm.of("9"), TANK));
        assertThrows(InventoryRefusal.BadReading.class, () -> Ppm.of("-1"));
        assertThrows(
                InventoryRefusal.BadReading.class,
                () -> new WaterReading(Ppm.of("300"), Ppm.of("5"), Quantity.of(1, Unit.PIECE)));
        assertThrows(
                KernelRefusal.Negative.class,
                () -> new WaterReading(Ppm.of("300"), Ppm.of("5"), Quantity.of(-1, Unit.LITER)));
        assertEquals(Quantity.zero(Unit.GRAIN), Consumption.grains(new WaterReading(Ppm.of("5"), Ppm.of("5"), TANK)));
    }

    @ParameterizedTest
    @ValueSource(strings = {"0", "-3", "0.5", "2000000", "1.0000001"})
    void a_solution_holds_no_more_concentrate_than_itself(String parts) {
        assertThrows(InventoryRefusal.BadRatio.class, () -> MixRatio.inSolution(parts));
    }

    @Test
    void strong_additions_to_water_are_fine() {
        assertEquals(
                Quantity.of(2, Unit.LITER), MixRatio.addedToWater("0.5").concentrateIn(Quantity.of(3, Unit.LITER)));
        assertEquals(MixRatio.inSolution("100"), MixRatio.inSolution("100.00"));
    }

    @Test
    void items_keep_to_the_units_of_their_type() {
        for (StockType type : List.of(StockType.RESIN, StockType.BRUSH, StockType.CONCENTRATE)) {
            assertThrows(
                    InventoryRefusal.WrongBaseUnit.class,
                    () -> StockItem.of(StockItemId.next(), "X", "X", type, Unit.POUND),
                    type.name());
        }
        StockItem soap = StockItem.of(StockItemId.next(), "S", "Soap", StockType.CONCENTRATE, Unit.US_FLUID_OUNCE)
                .with(new Pack("Gallon jug", Quantity.of(1, Unit.US_GALLON)));
        assertEquals(Quantity.of(384, Unit.US_FLUID_OUNCE), soap.ofPacks("gallon jug", Quantity.of(3, Unit.PIECE)));
        assertThrows(InventoryRefusal.NoSuchPack.class, () -> soap.ofPacks("Drum", Quantity.of(1, Unit.PIECE)));
        assertThrows(KernelRefusal.WrongUnit.class, () -> soap.with(new Pack("Bag", Quantity.of(50, Unit.POUND))));
    }

    @Test
    void only_vans_have_technicians() {
        assertThrows(
                InventoryRefusal.OnlyVansHaveTechnicians.class,
                () -> new Location(LocationId.next(), "Store", LocationType.STORE, List.of(UserId.next()), true, 0));
    }

    @Test
    void amounts_beyond_the_columns_are_refused() {
        assertThrows(
                KernelRefusal.TooLarge.class,
                () -> new Draw(StockItemId.next(), null, Quantity.of("1e12", Unit.PIECE)));
        assertThrows(
                KernelRefusal.Negative.class, () -> new Draw(StockItemId.next(), null, Quantity.of(-1, Unit.PIECE)));
    }
}
