package eaveside.web.forms;

import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Money;
import eaveside.kernel.Percent;
import eaveside.kernel.Quantity;
import eaveside.kernel.Refusal;
import eaveside.kernel.Unit;
import eaveside.kernel.UnitPrice;
import eaveside.web.Notation;
import eaveside.web.Texts;
import jakarta.ws.rs.core.MultivaluedMap;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * A form for a record: made from its {@link Shape}, filled in by somebody or with what is stored, read back into the
 * record, and shown again with its errors where that fails. A resource that declares one as its parameter gets what the
 * browser sent, with the values of the address and the signed-in user already given.
 */
public final class Form<T> {
    private static final Pattern STEP = Pattern.compile("(\\w+)(?:\\[(\\d{1,6})])?\\.(.+)");

    private final Shape<T> shape;
    private final Fields fields;
    private final Map<String, Object> given = new HashMap<>();
    private final Set<String> ignored = new HashSet<>();
    private final Map<String, Map<String, String>> choices = new HashMap<>();
    private final List<Difference> differences = new ArrayList<>();
    private Function<String, Unit> units = path -> {
        throw new KernelRefusal.Unfit(path, "{field} has no unit");
    };

    private UnaryOperator<Quantity> measured = quantity -> quantity;

    private Form(Shape<T> shape, Fields fields) {
        this.shape = shape;
        this.fields = fields;
    }

    /** A form that was sent. */
    public static <T> Form<T> sent(Class<T> type, Fields fields) {
        return new Form<>(Shape.of(type), fields);
    }

    /** A form that shows a record. */
    public static <T extends Record> Form<T> showing(T record, Notation notation) {
        return showing(record, notation, quantity -> quantity);
    }

    /** The same where its form counts in other units than the record, such as the company's. */
    @SuppressWarnings("unchecked")
    public static <T extends Record> Form<T> showing(T record, Notation notation, UnaryOperator<Quantity> measured) {
        return new Form<>(
                Shape.of((Class<T>) record.getClass()),
                Fields.of(FormReading.shown(record, notation, measured), notation));
    }

    /** How two versions are compared where the form counts in other units than the record. */
    public Form<T> measured(UnaryOperator<Quantity> units) {
        measured = units;
        return this;
    }

    /** A form that nothing is known of yet but the values named, by the names of their fields. */
    public static <T> Form<T> empty(Class<T> type, Notation notation, Map<String, String> values) {
        return new Form<>(Shape.of(type), Fields.showing(values, notation));
    }

    /** Names the bundle that its labels, hints and choices come from; see {@link Fields#labeled}. */
    public Form<T> labeled(String bundle) {
        String name = shape.type().getSimpleName();
        fields.labeled(bundle, name.substring(0, 1).toLowerCase(Locale.ROOT) + name.substring(1));
        for (Shape.Field field : shape.fields()) {
            field.keys().forEach(key -> fields.keyed(key.name(), field.row() + "." + key.name()));
        }
        return this;
    }

    /** A text about a field, such as its {@code hint} or {@code unit}; empty where there is none. */
    public String text(String name, String about) {
        return fields.described(name + "." + about);
    }

    /** Names the choices of a field that are known only now, such as the items in stock: from what is sent to what is shown. */
    public Form<T> choosing(String name, Map<String, String> options) {
        choices.put(name, options);
        return this;
    }

    /** Whether a field is one of choices, listed by its type or named with {@link #choosing}. */
    public boolean isChosen(String name) {
        return choices.containsKey(name) || field(name).isChoice();
    }

    /** The choices of a field, each with its text. */
    public Map<String, String> options(String name) {
        Map<String, String> named = choices.get(name);
        if (named != null) {
            return named;
        }
        Map<String, String> options = new LinkedHashMap<>();
        for (Enum<?> choice : field(name).choices()) {
            String text = text(name, choice.name());
            options.put(choice.name(), text.isEmpty() ? choice.name() : text);
        }
        return options;
    }

    /** The type of a field's input element. */
    public String inputType(String name) {
        Class<?> element = field(name).element();
        return element == LocalDate.class
                ? "date"
                : element == YearMonth.class
                        ? "month"
                        : name.equals("email") ? "email" : name.equals("phone") ? "tel" : "text";
    }

    /** Which keys a phone shows for a field; null for letters. */
    public @Nullable String inputMode(String name) {
        Class<?> element = field(name).element();
        if (element == int.class || element == Integer.class) {
            return "numeric";
        }
        boolean decimal = List.of(BigDecimal.class, Money.class, Quantity.class, Percent.class, UnitPrice.class)
                .contains(element);
        return decimal ? "decimal" : null;
    }

    /**
     * A field in which what was typed is not what another user has saved meanwhile.
     *
     * @param  stored what is stored, as people read it
     */
    public record Difference(String label, String stored, String typed) {}

    /** Where the two versions differ; none as long as nobody saved meanwhile. */
    public List<Difference> differences() {
        return List.copyOf(differences);
    }

    private void compare(Record yours, Record theirs) {
        MultivaluedMap<String, String> mine = FormReading.shown(yours, fields.notation(), measured);
        MultivaluedMap<String, String> stored = FormReading.shown(theirs, fields.notation(), measured);
        Set<String> names = new LinkedHashSet<>(mine.keySet());
        names.addAll(stored.keySet());
        names.removeAll(given.keySet());
        names.removeAll(List.of("id", "version"));
        names.removeIf(name -> name.endsWith(FormReading.UNIT)
                && names.contains(name.substring(0, name.length() - FormReading.UNIT.length())));
        for (String name : names) {
            List<String> one = stored.getOrDefault(name, List.of());
            List<String> other = mine.getOrDefault(name, List.of());
            if (!one.equals(other)) {
                differences.add(new Difference(fields.label(name), readable(name, one), readable(name, other)));
            }
        }
    }

    private String readable(String name, List<String> values) {
        String text = values.stream().map(value -> readable(name, value)).collect(Collectors.joining(", "));
        return text.isEmpty() ? "–" : text;
    }

    private String readable(String name, String value) {
        Shape.Field field = shape.find(name);
        if (value.isEmpty() || field == null) {
            return value;
        }
        return field.isFlag()
                ? Texts.of(Locale.ENGLISH, "common.yes")
                : isChosen(name) ? options(name).getOrDefault(value, value) : value;
    }

    /** A value that whoever fills in the form does not choose. */
    public Form<T> given(String component, Object value) {
        given.put(component, value);
        return this;
    }

    /** Fields that do not count, whatever was typed into them. */
    public Form<T> ignoring(Collection<String> names) {
        ignored.addAll(names);
        return this;
    }

    /** The unit of quantities whose form has no field for it. */
    public Form<T> in(Unit unit) {
        units = path -> unit;
        return this;
    }

    /** The units of quantities whose form has no field for them, by the path of the quantity's field. */
    public Form<T> in(Function<String, Unit> unitOf) {
        units = unitOf;
        return this;
    }

    /** What a field of a quantity or a unit price is counted in; null for any other field. */
    public @Nullable Unit unit(String name) {
        Class<?> element = field(name).element();
        if (element != Quantity.class && element != UnitPrice.class) {
            return null;
        }
        String chosen = fields.typed(name + FormReading.UNIT);
        return chosen.isEmpty() ? units.apply(name) : Unit.ofCode(chosen);
    }

    public Shape<T> shape() {
        return shape;
    }

    public Fields fields() {
        return fields;
    }

    /** Whether it is for something that does not exist yet. */
    public boolean isNew() {
        return fields.version().isEmpty() || fields.version().equals("0");
    }

    /** What is chosen in a field of choices; the other where nothing that it offers is. */
    public String chosen(String name, String otherwise) {
        String typed = fields.typed(name);
        return field(name).choices().stream().anyMatch(choice -> choice.name().equals(typed)) ? typed : otherwise;
    }

    /** The record that was sent; null where anything is wrong, which the fields then say. */
    public @Nullable T read() {
        FormReading reading = new FormReading(fields.without(ignored), units);
        T record = reading.read(shape, "", given);
        reading.problems()
                .values()
                .forEach(problem -> fields.noted(new Refusal.Problem(inForm(problem.field()), problem.pattern())));
        return fields.hasErrors() ? null : record;
    }

    /**
     * Reads the record and does with it what the form is for. A refusal that its user can mend is noted at its fields; where
     * another saved first, the form shows both versions. Tells whether it went through.
     */
    public boolean run(Consumer<T> useCase) {
        T record = read();
        if (record != null && fields.run(() -> useCase.accept(record), this::storedMeanwhile)) {
            return true;
        }
        fields.moveErrors(this::inForm);
        return false;
    }

    /** A use case's refusal of what the form says, at the form's own fields. */
    public void refused(Refusal refusal) {
        fields.refused(refusal);
        fields.moveErrors(this::inForm);
    }

    /**
     * The form's field for what a use case calls {@code scope.lines[1].quantity}: the fields of a part stand beside those of
     * what it is a part of, those of an element in the row that it was read from.
     */
    public String inForm(String path) {
        return inForm(shape, "", path);
    }

    private String inForm(Shape<?> within, String prefix, String path) {
        Matcher step = STEP.matcher(path);
        Shape.Field field = step.matches() ? within.find(step.group(1)) : null;
        if (field == null) {
            return prefix + path;
        }
        return switch (field.type()) {
            case PART -> inForm(field.shape(), prefix, step.group(3));
            case BY_CONSTANT -> prefix + step.group(3);
            case ROWS -> inRow(field, prefix, step);
            case SINGLE, SEVERAL -> prefix + path;
        };
    }

    private String inRow(Shape.Field list, String prefix, Matcher step) {
        int index = step.group(2) == null ? Integer.MAX_VALUE : Integer.parseInt(step.group(2));
        List<String> rows = new FormReading(fields.without(ignored), units).rows(prefix + list.name(), list);
        return index < rows.size() ? inForm(list.shape(), rows.get(index), step.group(3)) : prefix + step.group();
    }

    private Optional<Fields.Stored> storedMeanwhile(Refusal refusal) {
        if (refusal instanceof KernelRefusal.Stale stale && shape.type().isInstance(stale.theirs())) {
            compare((Record) stale.yours(), (Record) stale.theirs());
            return Optional.of(new Fields.Stored(stale.theirs().version(), Map.of()));
        }
        return Optional.empty();
    }

    /** The field's description, for the template that shows it. */
    public Shape.Field field(String name) {
        Shape.Field field = shape.find(name);
        if (field == null) {
            throw new IllegalArgumentException(shape.type() + " has no " + name);
        }
        return field;
    }
}
