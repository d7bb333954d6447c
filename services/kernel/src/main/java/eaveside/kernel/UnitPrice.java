package eaveside.kernel;

import java.math.BigDecimal;
import org.joda.money.CurrencyUnit;

/**
 * A price per base quantity of a unit, which may be finer than the currency's minor unit (0.00880 a piece, or 15.24
 * a dozen). The price item net of EN 16931 (BT-146) with its base quantity (BT-149).
 */
public record UnitPrice(CurrencyUnit currency, BigDecimal amount, Quantity base) {
    public UnitPrice {
        Exact.bounded(amount);
        if (base.value().signum() <= 0) {
            throw new KernelRefusal.NotPositive("per");
        }
        if (amount.scale() > 10) {
            throw new KernelRefusal.TooManyDecimals(amount.toPlainString(), currency.getCode(), 10);
        }
    }

    /** This price, which was entered in these fields; refuses one of another currency. */
    public UnitPrice in(CurrencyUnit other, String... fields) {
        if (!currency.equals(other)) {
            throw new KernelRefusal.UnlikeCurrencies(other.getCode(), currency.getCode(), fields);
        }
        return this;
    }

    /** This price, which was entered in a field; refuses a trillion and more. */
    public UnitPrice bounded(String field) {
        if (amount.abs().compareTo(Money.MOST) >= 0) {
            throw new KernelRefusal.TooLarge(field, currency + " " + amount.toPlainString());
        }
        return this;
    }

    /** A price for one of the unit. */
    public static UnitPrice perOne(CurrencyUnit currency, BigDecimal amount, Unit unit) {
        return new UnitPrice(currency, amount, Quantity.of(BigDecimal.ONE, unit));
    }

    /** Price ÷ base quantity × quantity, rounded HALF_UP once; the quantity may come in any unit of the same type. */
    public Money times(Quantity quantity) {
        return Money.rounded(
                currency, Exact.ratio(amount, quantity.in(base.unit()).value(), base.value()));
    }
}
