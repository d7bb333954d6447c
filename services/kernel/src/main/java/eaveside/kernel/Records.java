package eaveside.kernel;

import java.lang.reflect.Constructor;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.RecordComponent;
import java.util.Arrays;
import java.util.LinkedHashMap;
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
