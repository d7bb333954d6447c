package eaveside.pricing.internal;

import eaveside.kernel.Decision;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Percent;
import eaveside.kernel.UnitPrice;
import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * Arithmetic on prices per unit. They are kept to {@value #SCALE} decimals, finer than a cent, because a square foot of
 * roof costs cents; each addition is rounded HALF_UP on its own, so that the figures of an explanation add up exactly.
 */
@Decision
public final class UnitAmounts {
    /** Decimals of a price per base quantity, in books and in what is calculated from them. */
    public static final int SCALE = 4;

    private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);

    private UnitAmounts() {}

    /** The same price in its one written form (at least the currency's decimals); refuses more than {@value #SCALE}. */
    public static UnitPrice canonical(String field, UnitPrice price) {
        BigDecimal amount = price.amount().stripTrailingZeros();
        if (amount.scale() > SCALE) {
            throw new KernelRefusal.Unfit(field, "{field} has more than " + SCALE + " decimals");
        }
        return of(price, amount);
    }

    /** That share of a price, rounded HALF_UP to {@value #SCALE} decimals. */
    public static UnitPrice share(UnitPrice price, Percent percent) {
        return of(price, price.amount().multiply(percent.value()).divide(HUNDRED, SCALE, RoundingMode.HALF_UP));
    }

    public static UnitPrice plus(UnitPrice one, UnitPrice other) {
        return of(one, one.amount().add(other.amount()));
    }

    public static UnitPrice minus(UnitPrice one, UnitPrice other) {
        return of(one, one.amount().subtract(other.amount()));
    }

    private static UnitPrice of(UnitPrice like, BigDecimal amount) {
        BigDecimal plain = amount.stripTrailingZeros();
        int decimals = Math.max(plain.scale(), like.currency().getDecimalPlaces());
        return new UnitPrice(like.currency(), plain.setScale(decimals, RoundingMode.UNNECESSARY), like.base());
    }
}
