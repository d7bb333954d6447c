package eaveside.pricing;

import eaveside.kernel.Exact;
import eaveside.kernel.Money;
import eaveside.kernel.Percent;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;

/**
 * A price against the cost that is expected under it, both net of tax.
 *
 * <p>Margin is profit as a share of the price, mark-up profit as a share of the cost; both in per cent, rounded HALF_UP
 * to two decimals. So a mark-up of 25 % is a margin of 20 %.
 */
public record Earnings(Money price, Money cost) {
    private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);
    private static final int DECIMALS = 2;

    public Money profit() {
        return price.minus(cost);
    }

    /** Profit ÷ price; empty where the price is zero. */
    public Optional<Percent> margin() {
        return share(price);
    }

    /** Profit ÷ cost; empty where the cost is zero. */
    public Optional<Percent> markUp() {
        return share(cost);
    }

    private Optional<Percent> share(Money of) {
        if (of.isZero()) {
            return Optional.empty();
        }
        BigDecimal percent = Exact.ratio(profit().amount(), HUNDRED, of.amount());
        return Optional.of(Percent.of(percent.setScale(DECIMALS, RoundingMode.HALF_UP)));
    }
}
