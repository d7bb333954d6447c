package eaveside.kernel;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import org.joda.money.CurrencyUnit;

/**
 * An amount in one ISO 4217 currency, never finer than that currency's minor unit (USD 2 decimals, JPY 0, KWD 3).
 * Arithmetic between unlike currencies is refused. Where an operation must round, ties go away from zero
 * (HALF_UP), for negative amounts too.
 */
public final class Money implements Comparable<Money> {
    /** Far below where sums of amounts end, so that what holds one can always be added up. */
    static final BigDecimal MOST = BigDecimal.TEN.pow(12);

    private final org.joda.money.Money value;

    private Money(org.joda.money.Money value) {
        this.value = value;
    }

    /** An exact amount; refuses more decimals than the currency has. */
    public static Money of(CurrencyUnit currency, BigDecimal amount) {
        Exact.bounded(amount);
        try {
            return new Money(org.joda.money.Money.of(currency, amount, RoundingMode.UNNECESSARY));
        } catch (ArithmeticException e) {
            throw new KernelRefusal.TooManyDecimals(
                    amount.toPlainString(), currency.getCode(), currency.getDecimalPlaces());
        }
    }

    /** An exact amount from text such as {@code "12.50"}. */
    public static Money of(CurrencyUnit currency, String amount) {
        return of(currency, new BigDecimal(amount));
    }

    /** The amount rounded HALF_UP to the currency's minor unit. */
    public static Money rounded(CurrencyUnit currency, BigDecimal amount) {
        return new Money(org.joda.money.Money.of(currency, amount, RoundingMode.HALF_UP));
    }

    /** Nothing, in the given currency. */
    public static Money zero(CurrencyUnit currency) {
        return new Money(org.joda.money.Money.zero(currency));
    }

    /** The sum of the amounts; zero for none. */
    public static Money sum(CurrencyUnit currency, Iterable<Money> amounts) {
        Money sum = zero(currency);
        for (Money amount : amounts) {
            sum = sum.plus(amount);
        }
        return sum;
    }

    public BigDecimal amount() {
        return value.getAmount();
    }

    public CurrencyUnit currency() {
        return value.getCurrencyUnit();
    }

    public Money plus(Money other) {
        sameCurrency(other);
        return new Money(value.plus(other.value));
    }

    public Money minus(Money other) {
        sameCurrency(other);
        return new Money(value.minus(other.value));
    }

    public Money negated() {
        return new Money(value.negated());
    }

    public Money abs() {
        return new Money(value.abs());
    }

    /** The product, rounded HALF_UP to the minor unit. */
    public Money times(BigDecimal factor) {
        return new Money(value.multipliedBy(factor, RoundingMode.HALF_UP));
    }

    /** This amount × numerator ÷ denominator in one step, rounded HALF_UP once at the end. */
    public Money times(BigDecimal numerator, BigDecimal denominator) {
        return rounded(currency(), Exact.ratio(amount(), numerator, denominator));
    }

    public int signum() {
        return value.getAmount().signum();
    }

    public boolean isZero() {
        return value.isZero();
    }

    public boolean isNegative() {
        return value.isNegative();
    }

    public boolean isPositive() {
        return value.isPositive();
    }

    /**
     * Splits the amount in proportion to the weights so that the parts add up to it exactly: each part is rounded
     * towards zero, and the minor units left over go one each to the parts with the largest remainders (the earlier
     * part on a tie). Refuses negative weights; where all weights are zero the split is even.
     */
    public List<Money> split(List<BigDecimal> weights) {
        return Exact.largestRemainder(amount(), currency().getDecimalPlaces(), weights).stream()
                .map(part -> of(currency(), part))
                .toList();
    }

    /** This amount, which was entered in these fields; refuses one of another currency. */
    public Money in(CurrencyUnit currency, String... fields) {
        if (!currency().equals(currency)) {
            throw new KernelRefusal.UnlikeCurrencies(
                    currency.getCode(), currency().getCode(), fields);
        }
        return this;
    }

    /** This amount, which was entered in or follows from a field; refuses a trillion and more, also below zero. */
    public Money bounded(String field) {
        if (!isHeld()) {
            throw new KernelRefusal.TooLarge(field, toString());
        }
        return this;
    }

    /** Whether the books can hold it: less than a trillion, also below zero. */
    public boolean isHeld() {
        return amount().abs().compareTo(MOST) < 0;
    }

    /** This amount, which follows from these fields; refuses a trillion and more, also below zero. */
    public Money held(String... fields) {
        if (!isHeld()) {
            throw new KernelRefusal.TooLarge(this, fields);
        }
        return this;
    }

    private void sameCurrency(Money other) {
        if (!currency().equals(other.currency())) {
            throw new KernelRefusal.UnlikeCurrencies(
                    currency().getCode(), other.currency().getCode());
        }
    }

    @Override
    public int compareTo(Money other) {
        sameCurrency(other);
        return value.compareTo(other.value);
    }

    @Override
    public boolean equals(Object o) {
        return o instanceof Money other && value.equals(other.value);
    }

    @Override
    public int hashCode() {
        return value.hashCode();
    }

    /** Such as {@code USD 12.50}. */
    @Override
    public String toString() {
        return value.toString();
    }
}
