package eaveside.kernel;

import java.util.Arrays;
import java.util.Locale;
import javax.measure.MetricPrefix;
import systems.uom.common.USCustomary;
import tech.units.indriya.AbstractUnit;
import tech.units.indriya.unit.Units;

/**
 * The units the company counts in, under their UN/ECE Recommendation 20 codes. Conversion factors come from the
 * units library (US customary units after NIST Handbook 44), except the grain, which it lacks: 64.79891 mg exactly,
 * and the pound-force per square inch.
 */
public enum Unit {
    PIECE("H87", AbstractUnit.ONE),
    ONE("C62", AbstractUnit.ONE),
    SQUARE_METER("MTK", Units.SQUARE_METRE),
    SQUARE_FOOT("FTK", USCustomary.SQUARE_FOOT),
    METER("MTR", Units.METRE),
    FOOT("FOT", USCustomary.FOOT),
    US_GALLON("GLL", USCustomary.GALLON_LIQUID),
    US_FLUID_OUNCE("OZA", USCustomary.FLUID_OUNCE),
    LITER("LTR", Units.LITRE),
    MILLILITER("MLT", MetricPrefix.MILLI(Units.LITRE)),
    POUND("LBR", USCustomary.POUND),
    KILOGRAM("KGM", Units.KILOGRAM),
    GRAM("GRM", Units.GRAM),
    GRAIN("GRN", Units.GRAM.multiply(6_479_891).divide(100_000_000)),
    HOUR("HUR", Units.HOUR),
    MINUTE("MIN", Units.MINUTE),
    MILE("SMI", USCustomary.MILE),
    KILOMETER("KMT", MetricPrefix.KILO(Units.METRE)),
    KILOPASCAL("KPA", MetricPrefix.KILO(Units.PASCAL)),
    BAR("BAR", MetricPrefix.KILO(Units.PASCAL).multiply(100)),
    /** One pound-force on a square inch: 4.4482216152605 N on (0.0254 m)², exactly. */
    PSI("PS", Units.PASCAL.multiply(44_482_216_152_605L).divide(6_451_600_000L)),
    /** A difference of temperatures, never a reading: the scales' zeros do not count. */
    CELSIUS_DEGREE("CEL", Units.KELVIN),
    /** A difference of temperatures, as {@link #CELSIUS_DEGREE}. */
    FAHRENHEIT_DEGREE("FAH", Units.KELVIN.multiply(5).divide(9)),
    /** Of what is dissolved in water. */
    MILLIGRAM_PER_LITER("M1", MetricPrefix.MILLI(Units.GRAM).divide(Units.LITRE)),
    /** By mass, in water, of which a liter weighs a kilogram: the same number as milligrams per liter. */
    PART_PER_MILLION("59", MetricPrefix.MILLI(Units.GRAM).divide(Units.LITRE));

    private final String code;
    private final javax.measure.Unit<?> measure;

    Unit(String code, javax.measure.Unit<?> measure) {
        this.code = code;
        this.measure = measure;
    }

    /** The code of UN/ECE Recommendation 20, as used in stored rows and electronic invoices. */
    public String code() {
        return code;
    }

    /** Its name for several of it, in a sentence. */
    String words() {
        return switch (this) {
            case ONE -> "units";
            case FOOT -> "feet";
            case SQUARE_FOOT -> "square feet";
            case US_GALLON -> "US gallons";
            case US_FLUID_OUNCE -> "US fluid ounces";
            case BAR -> "bar";
            case PSI -> "psi";
            case CELSIUS_DEGREE -> "degrees Celsius";
            case FAHRENHEIT_DEGREE -> "degrees Fahrenheit";
            case MILLIGRAM_PER_LITER -> "milligrams per liter";
            case PART_PER_MILLION -> "parts per million";
            default -> name().toLowerCase(Locale.ROOT).replace('_', ' ') + "s";
        };
    }

    /** Whether quantities of the two units can be converted into one another (gallons and liters, not gallons and feet). */
    public boolean isLike(Unit other) {
        return measure.isCompatible(other.measure);
    }

    /** What US customary measures count in where metric ones count in this; itself where there is no other. */
    public Unit customary() {
        return switch (this) {
            case SQUARE_METER -> SQUARE_FOOT;
            case METER -> FOOT;
            case KILOMETER -> MILE;
            case LITER -> US_GALLON;
            case MILLILITER -> US_FLUID_OUNCE;
            case KILOGRAM, GRAM -> POUND;
            case KILOPASCAL, BAR -> PSI;
            case CELSIUS_DEGREE -> FAHRENHEIT_DEGREE;
            case MILLIGRAM_PER_LITER -> PART_PER_MILLION;
            default -> this;
        };
    }

    /**
     * What metric measures count in where US customary ones count in this; itself where there is no other. Grains stay:
     * resin is rated in them everywhere.
     */
    public Unit metric() {
        return switch (this) {
            case SQUARE_FOOT -> SQUARE_METER;
            case FOOT -> METER;
            case MILE -> KILOMETER;
            case US_GALLON -> LITER;
            case US_FLUID_OUNCE -> MILLILITER;
            case POUND -> KILOGRAM;
            case KILOPASCAL, PSI -> BAR;
            case FAHRENHEIT_DEGREE -> CELSIUS_DEGREE;
            case PART_PER_MILLION -> MILLIGRAM_PER_LITER;
            default -> this;
        };
    }

    javax.measure.Unit<?> measure() {
        return measure;
    }

    /** The unit of a Recommendation 20 code; refuses one that the company cannot count in. */
    public static Unit ofCode(String code) {
        return Arrays.stream(values())
                .filter(u -> u.code.equals(code))
                .findFirst()
                .orElseThrow(() -> new KernelRefusal.UnknownUnit(code));
    }
}
