package eaveside.inventory;

import eaveside.kernel.Exact;
import eaveside.kernel.Quantity;
import jakarta.persistence.Embeddable;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import java.math.BigDecimal;

/**
 * How strong a mix is: one part of concentrate to {@code parts}, by volume. Solution counts as the sum of the volumes
 * poured together.
 *
 * @param  parts at most six decimals; one or more in solution, above zero added to water
 */
@Embeddable
public record MixRatio(
        BigDecimal parts, @Enumerated(EnumType.STRING) RatioMeaning meaning) {
    private static final int MOST_DECIMALS = 6;
    private static final BigDecimal MOST_PARTS = BigDecimal.valueOf(1_000_000);

    public MixRatio {
        boolean tooStrong =
                meaning == RatioMeaning.IN_SOLUTION ? parts.compareTo(BigDecimal.ONE) < 0 : parts.signum() <= 0;
        if (tooStrong
                || parts.compareTo(MOST_PARTS) > 0
                || parts.stripTrailingZeros().scale() > MOST_DECIMALS) {
            throw new InventoryRefusal.BadRatio(parts.toPlainString());
        }
        parts = parts.stripTrailingZeros();
    }

    public static MixRatio inSolution(String parts) {
        return new MixRatio(new BigDecimal(parts), RatioMeaning.IN_SOLUTION);
    }

    public static MixRatio addedToWater(String parts) {
        return new MixRatio(new BigDecimal(parts), RatioMeaning.ADDED_TO_WATER);
    }

    /** The concentrate in that much finished solution, in the solution's unit, rounded HALF_UP once to six decimals. */
    public Quantity concentrateIn(Quantity solution) {
        BigDecimal whole = meaning == RatioMeaning.IN_SOLUTION ? parts : parts.add(BigDecimal.ONE);
        return Quantity.rounded(solution.value().divide(whole, Exact.WORKING), solution.unit());
    }

    /** Such as {@code 1 : 32}. */
    @Override
    public String toString() {
        return "1 : " + parts.toPlainString() + (meaning == RatioMeaning.IN_SOLUTION ? " in solution" : " in water");
    }
}
