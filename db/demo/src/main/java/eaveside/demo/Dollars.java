package eaveside.demo;

import eaveside.kernel.Money;
import java.math.BigDecimal;
import org.joda.money.CurrencyUnit;

/** Money of the demo company. */
final class Dollars {
    static final CurrencyUnit USD = CurrencyUnit.USD;

    private Dollars() {}

    static Money of(String amount) {
        return Money.of(USD, amount);
    }

    static Money whole(long dollars) {
        return Money.of(USD, BigDecimal.valueOf(dollars));
    }

    static Money cents(long cents) {
        return Money.of(USD, BigDecimal.valueOf(cents, 2));
    }
}
