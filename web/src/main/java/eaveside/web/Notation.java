package eaveside.web;

import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.Refusal;
import eaveside.kernel.Unit;
import eaveside.ledger.Company.Measures;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.text.NumberFormat;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.time.format.FormatStyle;
import java.util.Arrays;
import java.util.Currency;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.joda.money.CurrencyUnit;
import org.jspecify.annotations.Nullable;

/**
 * How the company writes numbers, money, dates and quantities, and reads them back: by its own locale, never by the machine's. What
 * this prints, it reads. A number that people elsewhere would take for another one is refused instead of guessed:
 * {@code 12,50} is no number of a company that writes {@code 12.50}, and surely not 1250.
 *
 * @param  measures in which quantities are told; as they are stored where null
 */
public record Notation(
        Locale locale, CurrencyUnit currency, @Nullable Measures measures) {
    /** Quantities stay in the units in which they are told. */
    public Notation(Locale locale, CurrencyUnit currency) {
        this(locale, currency, null);
    }

    /** The same with quantities in those measures; as they are stored where null. */
    public Notation in(@Nullable Measures other) {
        return new Notation(locale, currency, other);
    }

    /** Numbers as programs write them. */
    public static final Notation PLAIN = new Notation(Locale.US, CurrencyUnit.USD);

    /** Digits in front of the decimal sign and behind it that a field takes. */
    private static final int WHOLE_DIGITS = 12;

    /** With group signs and a decimal sign; what is longer is not even looked at. */
    private static final int LONGEST_NUMBER = 60;

    private static final int DECIMALS = 10;

    /** A date outside these years is a slip of the keyboard. */
    private static final int FIRST_YEAR = 1900;

    private static final int LAST_YEAR = 2200;

    private static final Pattern DATE = Pattern.compile("\\b\\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])\\b");

    private static final Pattern QUANTITY =
            Pattern.compile("(?<![\\d.,])(-?\\d{1,15}(?:\\.\\d{1,6})?)\u00a0([A-Z0-9]{2,3})\\b");

    /** A quantity in a sentence is what the books hold, to the last digit: rounded it might be refused once more. */
    private static final int SAID_DECIMALS = Quantity.SCALE;

    private static final int CONVERTED_DECIMALS = 3;

    private static final Pattern BLANKS = Pattern.compile("[\\s\\u00a0\\u202f]");

    /** Such as {@code $1,234.50}, with the decimals of the amount's own currency; a minus sign in front of a negative one. */
    public String money(Money amount) {
        int decimals = amount.currency().getDecimalPlaces();
        return currency(amount.amount(), amount.currency(), decimals, decimals);
    }

    /** An amount of money that may be finer than the currency's minor unit, such as {@code $0.0088}. */
    public String currency(BigDecimal amount, CurrencyUnit in, int fewestDecimals, int mostDecimals) {
        NumberFormat format = NumberFormat.getCurrencyInstance(locale);
        format.setCurrency(Currency.getInstance(in.getCode()));
        format.setMinimumFractionDigits(fewestDecimals);
        format.setMaximumFractionDigits(mostDecimals);
        format.setRoundingMode(RoundingMode.HALF_UP);
        String text = format.format(amount.abs());
        return amount.signum() < 0 ? "−" + text : text;
    }

    /** Such as {@code 1,234.5}, at most that many decimals; a minus sign in front of a negative one. */
    public String number(BigDecimal value, int mostDecimals) {
        DecimalFormat format = (DecimalFormat) NumberFormat.getNumberInstance(locale);
        format.setMaximumFractionDigits(mostDecimals);
        format.setRoundingMode(RoundingMode.HALF_UP);
        format.setNegativePrefix("−");
        return format.format(value);
    }

    /** Such as {@code Mar 31, 2026}. */
    public String date(LocalDate date) {
        return DateTimeFormatter.ofLocalizedDate(FormatStyle.MEDIUM)
                .localizedBy(locale)
                .format(date);
    }

    /** What a use case says, which writes dates and units as programs do, as people of the company read it. */
    public String sentence(String said) {
        String dated = DATE.matcher(said).replaceAll(found -> {
            try {
                return Matcher.quoteReplacement(date(LocalDate.parse(found.group())));
            } catch (DateTimeException noDay) {
                return found.group();
            }
        });
        return QUANTITY.matcher(dated)
                .replaceAll(found -> Matcher.quoteReplacement(Arrays.stream(Unit.values())
                        .filter(unit -> unit.code().equals(found.group(2)))
                        .findFirst()
                        .map(unit -> quantity(Quantity.of(new BigDecimal(found.group(1)), unit)))
                        .orElse(found.group())));
    }

    /** What the company measures in where the unit is of the other system. */
    public Unit unitOf(Unit unit) {
        return switch (measures) {
            case null -> unit;
            case US -> unit.customary();
            case METRIC -> unit.metric();
        };
    }

    private String quantity(Quantity told) {
        Unit unit = unitOf(told.unit());
        BigDecimal value = unit == told.unit() ? told.value() : converted(told, unit);
        String name = Texts.of(Locale.ENGLISH, "units." + unit.name());
        return number(value, SAID_DECIMALS) + (name.isEmpty() ? "" : "\u00a0" + name);
    }

    /** What was typed in the other unit is said as it was typed; what the books hold is never said to be more. */
    private static BigDecimal converted(Quantity told, Unit unit) {
        BigDecimal exact = told.in(unit).value();
        BigDecimal typed = exact.setScale(CONVERTED_DECIMALS, RoundingMode.HALF_UP);
        boolean same = Quantity.of(typed, unit).in(told.unit()).equals(told);
        return same ? typed : exact.setScale(CONVERTED_DECIMALS, RoundingMode.DOWN);
    }

    /** As a field shows it for editing: every decimal, no grouping. */
    public String plain(BigDecimal value) {
        String decimal = decimalSign();
        return value.toPlainString().replace(".", decimal);
    }

    /** An amount without its currency. */
    public String plain(Money amount) {
        return plain(amount.amount());
    }

    /** The amount of money that the text says, with the company's currency beside it or without; refused like any number. */
    public BigDecimal amount(String field, String text) {
        return decimal(field, text, withoutCurrency(bare(text)));
    }

    /** The percentage that the text says, with its sign or without; refused like any number. */
    public BigDecimal percentage(String field, String text) {
        String bare = bare(text);
        String number =
                bare.endsWith("%") ? bare.substring(0, bare.length() - 1).stripTrailing() : bare;
        return decimal(field, number, number);
    }

    /**
     * The number that the text says; blanks do not count. Refuses by the field's name what is no number, has more digits
     * than any here can have, or can be read in two ways; and a sign that says something else than the field: 10 % of a
     * price is not 10 of its currency.
     */
    public BigDecimal decimal(String field, String text) {
        return decimal(field, text, bare(text));
    }

    private BigDecimal decimal(String field, String text, String bare) {
        if (bare.length() > LONGEST_NUMBER) {
            throw tooManyDigits(field);
        }
        String group = Pattern.quote(BLANKS.matcher(groupSign()).replaceAll(" "));
        String decimal = decimalSign();
        boolean negative = bare.startsWith("-") || bare.startsWith("−");
        String digits = negative ? bare.substring(1) : bare;
        String quoted = Pattern.quote(decimal);
        if (!digits.matches("(\\d+|[1-9]\\d{0,2}(" + group + "\\d{3})+)(" + quoted + "\\d+)?|" + quoted + "\\d+")) {
            throw unreadable(field, text, digits);
        }
        BigDecimal number = new BigDecimal(
                digits.replaceAll(group, "").replace(decimal, ".").replaceFirst("^\\.", "0."));
        if (number.precision() - number.scale() > WHOLE_DIGITS || number.scale() > DECIMALS) {
            throw tooManyDigits(field);
        }
        return negative ? number.negate() : number;
    }

    private static Refusal tooManyDigits(String field) {
        return new KernelRefusal.Unfit(
                field,
                "{field} has too many digits: at most " + WHOLE_DIGITS + " before the decimal sign and " + DECIMALS
                        + " after it");
    }

    /** A whole number, whose bounds are for whoever takes it to tell. */
    public int integer(String field, String text) {
        BigDecimal number = decimal(field, text);
        if (number.abs().compareTo(BigDecimal.valueOf(Integer.MAX_VALUE)) > 0) {
            throw new KernelRefusal.TooLarge(field, number(number, 0));
        }
        return integer(field, text, Integer.MIN_VALUE, Integer.MAX_VALUE);
    }

    /** A whole number between the two, which are allowed. */
    public int integer(String field, String text, int lowest, int highest) {
        BigDecimal number = decimal(field, text);
        if (number.stripTrailingZeros().scale() > 0) {
            throw new KernelRefusal.Unfit(field, "{field} must be a whole number");
        }
        if (number.compareTo(BigDecimal.valueOf(lowest)) < 0 || number.compareTo(BigDecimal.valueOf(highest)) > 0) {
            throw new KernelRefusal.Unfit(
                    field,
                    "{field} must be between " + number(BigDecimal.valueOf(lowest), 0) + " and "
                            + number(BigDecimal.valueOf(highest), 0));
        }
        return number.intValueExact();
    }

    /** A date as the browser sends it ({@code 2026-03-31}), or as this company's pages print it. */
    public LocalDate date(String field, String text) {
        return possible(
                field,
                parsed(text)
                        .orElseThrow(
                                () -> new KernelRefusal.Unfit(field, "{field} must be a date, such as 2026-03-31")));
    }

    /** The date; refuses one of years in which nothing here happens, which no database need keep. */
    public static LocalDate possible(String field, LocalDate date) {
        if (date.getYear() < FIRST_YEAR || date.getYear() > LAST_YEAR) {
            throw new KernelRefusal.Unfit(
                    field, "{field} must be a date between the years " + FIRST_YEAR + " and " + LAST_YEAR);
        }
        return date;
    }

    private Optional<LocalDate> parsed(String text) {
        Stream<DateTimeFormatter> printed = Stream.of(FormatStyle.MEDIUM, FormatStyle.FULL, FormatStyle.LONG)
                .map(style -> DateTimeFormatter.ofLocalizedDate(style).localizedBy(locale));
        for (DateTimeFormatter format : Stream.concat(Stream.of(DateTimeFormatter.ISO_LOCAL_DATE), printed)
                .toList()) {
            try {
                return Optional.of(LocalDate.parse(text.strip(), format));
            } catch (DateTimeParseException e) {
                // the next one may fit
            }
        }
        return Optional.empty();
    }

    private static String bare(String text) {
        return BLANKS.matcher(text).replaceAll(" ").strip().replaceFirst("^([-−]) *", "$1");
    }

    private String withoutCurrency(String text) {
        String symbol = Currency.getInstance(currency.getCode()).getSymbol(locale);
        String bare = text;
        // Around the number only: "12$50" is none.
        for (String sign : List.of(currency.getCode(), symbol)) {
            bare = bare.replaceFirst("^([-−]? *)" + Pattern.quote(sign), "$1")
                    .replaceFirst(Pattern.quote(sign) + "$", "");
        }
        return bare(bare);
    }

    private Refusal unreadable(String field, String text, String digits) {
        boolean separated = digits.matches("\\d[\\d.,'’]*\\d");
        String typed = text.strip().length() > 40 ? text.strip().substring(0, 40) + "…" : text.strip();
        if (text.contains("%")) {
            return new KernelRefusal.Unfit(field, "{field} is no percentage. Write it without the %");
        }
        return new KernelRefusal.Unfit(
                field,
                separated
                        ? "{field} " + typed + " can be read in two ways. Write it like "
                                + number(new BigDecimal("1234.5"), 1)
                        : "{field} must be a number, such as " + number(new BigDecimal("12.5"), 1));
    }

    /** In front of the decimals. */
    public String decimalSign() {
        return String.valueOf(symbols().getDecimalSeparator());
    }

    /** Between the thousands. */
    public String groupSign() {
        return String.valueOf(symbols().getGroupingSeparator());
    }

    private DecimalFormatSymbols symbols() {
        return DecimalFormatSymbols.getInstance(locale);
    }
}
