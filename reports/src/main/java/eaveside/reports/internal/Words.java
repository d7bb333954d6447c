package eaveside.reports.internal;

import eaveside.kernel.Money;
import eaveside.kernel.Percent;
import eaveside.kernel.Quantity;
import eaveside.kernel.Unit;
import eaveside.kernel.UnitPrice;
import java.math.BigDecimal;
import java.text.DecimalFormat;
import java.text.MessageFormat;
import java.text.NumberFormat;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.FormatStyle;
import java.util.Currency;
import java.util.Locale;
import java.util.ResourceBundle;
import org.joda.money.CurrencyUnit;

/** How a company writes: its words, numbers, money and dates. */
public final class Words {
    private final Locale locale;
    private final ResourceBundle texts;

    public Words(Locale locale) {
        this.locale = locale;
        this.texts = ResourceBundle.getBundle(
                "eaveside.reports.texts",
                locale,
                Words.class.getClassLoader(),
                ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
    }

    public Locale locale() {
        return locale;
    }

    ResourceBundle texts() {
        return texts;
    }

    public String text(String key, Object... arguments) {
        String text = texts.getString(key);
        return arguments.length == 0 ? text : new MessageFormat(text, locale).format(arguments);
    }

    /** With the currency's sign, such as $1,234.50. */
    public String withCurrency(Money money) {
        NumberFormat format = NumberFormat.getCurrencyInstance(locale);
        format.setCurrency(Currency.getInstance(money.currency().getCode()));
        format.setMinimumFractionDigits(money.currency().getDecimalPlaces());
        format.setMaximumFractionDigits(money.currency().getDecimalPlaces());
        return format.format(money.amount());
    }

    /** Without the sign, for columns that name the currency at their head. */
    public String amount(Money money) {
        return number(
                money.amount(),
                money.currency().getDecimalPlaces(),
                money.currency().getDecimalPlaces());
    }

    /** With its unit, such as 48 each. */
    public String quantity(Quantity quantity) {
        return number(quantity.value(), 0, Quantity.SCALE) + " " + unit(quantity.unit());
    }

    /** For one of its unit a bare amount, otherwise such as 15.24 per 12 each. */
    public String price(UnitPrice price) {
        String amount = number(price.amount(), price.currency().getDecimalPlaces(), 10);
        boolean one = price.base().value().compareTo(BigDecimal.ONE) == 0;
        return one ? amount : text("price.per", amount, quantity(price.base()));
    }

    public String percent(Percent percent) {
        return number(percent.value(), 0, 4) + "%";
    }

    public String date(LocalDate date) {
        return date.format(DateTimeFormatter.ofLocalizedDate(FormatStyle.MEDIUM).withLocale(locale));
    }

    /** The pattern of amounts, for cells that stay numbers. */
    String amountPattern(CurrencyUnit currency) {
        return "#,##0" + (currency.getDecimalPlaces() == 0 ? "" : "." + "0".repeat(currency.getDecimalPlaces()));
    }

    private String unit(Unit unit) {
        return text("unit." + unit.code());
    }

    private String number(BigDecimal value, int fewest, int most) {
        DecimalFormat format = (DecimalFormat) NumberFormat.getNumberInstance(locale);
        format.setMinimumFractionDigits(fewest);
        format.setMaximumFractionDigits(most);
        return format.format(value);
    }
}
