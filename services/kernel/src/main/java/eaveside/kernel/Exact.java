package eaveside.kernel;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/** Decimal arithmetic shared by money and quantities: never binary floating point. */
public final class Exact {
    /** Digits carried inside a calculation before its one rounding. */
    public static final MathContext WORKING = MathContext.DECIMAL128;

    /** A trillion, which is more than anything entered, a trillion times: whatever is stored can be added up. */
    private static final int MOST_DIGITS = 24;

    private Exact() {}

    /**
     * The number itself; refuses one with more than twenty-four digits in front of the decimal point before anything is
     * computed with it (a text such as 1E+999999999 would otherwise unfold to a gigabyte of zeros).
     */
    public static BigDecimal bounded(BigDecimal value) {
        if (value.signum() != 0 && (long) value.precision() - value.scale() > MOST_DIGITS) {
            throw new KernelRefusal.TooLarge();
        }
        return value;
    }

    /** a × numerator ÷ denominator with {@link #WORKING} digits. */
    public static BigDecimal ratio(BigDecimal a, BigDecimal numerator, BigDecimal denominator) {
        return a.multiply(numerator).divide(denominator, WORKING);
    }

    /**
     * Splits a total into parts of the given scale in proportion to the weights; the parts add up to the total
     * exactly (largest-remainder method, the earlier part wins a tie). All-zero weights split evenly.
     */
    public static List<BigDecimal> largestRemainder(BigDecimal total, int scale, List<BigDecimal> weights) {
        if (weights.isEmpty()) {
            throw new KernelRefusal.NothingToShareOver();
        }
        if (weights.stream().anyMatch(w -> w.signum() < 0)) {
            throw new KernelRefusal.NegativeWeight();
        }
        BigDecimal weightSum = weights.stream().reduce(BigDecimal.ZERO, BigDecimal::add);
        boolean even = weightSum.signum() == 0;
        BigDecimal denominator = even ? BigDecimal.valueOf(weights.size()) : weightSum;
        BigDecimal unit = BigDecimal.ONE.movePointLeft(scale);

        List<BigDecimal> parts = new ArrayList<>();
        List<BigDecimal> remainders = new ArrayList<>();
        BigDecimal handedOut = BigDecimal.ZERO;
        for (BigDecimal weight : weights) {
            BigDecimal exact = ratio(total, even ? BigDecimal.ONE : weight, denominator);
            BigDecimal part = exact.setScale(scale, RoundingMode.DOWN);
            parts.add(part);
            remainders.add(exact.subtract(part).abs());
            handedOut = handedOut.add(part);
        }
        BigDecimal left = total.subtract(handedOut);
        int units = left.abs().divide(unit).intValueExact();
        BigDecimal step = unit.multiply(BigDecimal.valueOf(left.signum()));
        IntStream.range(0, parts.size())
                .boxed()
                .sorted(Comparator.comparing((Integer i) -> remainders.get(i))
                        .reversed()
                        .thenComparing(Comparator.naturalOrder()))
                .limit(units)
                .forEach(i -> parts.set(i, parts.get(i).add(step)));
        return List.copyOf(parts);
    }
}
