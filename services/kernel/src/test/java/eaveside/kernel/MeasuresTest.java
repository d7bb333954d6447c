package eaveside.kernel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class MeasuresTest {
    @ParameterizedTest
    @CsvSource({
        // From memory: 1 psi is about 6.894757 kPa, 1 bar 100 kPa, and a difference of 5 °C one of 9 °F.
        "1, PSI, KILOPASCAL, 6.894757",
        "35, BAR, KILOPASCAL, 3500",
        "100, PSI, BAR, 6.894757",
        "20, CELSIUS_DEGREE, FAHRENHEIT_DEGREE, 36",
        "35, FAHRENHEIT_DEGREE, CELSIUS_DEGREE, 19.444444",
        "75, MILLIGRAM_PER_LITER, PART_PER_MILLION, 75"
    })
    void limits_convert(String value, Unit from, Unit to, String expected) {
        assertEquals(Quantity.of(expected, to), Quantity.of(value, from).in(to));
    }

    @ParameterizedTest
    @EnumSource(Unit.class)
    void each_unit_has_a_like_one_in_either_system_and_stays_there(Unit unit) {
        for (Unit other : new Unit[] {unit.customary(), unit.metric()}) {
            assertTrue(unit.isLike(other), unit + " and " + other);
        }
        assertSame(unit.customary(), unit.customary().customary());
        assertSame(unit.metric(), unit.metric().metric());
    }

    @ParameterizedTest
    @CsvSource({
        "3749.87, GRAIN, 3750",
        "285.9514, US_FLUID_OUNCE, 286",
        "99.95, US_GALLON, 100",
        "12.345, FOOT, 12.3",
        "1.005, LITER, 1.01",
        "0.012345, KILOGRAM, 0.0123",
        "-285.9514, MILLILITER, -286",
        "48, PIECE, 48",
        "123456, PIECE, 123456",
        "0, GRAIN, 0"
    })
    void people_read_three_digits_and_whole_hundreds(String value, Unit unit, String expected) {
        assertEquals(Quantity.of(expected, unit), Quantity.of(value, unit).forPeople());
    }

    /** Whatever is typed in whole or half units of the one system and kept in the other comes back as it was typed. */
    @ParameterizedTest
    @CsvSource({"PSI, KILOPASCAL", "BAR, KILOPASCAL", "FAHRENHEIT_DEGREE, CELSIUS_DEGREE"})
    void what_was_typed_comes_back(Unit typed, Unit kept) {
        for (int halves = 1; halves <= 400; halves++) {
            Quantity value = Quantity.of(BigDecimal.valueOf(halves).divide(BigDecimal.TWO), typed);
            BigDecimal back = value.in(kept).in(typed).value().setScale(3, RoundingMode.HALF_UP);
            assertEquals(0, value.value().compareTo(back), value + " came back as " + back);
        }
    }
}
