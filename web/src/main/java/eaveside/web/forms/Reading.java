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
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Makes a record of what was sent, whoever sent it, and collects everything that is wrong instead of ending at the first
 * error. The record itself decides last: what its constructor refuses is put at the fields that the refusal names.
 */
abstract class Reading {
    /** More than any document here has, and few enough to be read, shown again and stored at once. */
    static final int MOST_ROWS = 500;

    /** More errors than anybody mends before sending once more. */
    private static final int MOST_TOLD = 1_000;

    /** What is wrong with which field. The first error of a field stays. */
    private final Map<String, Refusal.Problem> problems = new LinkedHashMap<>();

    /** The same as refusals, each with its path. */
    private final List<Refusal> refusals = new ArrayList<>();

    /** Those that are told and those that are not. */
    private int wrong;

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
            wrong++;
            if (refusals.size() >= MOST_TOLD) {
                continue;
            }
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
        List<String> fields = part.fields().isEmpty() ? List.of("") : part.fields();
        return new WebRefusal.Within(
                part.type(),
                part.code(),
                fields.stream()
                        .map(field -> field.startsWith(prefix) ? field : prefix + field)
                        .toList(),
                part.problems().getFirst().pattern());
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

    /** The values of a field that may come several times, none of them read yet. */
    abstract List<Supplier<Object>> several(String path, Shape.Field field);

    /** The paths of the rows that were sent. */
    abstract List<String> rows(String path, Shape.Field field);

    /** The path of a part's fields; null where the part was not sent at all. */
    abstract @Nullable String part(String path, Shape.Field field);

    /** The values by the constants that something was sent for, none of them read yet. */
    abstract Map<Enum<?>, Supplier<Object>> byConstant(String path, Shape.Field field);

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
        int before = wrong;
        Map<String, @Nullable Object> values = new LinkedHashMap<>();
        for (Shape.Field field : shape.fields()) {
            values.put(
                    field.name(),
                    given.containsKey(field.name())
                            ? given.get(field.name())
                            : value(prefix + field.name(), prefix, field));
        }
        return wrong > before ? null : noted(prefix, () -> made(shape, values));
    }

    /** The record of its values. */
    <T> T made(Shape<T> shape, Map<String, @Nullable Object> values) {
        return Records.make(shape.type(), values);
    }

    private @Nullable Object value(String path, String prefix, Shape.Field field) {
        return switch (field.type()) {
            case SINGLE -> {
                Optional<Object> value = noted(prefix, () -> Optional.ofNullable(single(path, field)));
                yield value == null ? null : value.isPresent() ? value.get() : absent(path, field);
            }
            case PART -> {
                String inside = part(path, field);
                yield inside == null ? absent(path, field) : read(field.shape(), inside, Map.of());
            }
            case SEVERAL -> collected(field, several(path, field).stream().map(value -> noted("", value)));
            case ROWS -> collected(field, rows(path, field).stream().map(row -> read(field.shape(), row, Map.of())));
            case BY_CONSTANT -> byConstant(field, byConstant(path, field));
        };
    }

    private @Nullable Object absent(String path, Shape.Field field) {
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

    private static Collection<?> collected(Shape.Field field, Stream<?> values) {
        List<?> right = values.filter(Objects::nonNull).toList();
        return Set.class.isAssignableFrom(field.container()) ? new LinkedHashSet<>(right) : right;
    }

    @SuppressWarnings({"unchecked", "rawtypes"})
    private Map<?, ?> byConstant(Shape.Field field, Map<Enum<?>, Supplier<Object>> sent) {
        Map map = new EnumMap(field.keys().getFirst().getDeclaringClass());
        sent.forEach((key, said) -> {
            Object value = noted("", said);
            if (value != null) {
                map.put(key, value);
            }
        });
        return map;
    }
}
