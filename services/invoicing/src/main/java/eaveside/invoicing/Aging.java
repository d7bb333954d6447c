package eaveside.invoicing;

import eaveside.kernel.Money;
import eaveside.kernel.Percent;
import java.util.List;
import org.joda.money.CurrencyUnit;

/**
 * Receivables by age.
 *
 * @param upTo30 due up to 30 days ago, or not yet
 * @param upTo90 due 31 to 90 days ago
 * @param over90 due longer ago
 */
public record Ageing(Money upTo30, Money upTo90, Money over90) {
    private static final int FIRST = 30;
    private static final int SECOND = 90;

    /** What has been due for so many days. */
    public record Owed(long days, Money amount) {}

    public static Ageing of(CurrencyUnit currency, List<Owed> owed) {
        return new Ageing(
                sum(currency, owed, Long.MIN_VALUE, FIRST),
                sum(currency, owed, FIRST, SECOND),
                sum(currency, owed, SECOND, Long.MAX_VALUE));
    }

    public Money total() {
        return upTo30.plus(upTo90).plus(over90);
    }

    /** How much of it will probably not be paid, at the given share of each class; each class rounded HALF_UP. */
    public Money doubtful(Percent ofUpTo30, Percent ofUpTo90, Percent ofOver90) {
        return ofUpTo30.of(upTo30).plus(ofUpTo90.of(upTo90)).plus(ofOver90.of(over90));
    }

    private static Money sum(CurrencyUnit currency, List<Owed> owed, long over, long upTo) {
        return Money.sum(
                currency,
                owed.stream()
                        .filter(o -> o.days() > over && o.days() <= upTo)
                        .map(Owed::amount)
                        .toList());
    }
}
