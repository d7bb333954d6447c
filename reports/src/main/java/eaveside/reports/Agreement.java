package eaveside.reports;

import eaveside.kernel.Money;
import java.util.List;

/** Keeps papers from being printed whose figures contradict one another. */
final class Agreement {
    private Agreement() {}

    /** Fails, since a caller that breaks it has a fault and no user could mend it. */
    static void require(String figure, Money total, List<Money> parts) {
        Money sum = Money.sum(total.currency(), parts);
        if (!sum.equals(total)) {
            throw new IllegalArgumentException(
                    "the paper's " + figure + " do not agree: " + total + " stated, " + sum + " by its parts");
        }
    }
}
