package eaveside.web.forms;

import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Records;
import eaveside.kernel.Refusal;
import eaveside.web.Notation;
import eaveside.web.security.WebRefusal;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * Makes a record of what was sent, whoever sent it, and collects everything that is wrong instead of ending at the first
 * error. The record itself decides last: what its constructor refuses is put at the fields that the refusal names.
 */
abstract class Reading {
    /** What is wrong with which field. The first error of a field stays. */
    private final Map<String, Refusal.Problem> problems = new LinkedHashMap<>();

    /** The same as refusals, each with its path. */
    private final List<Refusal> refusals = new ArrayList<>();

    Map<String, Refusal.Problem> problems() {
        return problems;
    }

    /** Everything that is wrong, as one refusal. */
    Refusal refusal() {
        return refusals.size() == 1 ? refusals.getFirst() : new KernelRefusal.Several(refusals);
    }

    /** Notes what a refusal says, at the fields that it names within the part of the input that begins with the prefix. */
    void refused(String prefix, Refusal refusal) {
        List<Refusal> parts = refusal instanceof KernelRefusal.Several several ? several.refusals() : List.of(refusal);
        for (Refusal part : parts) {
            refusals.add(prefix.isEmpty() ? part : within(prefix, part));
            for (Refusal.Problem problem : part.problems()) {
                String at = problem.field().isEmpty() || problem.field().startsWith(prefix)
                        ? problem.field()
                        : prefix + problem.field();
                problems.putIfAbsent(at, new Refusal.Problem(at, problem.pattern()));
            }
        }
    }

    private static Refusal within(String prefix, Refusal part) {
        Refusal.Problem problem = part.problems().getFirst();
        return new WebRefusal.Within(
                part.type(),
                part.code(),
                problem.field().startsWith(prefix) ? problem.field() : prefix + problem.field(),
                problem.pattern());
    }

    /** A field that is not there although it must be. */
    Refusal missing(String path) {
        return new KernelRefusal.Unfit(path, "{field} is required");
    }

    /** The value, or null where it is refused. */
    <V> @Nullable V noted(String prefix, Supplier<V> value) {
        try {
            return value.get();
        } catch (Refusal refusal) {
            refused(prefix, refusal);
            return null;
        }
    }

    /** One value as it was sent; null where nothing was. */
    abstract @Nullable Object single(String path, Shape.Field field);

    abstract List<Object> several(String path, Shape.Field field);

    /** The paths of the rows that were sent. */
    abstract List<String> rows(String path, Shape.Field field);

    /** The path of a part's fields; null where the part was not sent at all. */
    abstract @Nullable String part(String path, Shape.Field field);

    /** The path of a field within what begins with the prefix. */
    abstract String path(String prefix, String name);

    abstract Map<Enum<?>, Object> byConstant(String path, Shape.Field field);

    /** What sends of this type say for a field that is left out; null where the record's own default counts. */
    @Nullable
    Object unsent(Shape.Field field) {
        return null;
    }

    /**
     * The record, or null where anything is wrong.
     *
     * @param  given values that the sender does not choose, by component
     */
    <T> @Nullable T read(Shape<T> shape, String prefix, Map<String, ?> given) {
        int before = refusals.size();
        Map<String, @Nullable Object> values = new LinkedHashMap<>();
        for (Shape.Field field : shape.fields()) {
            values.put(
                    field.name(),
                    given.containsKey(field.name())
                            ? given.get(field.name())
                            : value(path(prefix, field.name()), prefix, field));
        }
        return refusals.size() > before ? null : noted(prefix, () -> Records.make(shape.type(), values));
    }

    private @Nullable Object value(String path, String prefix, Shape.Field field) {
        return switch (field.type()) {
            case SINGLE -> {
                Object value = noted(prefix, () -> orNothing(single(path, field)));
                yield value == null || value == NOTHING ? absent(path, field, value == NOTHING) : value;
            }
            case PART -> {
                String inside = part(path, field);
                if (inside == null) {
                    yield absent(path, field, true);
                }
                yield read(field.shape(), inside, Map.of());
            }
            case SEVERAL -> collected(field, several(path, field));
            case ROWS -> {
                List<Object> rows = new ArrayList<>();
                for (String row : rows(path, field)) {
                    Object made = read(field.shape(), row, Map.of());
                    if (made != null) {
                        rows.add(made);
                    }
                }
                yield collected(field, rows);
            }
            case BY_CONSTANT -> byConstant(field, byConstant(path, field));
        };
    }

    private static final Object NOTHING = new Object();

    private static Object orNothing(@Nullable Object value) {
        return value == null ? NOTHING : value;
    }

    private @Nullable Object absent(String path, Shape.Field field, boolean unsent) {
        if (!unsent) {
            return null; // it was sent, and is wrong
        }
        Object instead = unsent(field);
        if (instead != null) {
            return instead;
        }
        if (!field.optional()) {
            refused("", missing(path));
            return null;
        }
        String otherwise = field.otherwise();
        return otherwise == null ? null : defaultOf(field, otherwise);
    }

    private static @Nullable Object defaultOf(Shape.Field field, String otherwise) {
        Object known = Records.defaulted(field.element(), otherwise);
        if (known != null) {
            return known;
        }
        if (otherwise.isEmpty()) {
            return null; // the record's constructor says what takes its place
        }
        return field.scalar().typed().read(field.name(), otherwise, Notation.PLAIN);
    }

    private static Collection<Object> collected(Shape.Field field, List<Object> values) {
        return Set.class.isAssignableFrom(field.container()) ? new LinkedHashSet<>(values) : List.copyOf(values);
    }

    @SuppressWarnings({"unchecked", "rawtypes"})
    private static Map<?, ?> byConstant(Shape.Field field, Map<Enum<?>, Object> values) {
        Map map = new EnumMap(field.keys().getFirst().getDeclaringClass());
        map.putAll(values);
        return map;
    }
}
