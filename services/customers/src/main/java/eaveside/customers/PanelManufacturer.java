package eaveside.customers;

import eaveside.kernel.Check;
import eaveside.kernel.Default;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Quantity;
import eaveside.kernel.Records;
import eaveside.kernel.Unit;
import eaveside.kernel.Versioned;
import org.jspecify.annotations.Nullable;

/**
 * What a manufacturer of solar panels allows when they are washed, as the office reads it in the installation manual. Manufacturers
 * disagree, so there is no default; a limit that the manual does not give is absent.
 *
 * @param  maxHardness     highest hardness of the water; kept in milligrams per liter, at most 2,000
 * @param  maxPressure     highest water pressure; kept in kilopascals, at most 50,000
 * @param  maxTemperatureDifference   largest difference between water and glass; kept in degrees Celsius, at most 100
 * @param  alkaliForbidden whether alkaline soap is forbidden
 * @param  source          which manual, and where in it
 * @param  version         see {@link Versioned}
 */
public record PanelManufacturer(
        ManufacturerName name,
        @Nullable Quantity maxHardness,
        @Nullable Quantity maxPressure,
        @Nullable Quantity maxTemperatureDifference,
        @Default boolean alkaliForbidden,
        @Default String source,
        @Default("0") int version)
        implements Versioned {
    public static final Quantity HARDEST = Quantity.of(2000, Unit.MILLIGRAM_PER_LITER);
    public static final Quantity HIGHEST_PRESSURE = Quantity.of(50_000, Unit.KILOPASCAL);
    public static final Quantity LARGEST_TEMPERATURE_DIFFERENCE = Quantity.of(100, Unit.CELSIUS_DEGREE);

    public PanelManufacturer {
        Check check = new Check();
        maxHardness = within(check, "maxHardness", maxHardness, HARDEST);
        maxPressure = within(check, "maxPressure", maxPressure, HIGHEST_PRESSURE);
        maxTemperatureDifference =
                within(check, "maxTemperatureDifference", maxTemperatureDifference, LARGEST_TEMPERATURE_DIFFERENCE);
        source = check.optional("source", source, 500);
        check.done();
    }

    /** With limits in whole milligrams per liter, kilopascals and degrees Celsius. */
    public PanelManufacturer(
            ManufacturerName name,
            @Nullable Integer mgPerLiter,
            @Nullable Integer kilopascals,
            @Nullable Integer degreesCelsius,
            boolean alkaliForbidden,
            String source,
            int version) {
        this(
                name,
                mgPerLiter == null ? null : Quantity.of(mgPerLiter, Unit.MILLIGRAM_PER_LITER),
                kilopascals == null ? null : Quantity.of(kilopascals, Unit.KILOPASCAL),
                degreesCelsius == null ? null : Quantity.of(degreesCelsius, Unit.CELSIUS_DEGREE),
                alkaliForbidden,
                source,
                version);
    }

    /** In the unit that it is kept in, whatever it was given in, so that equal limits are equal. */
    private static @Nullable Quantity within(Check check, String field, @Nullable Quantity limit, Quantity highest) {
        if (limit == null) {
            return null;
        }
        Quantity given = limit;
        return check.value(() -> kept(field, given, highest), highest);
    }

    private static Quantity kept(String field, Quantity limit, Quantity highest) {
        Quantity kept = limit.in(highest.unit(), field);
        if (!kept.isPositive() || kept.compareTo(highest) > 0) {
            throw new KernelRefusal.Unfit(field, "{field} must be above zero and at most " + highest.in(limit.unit()));
        }
        return kept;
    }

    @Override
    public PanelManufacturer withVersion(int other) {
        return Records.with(this, "version", other);
    }
}
