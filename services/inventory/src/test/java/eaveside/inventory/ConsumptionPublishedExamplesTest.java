package eaveside.inventory;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.kernel.Exact;
import eaveside.kernel.LotId;
import eaveside.kernel.MixId;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.StockItemId;
import eaveside.kernel.Unit;
import eaveside.kernel.UnitPrice;
import java.math.BigDecimal;
import java.math.RoundingMode;
import org.joda.money.CurrencyUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ConsumptionPublishedExamplesTest {
    private static final StockItemId SOAP = StockItemId.next();
    private static final StockItemId RESIN = StockItemId.next();

    private static Quantity concentrate(MixRatio ratio, Quantity solution) {
        return Consumption.ofMix(Mix.of(MixId.next(), "Mix", SOAP, ratio), solution)
                .quantity();
    }

    private static Quantity grains(String feed, String product, String gallons) {
        return Consumption.ofCanister(
                        RESIN,
                        LotId.next(),
                        new WaterReading(Ppm.of(feed), Ppm.of(product), Quantity.of(gallons, Unit.US_GALLON)))
                .quantity();
    }

    /**
     * OpenStax, Chemistry 2e, §3.3: 0.850 L of a 5.00-M solution made up to 1.80 L is 2.36 M; 25.0 mL of 2.04 M made up
     * to 500 mL is 0.102 M. One part in (end volume ÷ start volume) parts of solution.
     */
    @ParameterizedTest
    @CsvSource({"2.117647, 5.00, 1.80, LITRE, 2, 2.36, 0.850", "20, 2.04, 500, MILLILITRE, 3, 0.102, 25.0"})
    void dilution_of_the_textbook(
            String parts,
            BigDecimal strength,
            String volume,
            Unit unit,
            int decimals,
            BigDecimal diluted,
            BigDecimal drawn) {
        Quantity solution = Quantity.of(volume, unit);
        Quantity used = concentrate(MixRatio.inSolution(parts), solution);
        assertEquals(0, drawn.compareTo(used.value()), used::toString);
        assertEquals(
                diluted,
                Exact.ratio(strength, used.value(), solution.value()).setScale(decimals, RoundingMode.HALF_UP));
    }

    /** A trade article on dilution: an 8 : 1 sprayer turns 5 quarts of concentrate into 45 quarts (a gallon is 4 quarts). */
    @Test
    void eight_to_one_sprayer() {
        assertEquals(
                Quantity.of("1.25", Unit.US_GALLON),
                concentrate(MixRatio.addedToWater("8"), Quantity.of("11.25", Unit.US_GALLON)));
    }

    /**
     * A trade leaflet: 1 : 32 yields 33 gallons to the gallon of concentrate; at $12.50 a gallon of concentrate a gallon
     * of solution costs $0.3788 (computed), here the cost of 10,000 gallons.
     */
    @Test
    void one_to_thirty_two() {
        MixRatio ratio = MixRatio.addedToWater("32");
        assertEquals(Quantity.of(1, Unit.US_GALLON), concentrate(ratio, Quantity.of(33, Unit.US_GALLON)));
        UnitPrice price = UnitPrice.perOne(CurrencyUnit.USD, new BigDecimal("12.50"), Unit.US_GALLON);
        assertEquals(
                Money.of(CurrencyUnit.USD, "3787.88"),
                price.times(concentrate(ratio, Quantity.of(10_000, Unit.US_GALLON))));
    }

    /** The two readings of "1 : 100" that the trade uses, told apart: in 100 parts of solution, added to 100 of water. */
    @Test
    void one_to_a_hundred_either_way() {
        Quantity solution = Quantity.of(101, Unit.LITRE);
        assertEquals(Quantity.of("1.01", Unit.LITRE), concentrate(MixRatio.inSolution("100"), solution));
        assertEquals(Quantity.of(1, Unit.LITRE), concentrate(MixRatio.addedToWater("100"), solution));
    }

    /**
     * One grain in a US gallon is 17.11806 mg/L: computed from the gallon (3.785411784 L, NIST Handbook 44, Appendix C)
     * and the grain (64.79891 mg, from memory of the same table).
     */
    @Test
    void grain_per_gallon() {
        assertEquals(Quantity.of(1, Unit.GRAIN), grains("17.118061", "0", "1"));
    }

    /**
     * A water-treatment supplier's FAQ: mixed-bed resin holds about 10,000 grains to the cubic foot, so 20 ft³ on water of
     * 25 grains a gallon last 8,000 gallons. From the definition (computed): 0.5 ft³ on 250 mg/L last 342.36 gallons.
     */
    @ParameterizedTest
    @CsvSource({"427.951529, 8000, 200000", "250, 342.36, 5000"})
    void life_of_a_resin_bed(String feed, String gallons, BigDecimal rated) {
        Quantity used = grains(feed, "0", gallons);
        BigDecimal off = used.value().subtract(rated).abs();
        assertTrue(off.compareTo(new BigDecimal("0.1")) < 0, used::toString);
    }

    /** A maker's page on deionisation: a cartridge rated 6,000 ppm-gallons lasts 1,000 gallons on feed water of 6 ppm. */
    @Test
    void ppm_gallons() {
        BigDecimal ppmGallons = grains("6", "0", "1000").value().multiply(new BigDecimal("17.118061"));
        assertEquals(new BigDecimal("6000.0"), ppmGallons.setScale(1, RoundingMode.HALF_UP));
        assertEquals(grains("6", "0", "1000"), grains("10", "4", "1000"), "only what the resin took out counts");
    }
}
