package eaveside.web;

import eaveside.access.Role;
import eaveside.access.Sight;
import eaveside.access.User;
import eaveside.catalog.StandardMinutes;
import eaveside.kernel.Money;
import eaveside.kernel.Percent;
import eaveside.kernel.Quantity;
import eaveside.kernel.Unit;
import eaveside.kernel.UnitPrice;
import eaveside.kernel.UserId;
import eaveside.ledger.Company.Measures;
import eaveside.worklist.DueTotal;
import eaveside.worklist.DueType;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.format.FormatStyle;
import java.time.temporal.ChronoUnit;
import java.util.Collection;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.joda.money.CurrencyUnit;
import org.jspecify.annotations.Nullable;

/**
 * The surroundings of a page: who looks, where in the program, and how this company writes dates, money and quantities.
 *
 * @param  path the path asked for, without the query
 * @param  done   the key of the message to show once after a form went through, or null
 * @param  sights what the viewer may see of what not everybody may
 * @param  owes   whether something is to be done before anything else is open
 * @param  comfortable whether the viewer wants more room than compact pages have
 * @param  due    what is due of each type that has any; empty where no menu is shown
 */
public record View(
        @Nullable User user,
        String companyName,
        ZoneId zone,
        LocalDate today,
        Locale locale,
        boolean us,
        String path,
        @Nullable String done,
        Set<Sight> sights,
        boolean owes,
        boolean comfortable,
        Map<DueType, DueTotal> due) {
    public View {
        sights = Set.copyOf(sights);
        due = Map.copyOf(due);
    }

    /** The same with how much is due, for the menu of a page. */
    public View with(Map<DueType, DueTotal> totals) {
        return new View(user, companyName, zone, today, locale, us, path, done, sights, owes, comfortable, totals);
    }

    /** The text of a message bundle: the part in front of the first dot names the bundle. */
    public String t(String key, Object... arguments) {
        return Texts.of(locale, key, arguments);
    }

    /** A text that depends on a value of a closed list, such as {@code visits.status.COMPLETED}. */
    public String t(String prefix, Enum<?> value) {
        return Texts.of(locale, prefix + "." + value.name());
    }

    /** Several values of a closed list in words, in the order of that list. */
    public String all(String prefix, Collection<? extends Enum<?>> values) {
        return values.stream().sorted().map(value -> t(prefix, value)).collect(Collectors.joining(", "));
    }

    public boolean isMe(UserId id) {
        return user != null && user.id().equals(id);
    }

    public boolean is(Role... roles) {
        return user != null && Set.of(roles).contains(user.role());
    }

    /** Whether the viewer goes about by the menu at the side: office and owner, once nothing else is to be done first. */
    public boolean hasMenu() {
        return user != null && !owes && !is(Role.TECHNICIAN);
    }

    /** Whether the viewer may see what work costs; a cost is shown nowhere else. */
    public boolean seesCosts() {
        return sights.contains(Sight.COSTS);
    }

    /** Whether the viewer reads the books. */
    public boolean seesBooks() {
        return sights.contains(Sight.BOOKS);
    }

    /** A cost as far as the viewer may see it: null for who may not. Whatever leaves the program passes through here. */
    public <T> @Nullable T cost(@Nullable T cost) {
        return seesCosts() ? cost : null;
    }

    /** Whether a part of the program is the one shown, for the navigation. */
    public boolean in(String section) {
        return path.equals(section) || path.startsWith(section + "/");
    }

    /** Such as {@code $1,234.50}; negative with a minus sign in front. */
    public String money(Money amount) {
        return notation().money(amount);
    }

    /** What the company measures in. */
    public Measures measures() {
        return us ? Measures.US : Measures.METRIC;
    }

    /** How this company writes; amounts bring their own currency. */
    private Notation notation() {
        return new Notation(locale, CurrencyUnit.USD, measures());
    }

    /** Such as {@code $6.50} or {@code $0.0088}: as many decimals as the price has. */
    public String price(UnitPrice price) {
        String text = notation()
                .currency(price.amount(), price.currency(), price.currency().getDecimalPlaces(), 10);
        return price.base().value().compareTo(BigDecimal.ONE) == 0
                ? text
                : t("common.price.per", text, exactly(price.base()));
    }

    /**
     * A measure in what the company measures in, rounded for people, such as {@code 3,750 gr} or {@code 286 fl oz}. The
     * full figure is {@link #exactly}'s; {@code parts/quantity.jte} shows both.
     */
    public String quantity(Quantity quantity) {
        return exactly(quantity.in(unitOf(quantity.unit())).forPeople());
    }

    /**
     * A quantity as it is stored: where a price goes by its unit, or where a field beside it is typed in its unit. A
     * plain number with its unit's short name; pieces have none.
     */
    public String exactly(Quantity quantity) {
        String name = unit(quantity.unit());
        String value = number(quantity.value());
        return name.isEmpty() ? value : value + "\u00a0" + name;
    }

    /** What the company measures in where the unit is of the other system. */
    public Unit unitOf(Unit unit) {
        return notation().unitOf(unit);
    }

    public String unit(Unit unit) {
        return t("units." + unit.name());
    }

    public String percent(Percent percent) {
        return number(percent.value()) + "%";
    }

    public String number(BigDecimal value) {
        return notation().number(value, 6);
    }

    /** Standard minutes as people read them, to a tenth. */
    public String minutes(StandardMinutes minutes) {
        return notation().number(minutes.value(), 1);
    }

    /** In front of the decimals of a number. */
    public String decimalSign() {
        return notation().decimalSign();
    }

    /** Between the thousands of a number. */
    public String groupSign() {
        return notation().groupSign();
    }

    public String date(LocalDate date) {
        return DateTimeFormatter.ofPattern("EEE, MMM d, yyyy", locale).format(date);
    }

    public String shortDate(LocalDate date) {
        return notation().date(date);
    }

    /** A refusal's words, with its dates and quantities as people read them. */
    public String sentence(String said) {
        return notation().sentence(said);
    }

    public String month(YearMonth month) {
        return DateTimeFormatter.ofPattern("MMMM yyyy", locale).format(month);
    }

    public String time(Instant instant) {
        return DateTimeFormatter.ofLocalizedDateTime(FormatStyle.MEDIUM, FormatStyle.SHORT)
                .localizedBy(locale)
                .withZone(zone)
                .format(instant);
    }

    /** How long ago, in words. */
    public String age(LocalDate since) {
        long days = ChronoUnit.DAYS.between(since, today);
        return days == 0 ? t("common.today") : days < 0 ? t("common.in-days", -days) : t("common.days", days);
    }

    /** A value of any type that lists show, as this company writes it; empty for none. */
    public String written(@Nullable Object value) {
        return switch (value) {
            case null -> "";
            case Money amount -> money(amount);
            case Quantity quantity -> quantity(quantity);
            case UnitPrice price -> price(price);
            case Percent rate -> percent(rate);
            case BigDecimal number -> number(number);
            case Integer number -> number(BigDecimal.valueOf(number));
            case Long number -> number(BigDecimal.valueOf(number));
            case LocalDate day -> shortDate(day);
            case Instant instant -> time(instant);
            case Boolean flag -> t(flag ? "common.yes" : "common.no");
            default -> value.toString();
        };
    }

    /** Whether a value is a figure, which stands at the right. */
    public static boolean isFigure(@Nullable Object value) {
        return value instanceof Money
                || value instanceof Quantity
                || value instanceof UnitPrice
                || value instanceof Percent
                || value instanceof Number;
    }
}
