package eaveside.kernel;

import java.util.Arrays;
import javax.measure.MetricPrefix;
import systems.uom.common.USCustomary;
import tech.units.indriya.AbstractUnit;
import tech.units.indriya.unit.Units;

/**
 * The units the company counts in, under their UN/ECE Recommendation 20 codes. Conversion factors come from the
 * units library (US customary units after NIST Handbook 44), except the grain, which it lacks: 64.79891 mg exactly.
 */
public enum Unit {
    PIECE("H87", AbstractUnit.ONE),
    ONE("C62", AbstractUnit.ONE),
    SQUARE_METRE("MTK", Units.SQUARE_METRE),
    SQUARE_FOOT("FTK", USCustomary.SQUARE_FOOT),
    METRE("MTR", Units.METRE),
    FOOT("FOT", USCustomary.FOOT),
    US_GALLON("GLL", USCustomary.GALLON_LIQUID),
    US_FLUID_OUNCE("OZA", USCustomary.FLUID_OUNCE),
    LITRE("LTR", Units.LITRE),
    MILLILITRE("MLT", MetricPrefix.MILLI(Units.LITRE)),
    POUND("LBR", USCustomary.POUND),
    KILOGRAM("KGM", Units.KILOGRAM),
    GRAM("GRM", Units.GRAM),
    GRAIN("GRN", Units.GRAM.multiply(6_479_891).divide(100_000_000)),
    HOUR("HUR", Units.HOUR),
    MINUTE("MIN", Units.MINUTE),
    MILE("SMI", USCustomary.MILE),
    KILOMETRE("KMT", MetricPrefix.KILO(Units.METRE));

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

    /** Whether quantities of the two units can be converted into one another (gallons and litres, not gallons and feet). */
    public boolean isLike(Unit other) {
        return measure.isCompatible(other.measure);
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
