package eaveside.kernel;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** A rate in per cent: 8.25 means 8.25 %. At most four decimals. */
public record Percent(BigDecimal value) implements Comparable<Percent> {
    private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);

    public Percent {
        Exact.bounded(value);
        if (value.stripTrailingZeros().scale() > 4) {
            throw new KernelRefusal.TooManyDecimals(value.toPlainString(), "%", 4);
        }
        value = value.signum() == 0 ? BigDecimal.ZERO : value.stripTrailingZeros();
        if (value.scale() < 0) {
            value = value.setScale(0, RoundingMode.UNNECESSARY);
        }
    }

    public static Percent of(String value) {
        return new Percent(new BigDecimal(value));
    }

    public static Percent of(BigDecimal value) {
        return new Percent(value);
    }

    /** That share of the amount, rounded HALF_UP to the minor unit. */
    public Money of(Money amount) {
        return amount.times(value, HUNDRED);
    }

    public boolean isZero() {
        return value.signum() == 0;
    }

    @Override
    public int compareTo(Percent other) {
        return value.compareTo(other.value);
    }

    @Override
    public String toString() {
        return value.toPlainString() + "%";
    }
}
