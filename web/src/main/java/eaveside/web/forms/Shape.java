package eaveside.web.forms;

import eaveside.kernel.Default;
import eaveside.kernel.Ids;
import eaveside.kernel.Records;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.jspecify.annotations.Nullable;

/**
 * What a record asks for, field by field: the one description that forms, the JSON interface, the comparison of two
 * versions and the description of the API are made from. Each field is named once, as a component of the record; what may
 * be left out says so there ({@code @Nullable}, or {@link Default} with what it is then).
 */
public final class Shape<T> {
    private static final Map<Class<?>, Shape<?>> KNOWN = new ConcurrentHashMap<>();

    private final Class<T> type;
    private final List<Field> fields;

    private Shape(Class<T> type) {
        this.type = type;
        this.fields = Arrays.stream(type.getRecordComponents()).map(Field::of).toList();
    }

    /** The shape of a record, worked out once. */
    @SuppressWarnings("unchecked")
    public static <T> Shape<T> of(Class<T> type) {
        if (!type.isRecord()) {
            throw new IllegalArgumentException(type + " is no record");
        }
        return (Shape<T>) KNOWN.computeIfAbsent(type, Shape::new);
    }

    public Class<T> type() {
        return type;
    }

    /** In the order in which the record declares them. */
    public List<Field> fields() {
        return fields;
    }

    /** The field of that name, also where it is a part of a field that forms show flat, such as an address. */
    public @Nullable Field find(String name) {
        for (Field field : fields) {
            if (field.name().equals(name)) {
                return field;
            }
            Field inside = field.type() == Type.PART ? field.shape().find(name) : null;
            if (inside != null) {
                return inside;
            }
        }
        return null;
    }

    /** What the form of a new one begins with: an id of its own, and checked boxes where its defaults say so. */
    public Map<String, String> fresh() {
        Map<String, String> values = new LinkedHashMap<>();
        for (Field field : fields) {
            if (field.name().equals("id")) {
                values.put("id", Ids.next().toString());
            } else if (field.isFlag() && "true".equals(field.otherwise())) {
                values.put(field.name(), "yes");
            }
        }
        return values;
    }

    /** The names of the fields of one value each that people fill in, those named left out. */
    public List<String> singles(String... without) {
        List<String> left = new ArrayList<>(List.of("id", "version", "by"));
        left.addAll(List.of(without));
        return fields.stream()
                .filter(field -> field.type() == Type.SINGLE)
                .map(Field::name)
                .filter(name -> !left.contains(name))
                .toList();
    }

    /** How a field holds its value. */
    enum Type {
        /** One value. */
        SINGLE,
        /** A record of its own; its fields stand in forms as if they were the outer record's. */
        PART,
        /** Several single values under one name. */
        SEVERAL,
        /** Several records: the rows of a form. */
        ROWS,
        /** Single values by the constants of an enum, each a field under the constant's name. */
        BY_CONSTANT
    }

    /**
     * One component.
     *
     * @param  element   the type of one value
     * @param  optional  whether it may be left out
     * @param  otherwise what it is then, as a text; null for null
     * @param  keys      of {@link Type#BY_CONSTANT}
     */
    public record Field(
            String name,
            Type type,
            Class<?> element,
            Class<?> container,
            boolean optional,
            @Nullable String otherwise,
            List<Enum<?>> keys) {

        static Field of(RecordComponent part) {
            Class<?> raw = part.getType();
            if (Map.class.isAssignableFrom(raw)) {
                return of(part, Type.BY_CONSTANT, argument(part, 1), constants(argument(part, 0)));
            }
            if (Collection.class.isAssignableFrom(raw)) {
                Class<?> element = argument(part, 0);
                return of(part, Scalar.of(element).isPresent() ? Type.SEVERAL : Type.ROWS, element, List.of());
            }
            if (Scalar.of(raw).isEmpty() && !raw.isRecord()) {
                throw new IllegalArgumentException("no field can hold " + part);
            }
            return of(part, Scalar.of(raw).isPresent() ? Type.SINGLE : Type.PART, raw, List.of());
        }

        private static Field of(RecordComponent part, Type type, Class<?> element, List<Enum<?>> keys) {
            Default given = part.getAnnotation(Default.class);
            String otherwise = given == null ? null : given.value();
            return new Field(part.getName(), type, element, part.getType(), Records.isOptional(part), otherwise, keys);
        }

        private static Class<?> argument(RecordComponent part, int index) {
            java.lang.reflect.Type argument =
                    ((ParameterizedType) part.getGenericType()).getActualTypeArguments()[index];
            return (Class<?>) (argument instanceof ParameterizedType inner ? inner.getRawType() : argument);
        }

        private static List<Enum<?>> constants(Class<?> type) {
            return List.of((Enum<?>[]) type.getEnumConstants());
        }

        /** Of a part or of rows. */
        Shape<?> shape() {
            return Shape.of(element);
        }

        /** Of a single value, of several, or of the values by constant. */
        Scalar<?> scalar() {
            return Scalar.of(element).orElseThrow(() -> new IllegalStateException(element + " is not one value"));
        }

        /** The prefix of this field's rows in a form: {@code line} for {@code lines}, {@code mix} for {@code mixes}. */
        String row() {
            return name.replaceFirst("(?<=x|sh)es$|s$", "");
        }

        public boolean isChoice() {
            return element.isEnum();
        }

        public boolean isFlag() {
            return element == boolean.class || element == Boolean.class;
        }

        /** The constants of an enum, in order. */
        public List<Enum<?>> choices() {
            return isChoice() ? constants(element) : List.of();
        }
    }
}
