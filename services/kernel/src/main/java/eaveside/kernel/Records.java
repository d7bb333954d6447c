package eaveside.kernel;

import java.lang.reflect.Constructor;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.RecordComponent;
import java.math.BigDecimal;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Reads and makes records by the names of their components, for what treats every record alike. */
public final class Records {
    private Records() {}

    /** The components' values by name, in the order in which the record declares them. */
    public static Map<String, @Nullable Object> values(Record from) {
        Map<String, @Nullable Object> values = new LinkedHashMap<>();
        for (RecordComponent part : from.getClass().getRecordComponents()) {
            values.put(part.getName(), value(part, from));
        }
        return values;
    }

    public static @Nullable Object value(RecordComponent part, Object from) {
        try {
            var accessor = part.getAccessor();
            accessor.trySetAccessible();
            return accessor.invoke(from);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException("a record's components can be read: " + part, e);
        }
    }

    /** A record of those values; a refusal of its constructor goes on up as itself. */
    public static <T> T make(Class<T> type, Map<String, ? extends @Nullable Object> values) {
        RecordComponent[] parts = type.getRecordComponents();
        Class<?>[] types = Arrays.stream(parts).map(RecordComponent::getType).toArray(Class<?>[]::new);
        @Nullable
        Object[] arguments =
                Arrays.stream(parts).map(part -> values.get(part.getName())).toArray();
        try {
            Constructor<T> constructor = type.getDeclaredConstructor(types);
            constructor.trySetAccessible();
            return constructor.newInstance(arguments);
        } catch (InvocationTargetException e) {
            if (e.getCause() instanceof RuntimeException refusal) {
                throw refusal;
            }
            throw new IllegalStateException(e);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException("a record has a constructor of its components: " + type, e);
        }
    }

    /** The same where components may be left out: they are then what their {@link Default} says, or null. */
    public static <T> T completed(Class<T> type, Map<String, ?> values) {
        Map<String, @Nullable Object> all = new LinkedHashMap<>();
        for (RecordComponent part : type.getRecordComponents()) {
            Default given = part.getAnnotation(Default.class);
            Object value = values.get(part.getName());
            all.put(part.getName(), value != null || given == null ? value : defaulted(part.getType(), given.value()));
        }
        return make(type, all);
    }

    /** Whether the component may be left out. */
    public static boolean isOptional(RecordComponent part) {
        return part.isAnnotationPresent(Default.class)
                || part.getAnnotatedType().isAnnotationPresent(Nullable.class);
    }

    /** What a {@link Default} says, for texts, flags, numbers, choices, lists and maps; null for any other type. */
    public static @Nullable Object defaulted(Class<?> type, String text) {
        if (type == String.class) {
            return text;
        }
        if (type == boolean.class || type == Boolean.class) {
            return Boolean.valueOf(text);
        }
        if (type == int.class || type == Integer.class) {
            return Integer.valueOf(text);
        }
        if (type == BigDecimal.class) {
            return new BigDecimal(text);
        }
        if (type == Percent.class) {
            return Percent.of(text);
        }
        if (type == List.class) {
            return List.of();
        }
        if (type == Map.class) {
            return Map.of();
        }
        return type.isEnum()
                ? Arrays.stream(type.getEnumConstants())
                        .filter(constant -> ((Enum<?>) constant).name().equals(text))
                        .findFirst()
                        .orElseThrow()
                : null;
    }

    /** The same record with one component's value changed. */
    @SuppressWarnings("unchecked")
    public static <T extends Record> T with(T record, String component, @Nullable Object value) {
        Map<String, @Nullable Object> values = values(record);
        if (!values.containsKey(component)) {
            throw new IllegalArgumentException(record.getClass() + " has no " + component);
        }
        values.put(component, value);
        return (T) make(record.getClass(), values);
    }
}
