package eaveside.web;

import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.Unit;
import eaveside.web.security.WebRefusal;
import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.LocalDate;
import org.joda.money.CurrencyUnit;
import org.jspecify.annotations.Nullable;

/** What the bodies of the JSON interface share: how amounts and quantities look, and reading what may be missing. */
public final class Json {
    private Json() {}

    /** An amount with its ISO 4217 code; the number always has the currency's decimals, as text so that none is lost. */
    public record Amount(String amount, String currency) {
        public static Amount of(Money money) {
            return new Amount(money.amount().toPlainString(), money.currency().getCode());
        }
    }

    /** A quantity with its UN/ECE Recommendation 20 code. */
    public record Measured(String value, String unit) {
        public static Measured of(Quantity quantity) {
            return new Measured(
                    quantity.value().toPlainString(), quantity.unit().code());
        }
    }

    /** The part of a body that must be there; refuses as malformed where it is not. */
    public static <T> T required(String field, @Nullable T value) {
        if (value == null) {
            throw new WebRefusal.Unreadable("'" + field + "' is missing");
        }
        return value;
    }

    public static LocalDate date(String field, @Nullable String text) {
        try {
            return LocalDate.parse(required(field, text));
        } catch (DateTimeException e) {
            throw new WebRefusal.Unreadable("'" + field + "' is not a date such as 2026-03-31");
        }
    }

    public static BigDecimal number(String field, @Nullable String text) {
        String value = required(field, text);
        if (!value.matches("-?\\d{1,15}(\\.\\d{1,10})?")) {
            throw new WebRefusal.Unreadable("'" + field + "' is not a number such as 12.50");
        }
        return new BigDecimal(value);
    }

    public static Money money(String field, @Nullable String text, CurrencyUnit currency) {
        return Money.of(currency, number(field, text));
    }

    public static Quantity quantity(String field, @Nullable Measured measured) {
        Measured there = required(field, measured);
        return Quantity.of(
                number(field + ".value", there.value()), Unit.ofCode(required(field + ".unit", there.unit())));
    }
}
