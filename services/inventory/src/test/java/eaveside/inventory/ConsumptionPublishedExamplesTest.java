package eaveside.inventory;

import static org.junit.jupiter.api.Assertions.assertEquals;

import eaveside.kernel.Exact;
import eaveside.kernel.LotId;
import eaveside.kernel.MixId;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.StockItemId;
import eaveside.kernel.Unit;
import eaveside.kernel.UnitPrice;
import java.math.BigDecimal;
import java.math.MathContext;
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

    private static Quantity grains(String tapWater, String pureWater, String gallons) {
        return Consumption.ofCanister(
                        RESIN,
                        LotId.next(),
                        new WaterReading(Ppm.of(tapWater), Ppm.of(pureWater), Quantity.of(gallons, Unit.US_GALLON)))
                .quantity();
    }

    /**
     * Source: Flowers, Theopold, Langley and Robinson, Chemistry 2e (OpenStax, 2019), §3.3, Molarity: 0.850 L of a
     * 5.00-M solution made up to 1.80 L is 2.36 M; 25.0 mL of 2.04 M made up to 500 mL is 0.102 M. One part in (end
     * volume ÷ start volume) parts of solution.
     */
    @ParameterizedTest
    @CsvSource({"2.117647, 5.00, 1.80, LITER, 2, 2.36, 0.850", "20, 2.04, 500, MILLILITER, 3, 0.102, 25.0"})
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

    /**
     * Source: ICS Magazine, The Dilution Solution (February 5, 2010): a sprayer set to 8 : 1 adds 40 quarts of water to
     * 5 of concentrate, which make 45. A gallon is 4 quarts.
     */
    @Test
    void eight_to_one_sprayer() {
        assertEquals(
                Quantity.of("1.25", Unit.US_GALLON),
                concentrate(MixRatio.addedToWater("8"), Quantity.of("11.25", Unit.US_GALLON)));
    }

    /**
     * Common practice, no source: 1 : 32 yields 33 gallons, 32 of water and one of concentrate. At $12.50 a gallon of
     * concentrate a gallon of solution costs $0.3788 by computation, here the cost of 10,000 gallons.
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

    /**
     * Source: University of Massachusetts, Greenhouse and Floriculture fact sheets, Chart: Ratios and Concentrations
     * for Using Water Soluble Fertilizers (2011): an injector set to 1 : 100 makes 100 gallons of solution from one of
     * concentrate.
     *
     * <p>Source: Oregon Health Licensing Agency, Follow CDC Recommendations to Disinfect Spills (undated in the copy
     * read in 2026): 1 : 100 is one part of bleach to 100 parts of water. The two readings are told apart on the 101
     * liters that the second makes of one.
     */
    @Test
    void one_to_a_hundred_either_way() {
        Quantity hundred = Quantity.of(100, Unit.US_GALLON);
        assertEquals(Quantity.of(1, Unit.US_GALLON), concentrate(MixRatio.inSolution("100"), hundred));
        Quantity solution = Quantity.of(101, Unit.LITER);
        assertEquals(Quantity.of("1.01", Unit.LITER), concentrate(MixRatio.inSolution("100"), solution));
        assertEquals(Quantity.of(1, Unit.LITER), concentrate(MixRatio.addedToWater("100"), solution));
    }

    /**
     * Source: National Institute of Standards and Technology, Handbook 44, Specifications, Tolerances, and Other
     * Technical Requirements for Weighing and Measuring Devices (2012), Appendix C: a US gallon is 3.785411784 L and a
     * grain 64.79891 mg, both exactly. So a gallon with one grain in it has 17.11806 mg/L by computation.
     */
    @Test
    void grain_per_gallon() {
        assertEquals(Quantity.of(1, Unit.GRAIN), grains("17.118061", "0", "1"));
    }

    /**
     * Source: Connecticut Department of Public Health, Drinking Water Section, Hardness Fact Sheet (August 2017), its
     * table of classes in both units: 60 mg/L is 3.5 grains a gallon, 120 is 7.0, 180 is 10.5.
     *
     * <p>Source: Connecticut Department of Public Health, Private Drinking Water in Connecticut, Publication No. 29
     * (June 2009), Hardwater Softeners: 150 mg/L is 8.8 grains a gallon.
     */
    @ParameterizedTest
    @CsvSource({"60, 3.5", "120, 7.0", "150, 8.8", "180, 10.5"})
    void hardness_in_grains_a_gallon(String tapWater, BigDecimal grainsAGallon) {
        BigDecimal used = grains(tapWater, "0", "1").value();
        assertEquals(grainsAGallon, used.setScale(1, RoundingMode.HALF_UP), () -> tapWater + " is " + used);
    }

    /**
     * Source: ReefKeepers, Reef Keepers Frequently Asked Questions, part 1 of 3, release 1.12 (August 17, 1994; Usenet
     * archive aquaria/reefkeeper-faq/part1), §1.1.2, DI filters: a unit rated 1,000 grains on water of 123 mg/L lasts
     * 528 liters, which are 139.5 gallons. The source rounds the grain to 0.065 g, so its thousand grains are a
     * thousand to three digits.
     */
    @ParameterizedTest
    @CsvSource({"528, LITER", "139.5, US_GALLON"})
    void life_of_a_canister(String volume, Unit unit) {
        BigDecimal used = Consumption.ofCanister(
                        RESIN, LotId.next(), new WaterReading(Ppm.of("123"), Ppm.of("0"), Quantity.of(volume, unit)))
                .quantity()
                .value();
        assertEquals(0, new BigDecimal("1000").compareTo(used.round(new MathContext(3))), used::toString);
    }

    /** From memory: only what the resin took out counts, so 10 mg/L in and 4 out load it like 6 in and none out. */
    @Test
    void only_what_was_taken_out_counts() {
        assertEquals(grains("6", "0", "1000"), grains("10", "4", "1000"));
    }
}
