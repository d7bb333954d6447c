package eaveside.kernel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.math.BigDecimal;
import java.math.MathContext;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class QuantityPublishedExamplesTest {
    /**
     * Source: National Institute of Standards and Technology, Handbook 44, Specifications, Tolerances, and Other Technical
     * Requirements for Weighing and Measuring Devices (2012), Appendix C, General Tables of Units of Measurement: 1 US
     * gallon = 231 in³ = 3.785411784 L, 1 gallon = 128 fluid ounces, 1 pound = 453.59237 g = 7,000 grains, 1 grain =
     * 64.79891 mg, 1 mile = 1.609344 km, 1 ft² = 0.09290304 m², all exactly. An hour has 60 minutes by common practice.
     */
    @ParameterizedTest
    @CsvSource({
        "1, US_GALLON, LITER, 3.785411784",
        "1, US_GALLON, US_FLUID_OUNCE, 128",
        "1, POUND, GRAM, 453.59237",
        "1, MILE, KILOMETER, 1.609344",
        "1, SQUARE_FOOT, SQUARE_METER, 0.09290304",
        "1, GRAIN, GRAM, 0.06479891",
        "1, POUND, GRAIN, 7000",
        "1, HOUR, MINUTE, 60"
    })
    void conversions_equal_the_handbook(String value, Unit from, Unit to, BigDecimal expected) {
        BigDecimal got = Quantity.of(value, from).exactlyIn(to);
        assertEquals(0, expected.compareTo(got.round(new MathContext(20))), () -> got.toPlainString());
    }

    /** No outside figure beside the gallon above: how the program rounds. */
    @Test
    void stored_quantities_round_half_up_to_six_decimals() {
        assertEquals(
                Quantity.of("3.785412", Unit.LITER),
                Quantity.of(1, Unit.US_GALLON).in(Unit.LITER));
    }

    /** No outside figure: what the program refuses. */
    @Test
    void unlike_units_refuse_arithmetic() {
        Quantity gallons = Quantity.of(1, Unit.US_GALLON);
        assertThrows(KernelRefusal.UnlikeUnits.class, () -> gallons.plus(Quantity.of(1, Unit.LITER)));
        assertThrows(KernelRefusal.UnlikeUnits.class, () -> gallons.in(Unit.SQUARE_FOOT));
    }

    /** No outside figure: what the program holds for equal. */
    @Test
    void equal_amounts_are_equal_however_written() {
        assertEquals(Quantity.of("2", Unit.PIECE), Quantity.of("2.000", Unit.PIECE));
        assertEquals("200 H87", Quantity.of("2E2", Unit.PIECE).toString());
    }
}
