package eaveside.web.forms;

import eaveside.kernel.Ids;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.Refusal;
import eaveside.kernel.Unit;
import eaveside.web.Texts;
import jakarta.ws.rs.core.MultivaluedHashMap;
import jakarta.ws.rs.core.MultivaluedMap;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import java.util.function.Supplier;
import org.joda.money.CurrencyUnit;
import org.jspecify.annotations.Nullable;

/**
 * What somebody typed into a form, and what is wrong with it. Parsing never throws: it notes the error under the
 * field's name and goes on, so that all errors are shown together; {@link #run} then tells whether to go ahead.
 */
public final class Fields {
    /** A date outside these years is a slip of the keyboard. */
    private static final int FIRST_YEAR = 1900;

    private static final int LAST_YEAR = 2200;

    private final MultivaluedMap<String, String> typed;
    private final Map<String, String> errors = new LinkedHashMap<>();
    private int status = 422;
    private @Nullable Stored stored;

    private Fields(MultivaluedMap<String, String> typed) {
        this.typed = typed;
    }

    /** What another has saved meanwhile: its version, and its values under the names of the form's fields. */
    public record Stored(int version, Map<String, String> values) {}

    public static Fields of(MultivaluedMap<String, String> typed) {
        return new Fields(typed);
    }

    /** An empty form, or one filled with what is stored. */
    public static Fields showing(Map<String, String> values) {
        MultivaluedMap<String, String> typed = new MultivaluedHashMap<>();
        values.forEach(typed::putSingle);
        return new Fields(typed);
    }

    public static Fields empty() {
        return showing(Map.of());
    }

    /** The same form with its errors, where fields that were not sent at all show other values. */
    public Fields completedBy(Map<String, String> unsent) {
        MultivaluedMap<String, String> all = new MultivaluedHashMap<>();
        unsent.forEach(all::putSingle);
        all.putAll(typed);
        Fields completed = new Fields(all);
        completed.errors.putAll(errors);
        completed.status = status;
        completed.stored = stored;
        return completed;
    }

    /** What was typed, for showing it again; empty where nothing was. */
    public String typed(String name) {
        String value = typed.getFirst(name);
        return value == null ? "" : value;
    }

    /** Every value of a field that may come several times. */
    public List<String> all(String name) {
        return typed.getOrDefault(name, List.of());
    }

    public boolean ticked(String name) {
        return !typed(name).isEmpty();
    }

    public Map<String, String> errors() {
        return errors;
    }

    public @Nullable String error(String name) {
        return errors.get(name);
    }

    public boolean hasErrors() {
        return !errors.isEmpty();
    }

    /** The HTTP status to show the form again with. */
    public int status() {
        return hasErrors() ? status : 200;
    }

    public void wrong(String name, String key, Object... arguments) {
        errors.putIfAbsent(name, Texts.of(Locale.ENGLISH, key, arguments));
    }

    /** A use case's refusal, put at the fields that it names (or at the top of the form where it names none). */
    public void refused(Refusal refusal) {
        status = refusal.kind().status();
        if (refusal.fields().isEmpty()) {
            errors.putIfAbsent("", refusal.text());
        }
        refusal.fields().forEach(field -> errors.putIfAbsent(field, refusal.text()));
    }

    /**
     * Runs the use case if nothing is wrong so far; a refusal that its user can mend is noted, any other goes on up.
     * Tells whether it went through.
     */
    public boolean run(Runnable useCase) {
        if (hasErrors()) {
            return false;
        }
        try {
            useCase.run();
            return true;
        } catch (Refusal refusal) {
            if (refusal.kind() == Refusal.Kind.RULE || refusal.kind() == Refusal.Kind.CONFLICT) {
                refused(refusal);
                return false;
            }
            throw refusal;
        }
    }

    /**
     * As {@link #run(Runnable)}, for an edit that another may have overtaken.
     *
     * @param meanwhile what is stored where the refusal says so; nothing for any other refusal
     */
    public boolean run(Runnable useCase, Function<Refusal, Optional<Stored>> meanwhile) {
        return run(() -> {
            try {
                useCase.run();
            } catch (Refusal refusal) {
                Stored theirs = meanwhile.apply(refusal).orElseThrow(() -> refusal);
                stored = theirs;
                throw new Overtaken();
            }
        });
    }

    /** What another saved while this form was being filled in; null as long as nobody did. */
    public @Nullable Stored stored() {
        return stored;
    }

    /** The version that the form's next sending starts from: once both have been shown, the other's. */
    public String version() {
        Stored theirs = stored;
        return theirs == null ? typed("version") : String.valueOf(theirs.version());
    }

    private static final class Overtaken extends Refusal {
        private static final long serialVersionUID = 1;

        private Overtaken() {
            super(Kind.CONFLICT, Texts.of(Locale.ENGLISH, "forms.overtaken"));
        }
    }

    /** The value that a constructor makes of what was typed; its refusal is noted at the field. */
    public <T> @Nullable T made(String name, Supplier<T> constructor) {
        try {
            return constructor.get();
        } catch (Refusal refusal) {
            errors.putIfAbsent(name, refusal.text());
            return null;
        }
    }

    public String text(String name) {
        String value = typed(name).strip();
        if (value.isEmpty()) {
            wrong(name, "forms.missing");
        }
        return value;
    }

    public String optional(String name) {
        return typed(name).strip();
    }

    public int integer(String name, int least, int most) {
        String value = typed(name).strip();
        try {
            int number = Integer.parseInt(value.replace(",", ""));
            if (number >= least && number <= most) {
                return number;
            }
            wrong(name, "forms.between", least, most);
        } catch (NumberFormatException e) {
            wrong(name, value.isEmpty() ? "forms.missing" : "forms.whole-number");
        }
        return least;
    }

    public BigDecimal decimal(String name) {
        String value = typed(name).strip().replace(",", "");
        if (value.isEmpty()) {
            wrong(name, "forms.missing");
        } else if (value.matches("-?\\d{1,12}(\\.\\d{1,10})?")) {
            return new BigDecimal(value);
        } else {
            wrong(name, "forms.number");
        }
        return BigDecimal.ZERO;
    }

    public Money money(String name, CurrencyUnit currency) {
        BigDecimal value = decimal(name);
        Money money = made(name, () -> Money.of(currency, value));
        return money == null ? Money.zero(currency) : money;
    }

    public Quantity quantity(String name, Unit unit) {
        BigDecimal value = decimal(name);
        Quantity quantity = made(name, () -> Quantity.of(value, unit));
        return quantity == null ? Quantity.zero(unit) : quantity;
    }

    public LocalDate date(String name, LocalDate otherwise) {
        String value = typed(name).strip();
        try {
            if (!value.isEmpty()) {
                LocalDate date = LocalDate.parse(value);
                if (date.getYear() >= FIRST_YEAR && date.getYear() <= LAST_YEAR) {
                    return date;
                }
                wrong(name, "forms.date");
                return otherwise;
            }
            wrong(name, "forms.missing");
        } catch (DateTimeParseException e) {
            wrong(name, "forms.date");
        }
        return otherwise;
    }

    /** A month such as {@code 2026-03}. */
    public YearMonth month(String name, YearMonth otherwise) {
        try {
            return YearMonth.parse(typed(name).strip());
        } catch (DateTimeParseException e) {
            wrong(name, typed(name).isBlank() ? "forms.missing" : "forms.date");
            return otherwise;
        }
    }

    /** The id made for this form when it was first shown, so that sending it twice does the work once. */
    public UUID id(String name) {
        String value = typed(name);
        return value.isEmpty() ? Ids.next() : Ids.parse(value);
    }

    public <E extends Enum<E>> @Nullable E choice(String name, Class<E> type) {
        String value = typed(name);
        for (E constant : type.getEnumConstants()) {
            if (constant.name().equals(value)) {
                return constant;
            }
        }
        wrong(name, "forms.choose");
        return null;
    }

    /** The numbers of the repeated rows of a form, from names such as {@code line-3-quantity}. */
    public List<Integer> rows(String prefix) {
        List<Integer> rows = new ArrayList<>();
        for (String name : typed.keySet()) {
            if (name.startsWith(prefix + "-")) {
                String number = name.substring(prefix.length() + 1).split("-", 2)[0];
                if (number.matches("\\d{1,4}") && !rows.contains(Integer.valueOf(number))) {
                    rows.add(Integer.valueOf(number));
                }
            }
        }
        rows.sort(null);
        return rows;
    }
}
