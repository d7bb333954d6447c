package eaveside.catalog;

import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Quantity;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;

/**
 * Labor minutes that a piece of work takes by the company's own standard; never below zero, at most
 * {@value #DECIMALS} decimals.
 */
public record StandardMinutes(BigDecimal value) implements Comparable<StandardMinutes> {
    public static final int DECIMALS = 4;
    public static final StandardMinutes ZERO = new StandardMinutes(BigDecimal.ZERO);

    /** The most that a crew can put into one visit, let alone into one piece; more is a slip of the keyboard. */
    public static final StandardMinutes MOST = StandardMinutes.of(100_000);

    public StandardMinutes {
        if (value.signum() < 0) {
            throw new KernelRefusal.Negative("minutesPerUnit");
        }
        if (value.stripTrailingZeros().scale() > DECIMALS) {
            throw new KernelRefusal.TooManyDecimals(value.toPlainString(), "minutes", DECIMALS);
        }
        // One canonical form, so that 2 and 2.00 are equal and hash alike.
        value = value.signum() == 0 ? BigDecimal.ZERO : value.stripTrailingZeros();
        if (value.scale() < 0) {
            value = value.setScale(0, RoundingMode.UNNECESSARY);
        }
    }

    public static StandardMinutes of(String minutes) {
        return new StandardMinutes(new BigDecimal(minutes));
    }

    public static StandardMinutes of(long minutes) {
        return new StandardMinutes(BigDecimal.valueOf(minutes));
    }

    public StandardMinutes plus(StandardMinutes other) {
        return new StandardMinutes(value.add(other.value));
    }

    /** Minutes per unit × units, rounded HALF_UP to {@value #DECIMALS} decimals. */
    public StandardMinutes times(Quantity units) {
        return new StandardMinutes(value.multiply(units.value()).setScale(DECIMALS, RoundingMode.HALF_UP));
    }

    /**
     * Refuses work that comes to more than one visit takes, by the quantity of the line with which it does: a command does
     * not say minutes.
     *
     * @param  before  what the same visit has besides
     * @param  list    the name of the command's component
     * @param  minutes those of each line, in order
     */
    public static void requireOneVisit(StandardMinutes before, String list, List<StandardMinutes> minutes) {
        StandardMinutes soFar = before;
        for (int i = 0; i < minutes.size(); i++) {
            soFar = soFar.plus(minutes.get(i));
            if (soFar.compareTo(MOST) > 0) {
                throw new CatalogRefusal.TooMuchWork(soFar, MOST, list + "[" + i + "].quantity");
            }
        }
    }

    @Override
    public int compareTo(StandardMinutes other) {
        return value.compareTo(other.value);
    }

    /** Such as {@code 12.5 min}. */
    @Override
    public String toString() {
        return value.toPlainString() + " min";
    }
}
