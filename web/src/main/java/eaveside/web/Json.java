package eaveside.web;

import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.Unit;
import eaveside.web.security.WebRefusal;
import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import org.joda.money.CurrencyUnit;
import org.joda.money.IllegalCurrencyException;
import org.jspecify.annotations.Nullable;

/** What the bodies of the JSON interface share: how amounts and quantities look, and reading what may be missing. */
public final class Json {
    /** More digits than any amount, on either side of the point: nobody can make the arithmetic work for long. */
    private static final int DIGITS = 20;

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

    /** Empty where it is absent. */
    public static String optional(@Nullable String text) {
        return text == null ? "" : text;
    }

    /** The value of a closed list; refuses as malformed what is not on it. */
    public static <E extends Enum<E>> E choice(String field, Class<E> type, @Nullable String name) {
        String there = required(field, name);
        for (E constant : type.getEnumConstants()) {
            if (constant.name().equals(there)) {
                return constant;
            }
        }
        throw new WebRefusal.Unreadable("'" + field + "' is none of " + List.of(type.getEnumConstants()));
    }

    /** An ISO 4217 code. */
    public static CurrencyUnit currency(String field, @Nullable String code) {
        try {
            return CurrencyUnit.of(required(field, code));
        } catch (IllegalCurrencyException e) {
            throw new WebRefusal.Unreadable("'" + field + "' is not a currency code of ISO 4217");
        }
    }

    public static LocalDate date(String field, @Nullable String text) {
        try {
            return LocalDate.parse(required(field, text));
        } catch (DateTimeException e) {
            throw new WebRefusal.Unreadable("'" + field + "' is not a date such as 2026-03-31");
        }
    }

    /** The date; null where none is given, and the day of posting is meant. */
    public static @Nullable LocalDate dateIfGiven(String field, @Nullable String text) {
        return text == null ? null : date(field, text);
    }

    /** A number that came as one; refuses as malformed one of absurdly many digits. */
    public static BigDecimal decimal(String field, @Nullable BigDecimal number) {
        BigDecimal value = required(field, number);
        if (value.precision() > 2 * DIGITS || Math.abs((long) value.scale()) > DIGITS) {
            throw new WebRefusal.Unreadable("'" + field + "' has too many digits");
        }
        return value;
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
