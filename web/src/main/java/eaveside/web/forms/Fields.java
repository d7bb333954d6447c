package eaveside.web.forms;

import eaveside.kernel.Ids;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.Refusal;
import eaveside.kernel.Unit;
import eaveside.web.Notation;
import eaveside.web.Texts;
import eaveside.web.security.WebRefusal;
import jakarta.ws.rs.core.MultivaluedHashMap;
import jakarta.ws.rs.core.MultivaluedMap;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.UUID;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.joda.money.CurrencyUnit;
import org.jspecify.annotations.Nullable;

/**
 * What somebody typed into a form, and what is wrong with it. Parsing never throws: it notes the error under the
 * field's name and goes on, so that all errors are shown together; {@link #run} then tells whether to go ahead.
 */
public final class Fields {
    private final MultivaluedMap<String, String> typed;
    private final @Nullable Notation notation;
    private final Map<String, Refusal.Problem> errors = new LinkedHashMap<>();
    private int status = 422;
    private @Nullable Notation spoken;
    private @Nullable Stored stored;
    private final Labels labels = new Labels();

    /** The numbers of the rows of each group; found once, since a form asks for the rows of each of its rows. */
    private @Nullable Map<String, SortedSet<Integer>> rows;

    /** More than any form has: what is wrong with each would be noted, and each shown again. */
    private static final int MOST = 10_000;

    /** A number in a name, with what is before it. */
    private static final Pattern ROW = Pattern.compile("-(\\d{1,6})(?=-|$)");

    private Fields(MultivaluedMap<String, String> typed, @Nullable Notation notation) {
        if (typed.size() > MOST) {
            throw new WebRefusal.TooManyFields(MOST);
        }
        this.typed = typed;
        this.notation = notation;
    }

    /** What another has saved meanwhile: its version, and its values under the names of the form's fields. */
    public record Stored(int version, Map<String, String> values) {}

    /** What was sent, to be read as the company writes. */
    public static Fields of(MultivaluedMap<String, String> typed, Notation notation) {
        Fields sent = new Fields(typed, notation);
        if (sent.rows().values().stream().anyMatch(group -> group.size() > Reading.MOST_ROWS)) {
            throw new WebRefusal.TooManyRows(Reading.MOST_ROWS);
        }
        return sent;
    }

    /** An empty form, or one filled with what is stored. Numbers in it are written plainly, {@code 12.50}. */
    public static Fields showing(Map<String, String> values) {
        return showing(values, null);
    }

    /** The same for fields that may come several times. */
    public static Fields shown(MultivaluedMap<String, String> typed) {
        return new Fields(typed, null);
    }

    static Fields showing(Map<String, String> values, @Nullable Notation notation) {
        MultivaluedMap<String, String> typed = new MultivaluedHashMap<>();
        values.forEach(typed::putSingle);
        return new Fields(typed, notation);
    }

    /** Says how errors are written where that is another than what the browser sends, as that of number fields. */
    public Fields spokenIn(Notation company) {
        spoken = company;
        return this;
    }

    private Notation spoken() {
        Notation company = spoken;
        return company == null ? notation() : company;
    }

    /** How what stands in the fields is written: as the company writes, or plainly where the program filled them in. */
    public Notation notation() {
        return notation == null ? Notation.PLAIN : notation;
    }

    /** Names the bundle of texts that says what its fields are called, {@link Labels#of}. */
    public Fields labeled(String bundle, String thing) {
        labels.of(bundle, thing);
        return this;
    }

    /** Says that a field's label stands under another key than its name. */
    void keyed(String name, String key) {
        labels.keyed(name, key);
    }

    /** Says what people know a field by that no text is for, such as one of a field for each location. */
    public Fields called(String name, String label) {
        labels.called(name, label);
        return this;
    }

    /** The text of the first of its bundles that has one for the key; empty where none has. */
    String described(String key) {
        return labels.text(key);
    }

    /** What people know a field by, {@link Labels#label}. */
    public String label(String name) {
        return labels.label(name);
    }

    public static Fields empty() {
        return showing(Map.of());
    }

    /** The same fields without some; errors are not taken along. */
    public Fields without(Set<String> names) {
        MultivaluedMap<String, String> kept = new MultivaluedHashMap<>(typed);
        names.forEach(kept::remove);
        return new Fields(kept, notation);
    }

    /** The same form with its errors, where fields that were not sent at all show other values. */
    public Fields completedBy(Map<String, String> unsent) {
        MultivaluedMap<String, String> all = new MultivaluedHashMap<>();
        unsent.forEach(all::putSingle);
        all.putAll(typed);
        Fields completed = new Fields(all, notation).with(this);
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

    /** The names of all fields that were sent or are shown. */
    Set<String> names() {
        return typed.keySet();
    }

    public boolean ticked(String name) {
        return !typed(name).isEmpty();
    }

    /** What is wrong, by field, each in a sentence that names its field; without a field under the empty name. */
    public Map<String, String> errors() {
        return errors(Map.of());
    }

    /** As {@link #errors()}, with the labels that the page shows where they are not those of the bundle. */
    public Map<String, String> errors(Map<String, String> labels) {
        Map<String, String> sentences = new LinkedHashMap<>();
        errors.forEach((name, problem) -> {
            String label = labels.containsKey(name) ? labels.get(name) : label(name);
            boolean names = name.isEmpty() || problem.pattern().contains(Refusal.FIELD);
            String said = spoken().sentence(problem.text(label));
            sentences.put(name, names ? said : label + ": " + said);
        });
        return sentences;
    }

    /** The names of the fields with which something is wrong. */
    public Set<String> wrong() {
        return Collections.unmodifiableSet(errors.keySet());
    }

    /** What is wrong with the field, or null. */
    public @Nullable String error(String name) {
        return errors.containsKey(name) ? error(name, label(name)) : null;
    }

    /** What is wrong with the field, under the label that the page shows it by; or null. */
    public @Nullable String error(String name, String label) {
        Refusal.Problem problem = errors.get(name);
        return problem == null ? null : spoken().sentence(problem.text(label));
    }

    public boolean hasErrors() {
        return !errors.isEmpty();
    }

    /** The same errors on empty fields, for what is never sent back, such as passwords. */
    public Fields cleared() {
        return new Fields(new MultivaluedHashMap<>(), notation).with(this);
    }

    private Fields with(Fields other) {
        errors.putAll(other.errors);
        status = other.status;
        spoken = other.spoken;
        labels.takeOver(other.labels);
        return this;
    }

    /** The HTTP status to show the form again with. */
    public int status() {
        return hasErrors() ? status : 200;
    }

    public void wrong(String name, String key, Object... arguments) {
        noted(new Refusal.Problem(name, Texts.of(Locale.ENGLISH, key, arguments)));
    }

    /** Says every error in other words. */
    public void reword(UnaryOperator<String> words) {
        errors.replaceAll((name, problem) -> new Refusal.Problem(name, words.apply(problem.pattern())));
    }

    /** Shows at one field, such as a section's, what was noted at another that the page does not have, in whose words it is said. */
    public void moveError(String from, String to) {
        Refusal.Problem problem = errors.remove(from);
        if (problem != null) {
            noted(new Refusal.Problem(to, problem.text(label(from))));
        }
    }

    /** Shows every error where the field of another name stands; that of a row without one, at its list. */
    void moveErrors(UnaryOperator<String> names) {
        Map<String, Refusal.Problem> all = new LinkedHashMap<>(errors);
        errors.clear();
        all.forEach((name, problem) -> noted(new Refusal.Problem(names.apply(name), problem.pattern())));
        List.copyOf(errors.keySet()).stream()
                .filter(name -> name.contains("["))
                .forEach(name -> moveError(name, name.substring(0, name.indexOf('['))));
    }

    /** Notes the errors of other fields, those that this form was read from, where this one asks for what they say. */
    public void refusedLike(Fields other, UnaryOperator<String> names) {
        other.errors.forEach((name, problem) -> noted(new Refusal.Problem(names.apply(name), problem.pattern())));
    }

    void noted(Refusal.Problem problem) {
        errors.putIfAbsent(problem.field(), problem);
    }

    private void missing(String name) {
        noted(new Refusal.Problem(name, "{field} is required"));
    }

    /** A use case's refusal, put at the fields that it names (or at the top of the form where it names none). */
    public void refused(Refusal refusal) {
        refused(refusal, UnaryOperator.identity());
    }

    /** The same, each problem at the field of this form that it is about. */
    public void refused(Refusal refusal, UnaryOperator<Refusal.Problem> here) {
        status = refusal.type().status();
        refusal.problems().stream().map(here).forEach(this::noted);
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
            if (refusal.type() == Refusal.Type.RULE || refusal.type() == Refusal.Type.CONFLICT) {
                refused(refusal);
                return false;
            }
            throw refusal;
        } catch (RuntimeException thrown) {
            BrokenConstraint broken = BrokenConstraint.in(thrown);
            if (broken == null) {
                throw thrown;
            }
            refused(broken);
            return false;
        }
    }

    /**
     * As {@link #run(Runnable)}, for an edit that another may have overtaken.
     *
     * @param  meanwhile what is stored where the refusal says so; nothing for any other refusal
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
            super(Type.CONFLICT, Texts.of(Locale.ENGLISH, "forms.overtaken"));
        }
    }

    /** The value that a constructor makes of what was typed; its refusal is noted at the field. */
    public <T> @Nullable T made(String name, Supplier<T> constructor) {
        try {
            return constructor.get();
        } catch (Refusal refusal) {
            refusal.problems().forEach(problem -> noted(new Refusal.Problem(name, problem.pattern())));
            return null;
        }
    }

    public String text(String name) {
        String value = typed(name).strip();
        if (value.isEmpty()) {
            missing(name);
        }
        return value;
    }

    public String optional(String name) {
        return typed(name).strip();
    }

    /** What was typed, as it is read; the other where that cannot be, which is noted. */
    private <T> T read(String name, T otherwise, Function<String, T> reading) {
        String value = typed(name);
        if (value.isBlank()) {
            missing(name);
            return otherwise;
        }
        T read = made(name, () -> reading.apply(value));
        return read == null ? otherwise : read;
    }

    public int integer(String name, int least, int most) {
        return read(name, least, value -> notation().integer(name, value, least, most));
    }

    public BigDecimal decimal(String name) {
        return read(name, BigDecimal.ZERO, value -> notation().decimal(name, value));
    }

    public Money money(String name, CurrencyUnit currency) {
        return read(
                name,
                Money.zero(currency),
                value -> Money.of(currency, notation().amount(name, value)).bounded(name));
    }

    public Quantity quantity(String name, Unit unit) {
        return read(
                name,
                Quantity.zero(unit),
                value -> Quantity.of(notation().decimal(name, value), unit).bounded(name));
    }

    public LocalDate date(String name, LocalDate otherwise) {
        return read(name, otherwise, value -> notation().date(name, value));
    }

    /** The id made for this form when it was first shown, so that sending it twice does the work once. */
    public UUID id(String name) {
        String value = typed(name);
        return value.isEmpty() ? Ids.next() : Ids.parse(value);
    }

    public <E extends Enum<E>> @Nullable E choice(String name, Class<E> type) {
        for (E constant : type.getEnumConstants()) {
            if (constant.name().equals(typed(name))) {
                return constant;
            }
        }
        wrong(name, "forms.choose");
        return null;
    }

    /** The numbers of the repeated rows of a form, from names such as {@code line-3-quantity}. */
    public List<Integer> rows(String prefix) {
        return List.copyOf(rows().getOrDefault(prefix, Collections.emptySortedSet()));
    }

    private Map<String, SortedSet<Integer>> rows() {
        if (rows == null) {
            rows = numbered(typed.keySet());
        }
        return rows;
    }

    private static Map<String, SortedSet<Integer>> numbered(Set<String> names) {
        Map<String, SortedSet<Integer>> rows = new HashMap<>();
        for (String name : names) {
            Matcher number = ROW.matcher(name);
            while (number.find()) {
                rows.computeIfAbsent(name.substring(0, number.start()), group -> new TreeSet<>())
                        .add(Integer.valueOf(number.group(1)));
            }
        }
        return rows;
    }

    /** The numbers of the rows that were filled in, or of so many empty ones. */
    public List<Integer> rows(String prefix, int empty) {
        List<Integer> rows = rows(prefix);
        return rows.isEmpty() ? IntStream.range(0, empty).boxed().toList() : rows;
    }

    /** Those numbers of rows, and the next for an empty row to fill. */
    public static List<Integer> andNext(List<Integer> rows) {
        List<Integer> more = new ArrayList<>(rows);
        more.add(rows.isEmpty() ? 0 : rows.getLast() + 1);
        return more;
    }
}
