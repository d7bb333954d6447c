package eaveside.invoicing;

import eaveside.kernel.Money;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Collection;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.TreeMap;
import org.joda.money.CurrencyUnit;

/**
 * Balances due by how long they are past due; each bucket has an amount, zero where there is none.
 *
 * @param  amounts one for every bucket, all in one currency
 */
public record Aging(Map<Bucket, Money> amounts) {
    /** How long a balance is past due. */
    public enum Bucket {
        /** Due today or later. */
        CURRENT(0),
        DAYS_1_30(30),
        DAYS_31_60(60),
        DAYS_61_90(90),
        OVER_90(Long.MAX_VALUE);

        private final long most;

        Bucket(long most) {
            this.most = most;
        }

        /** Where a balance belongs that was due on the day. */
        public static Bucket of(LocalDate due, LocalDate today) {
            long late = daysPastDue(due, today);
            for (Bucket bucket : values()) {
                if (late <= bucket.most) {
                    return bucket;
                }
            }
            return OVER_90;
        }
    }

    /** A balance and the day that it is due. */
    public record Due(LocalDate on, Money amount) {}

    public Aging {
        amounts = Collections.unmodifiableMap(new TreeMap<>(amounts)); // in the order of the buckets
        if (amounts.size() != Bucket.values().length) {
            throw new IllegalArgumentException("an aging names every bucket: " + amounts.keySet());
        }
    }

    public static Aging of(CurrencyUnit currency, LocalDate today, Collection<Due> balances) {
        Map<Bucket, Money> amounts = new EnumMap<>(Bucket.class);
        for (Bucket bucket : Bucket.values()) {
            amounts.put(bucket, Money.zero(currency));
        }
        balances.forEach(due -> amounts.merge(Bucket.of(due.on(), today), due.amount(), Money::plus));
        return new Aging(amounts);
    }

    /** Zero before it is due, and on the day itself. */
    public static long daysPastDue(LocalDate due, LocalDate today) {
        return Math.max(0, ChronoUnit.DAYS.between(due, today));
    }

    public Money of(Bucket bucket) {
        Money amount = amounts.get(bucket);
        if (amount == null) {
            throw new IllegalStateException("an aging without " + bucket);
        }
        return amount;
    }

    public Money total() {
        return Money.sum(of(Bucket.CURRENT).currency(), amounts.values());
    }

    /** All but what is current. */
    public Money pastDue() {
        return total().minus(of(Bucket.CURRENT));
    }
}
