package eaveside.customers;

import eaveside.kernel.Texts;
import org.jspecify.annotations.Nullable;

/**
 * What a maker of solar modules allows when they are washed, as the office reads it in the installation manual. Makers
 * disagree, so there is no default; a limit that the manual does not give is absent.
 *
 * @param maxHardnessMgPerLitre  highest hardness of the water, in milligrams per litre
 * @param maxPressureKpa         highest water pressure, in kilopascals
 * @param maxDifferenceCelsius   largest difference between water and glass, in degrees Celsius
 * @param alkaliForbidden        whether alkaline soap is forbidden
 * @param source                 which manual, and where in it
 * @param version                see {@link Editable}
 */
public record ModuleMaker(
        MakerName name,
        @Nullable Integer maxHardnessMgPerLitre,
        @Nullable Integer maxPressureKpa,
        @Nullable Integer maxDifferenceCelsius,
        boolean alkaliForbidden,
        String source,
        int version)
        implements Editable {
    public ModuleMaker {
        within("maxHardnessMgPerLitre", maxHardnessMgPerLitre, 2000);
        within("maxPressureKpa", maxPressureKpa, 50_000);
        within("maxDifferenceCelsius", maxDifferenceCelsius, 100);
        source = Texts.optional("source", source, 500);
    }

    private static void within(String field, @Nullable Integer value, int highest) {
        if (value != null && (value < 1 || value > highest)) {
            throw new CustomersRefusal.OutOfRange(field, value, 1, highest);
        }
    }

    @Override
    public ModuleMaker withVersion(int version) {
        return new ModuleMaker(
                name, maxHardnessMgPerLitre, maxPressureKpa, maxDifferenceCelsius, alkaliForbidden, source, version);
    }
}
