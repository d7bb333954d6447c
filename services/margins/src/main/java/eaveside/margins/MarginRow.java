package eaveside.margins;

import eaveside.kernel.Exact;
import eaveside.kernel.Percent;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;

/**
 * What a service line, or all of them, earned.
 *
 * @param  revenue      invoiced, net of tax and of credit memos
 * @param  overhead     the share that visits were charged with
 * @param  margin       revenue less the four types of cost
 * @param  noCharge     value of no-charge work; not part of the margin
 * @param  fromFindings revenue of quotes that came from findings; part of the revenue
 */
public record MarginRow(
        Figure revenue,
        Figure labor,
        Figure consumables,
        Figure travel,
        Figure overhead,
        Figure margin,
        Figure noCharge,
        Figure fromFindings) {
    private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);

    /** From here on a rate says nothing but that there is next to no revenue. */
    private static final BigDecimal MOST = BigDecimal.valueOf(1_000_000);

    /**
     * Margin ÷ revenue in per cent, rounded HALF_UP to one decimal; empty without revenue, and where that is next to nothing
     * beside the margin.
     */
    public Optional<Percent> rate() {
        if (revenue.amount().isZero()) {
            return Optional.empty();
        }
        BigDecimal rate = Exact.ratio(
                        margin.amount().amount(), HUNDRED, revenue.amount().amount())
                .setScale(1, RoundingMode.HALF_UP);
        return rate.abs().compareTo(MOST) < 0 ? Optional.of(Percent.of(rate)) : Optional.empty();
    }
}
