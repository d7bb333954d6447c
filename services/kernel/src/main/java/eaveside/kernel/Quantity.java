package eaveside.kernel;

import jakarta.persistence.Embeddable;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import javax.measure.IncommensurableException;
import tech.units.indriya.function.RationalNumber;

/**
 * An amount of something with its unit: 48 panels, 1.5 gallons, 420 grains. At most {@value #SCALE} decimals, as the
 * ledgers store. Arithmetic between unlike units is refused; {@link #in(Unit)} converts. Rows embed it: a column for the value,
 * another for the unit.
 */
@Embeddable
public record Quantity(BigDecimal value, Unit unit) implements Comparable<Quantity> {
    /** Decimals kept. */
    public static final int SCALE = 6;

    private static final BigDecimal MOST = BigDecimal.TEN.pow(9);

    /** What does not fit a column of 19 digits and six decimals, with a digit to spare. */
    private static final BigDecimal COLUMN = BigDecimal.TEN.pow(12);

    /** Digits that people read of a measure. */
    private static final int DIGITS = 3;

    public Quantity {
        Exact.bounded(value);
        if (value.stripTrailingZeros().scale() > SCALE) {
            throw new KernelRefusal.TooManyDecimals(value.toPlainString(), "a quantity", SCALE);
        }
        // One canonical form, so that 2 and 2.00 are equal and hash alike.
        value = value.signum() == 0 ? BigDecimal.ZERO : value.stripTrailingZeros();
        if (value.scale() < 0) {
            value = value.setScale(0, RoundingMode.UNNECESSARY);
        }
    }

    public static Quantity of(BigDecimal value, Unit unit) {
        return new Quantity(value, unit);
    }

    public static Quantity of(long value, Unit unit) {
        return new Quantity(BigDecimal.valueOf(value), unit);
    }

    public static Quantity of(String value, Unit unit) {
        return new Quantity(new BigDecimal(value), unit);
    }

    /** The value rounded HALF_UP to {@value #SCALE} decimals. */
    public static Quantity rounded(BigDecimal value, Unit unit) {
        return new Quantity(value.setScale(SCALE, RoundingMode.HALF_UP), unit);
    }

    public static Quantity zero(Unit unit) {
        return new Quantity(BigDecimal.ZERO, unit);
    }

    public Quantity plus(Quantity other) {
        sameUnit(other);
        return new Quantity(value.add(other.value), unit);
    }

    public Quantity minus(Quantity other) {
        sameUnit(other);
        return new Quantity(value.subtract(other.value), unit);
    }

    public Quantity negated() {
        return new Quantity(value.negate(), unit);
    }

    /** The product, rounded HALF_UP to {@value #SCALE} decimals. */
    public Quantity times(BigDecimal factor) {
        return rounded(value.multiply(factor), unit);
    }

    /** The same of what was entered in a field; refuses a billion and more, also below zero. */
    public Quantity times(BigDecimal factor, String field) {
        BigDecimal product = value.multiply(factor);
        if (product.abs().compareTo(MOST) >= 0) {
            throw new KernelRefusal.TooLarge(
                    field, product.setScale(0, RoundingMode.HALF_UP).toPlainString() + '\u00a0' + unit.code());
        }
        return rounded(product, unit);
    }

    /** The same amount in another unit of its type, rounded HALF_UP to {@value #SCALE} decimals. */
    public Quantity in(Unit target) {
        return target == unit ? this : rounded(exactlyIn(target), target);
    }

    /** The same, of what was entered in a field, which a refusal names. */
    public Quantity in(Unit target, String field) {
        if (!unit.isLike(target)) {
            throw new KernelRefusal.UnlikeUnits(unit, target, field);
        }
        return in(target);
    }

    /** This quantity, which was entered in a field; refuses a billion and more, also below zero: nobody has so much of anything. */
    public Quantity bounded(String field) {
        return below(MOST, field);
    }

    /** This quantity, which others have added up to; refuses more than a table holds, also below zero. */
    public Quantity held(String field) {
        return below(COLUMN, field);
    }

    private Quantity below(BigDecimal bound, String field) {
        if (value.abs().compareTo(bound) >= 0) {
            throw new KernelRefusal.TooLarge(field, said());
        }
        return this;
    }

    /** The amount in another unit with {@link Exact#WORKING} digits, for a longer calculation that rounds at its end. */
    public BigDecimal exactlyIn(Unit target) {
        if (!unit.isLike(target)) {
            throw new KernelRefusal.UnlikeUnits(unit, target);
        }
        try {
            // The factor of one is a rational number in the units library; the value itself stays decimal throughout.
            Number factor = unit.measure().getConverterToAny(target.measure()).convert((Number) RationalNumber.ONE);
            return switch (factor) {
                case RationalNumber r ->
                    value.multiply(new BigDecimal(r.getDividend()))
                            .divide(new BigDecimal(r.getDivisor()), Exact.WORKING);
                case BigDecimal d -> value.multiply(d);
                case BigInteger i -> value.multiply(new BigDecimal(i));
                default -> value.multiply(new BigDecimal(factor.toString()));
            };
        } catch (IncommensurableException e) {
            throw new KernelRefusal.UnlikeUnits(unit, target);
        }
    }

    /**
     * As people say it: to a whole number from a hundred on, below that to three digits, rounded HALF_UP. Pieces are
     * never rounded. For showing only: the books keep the full figure.
     */
    public Quantity forPeople() {
        if (unit == Unit.PIECE || unit == Unit.ONE || value.signum() == 0) {
            return this;
        }
        int whole = value.precision() - value.scale();
        return of(value.setScale(Math.min(SCALE, Math.max(0, DIGITS - whole)), RoundingMode.HALF_UP), unit);
    }

    public boolean isZero() {
        return value.signum() == 0;
    }

    public boolean isNegative() {
        return value.signum() < 0;
    }

    public boolean isPositive() {
        return value.signum() > 0;
    }

    public Quantity min(Quantity other) {
        return compareTo(other) <= 0 ? this : other;
    }

    private void sameUnit(Quantity other) {
        if (unit != other.unit) {
            throw new KernelRefusal.UnlikeUnits(unit, other.unit);
        }
    }

    @Override
    public int compareTo(Quantity other) {
        sameUnit(other);
        return value.compareTo(other.value);
    }

    /** As a refusal says it, with a no-break space, by which a page knows it from what people wrote. */
    public String said() {
        return value.toPlainString() + "\u00a0" + unit.code();
    }

    /** Such as {@code 48 H87}. */
    @Override
    public String toString() {
        return value.toPlainString() + " " + unit.code();
    }
}
