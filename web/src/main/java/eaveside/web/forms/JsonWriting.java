package eaveside.web.forms;

import eaveside.kernel.Records;
import jakarta.json.Json;
import jakarta.json.JsonArrayBuilder;
import jakarta.json.JsonObjectBuilder;
import jakarta.json.JsonValue;
import java.math.BigDecimal;
import java.util.Collection;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Writes records as JSON: single values in the one shape that each has, what is absent left out. */
public final class JsonWriting {
    private JsonWriting() {}

    /** The value in JSON; {@link JsonValue#NULL} for null. */
    public static JsonValue of(@Nullable Object value) {
        return of(value, false);
    }

    private static JsonValue of(@Nullable Object value, boolean plainNumbers) {
        return switch (value) {
            case null -> JsonValue.NULL;
            case JsonValue json -> json;
            case Long number -> Json.createValue(number);
            case BigDecimal number ->
                plainNumbers ? Json.createValue(number) : Json.createValue(number.toPlainString());
            case Collection<?> list -> {
                JsonArrayBuilder array = Json.createArrayBuilder();
                // A set has no order of its own, and a script compares texts.
                (list instanceof Set<?> ? list.stream().sorted() : list.stream())
                        .forEach(one -> array.add(of(one, plainNumbers)));
                yield array.build();
            }
            case Map<?, ?> map -> {
                JsonObjectBuilder object = Json.createObjectBuilder();
                map.forEach((key, one) -> {
                    if (one != null) {
                        object.add(
                                key instanceof Enum<?> constant ? constant.name() : String.valueOf(key),
                                of(one, plainNumbers));
                    }
                });
                yield object.build();
            }
            default -> {
                Class<?> type = value instanceof Enum<?> constant ? constant.getDeclaringClass() : value.getClass();
                Optional<Scalar<?>> scalar = Scalar.of(type);
                if (scalar.isPresent()) {
                    yield scalar.get().json(value);
                }
                if (value instanceof Record record) {
                    yield object(record);
                }
                throw new IllegalArgumentException("no JSON for " + type);
            }
        };
    }

    /** Bodies that the web layer still describes by itself say decimals as plain numbers. */
    static boolean plainNumbers(Class<?> record) {
        return record.getName().startsWith("eaveside.web.");
    }

    private static JsonValue object(Record record) {
        boolean plainNumbers = plainNumbers(record.getClass());
        JsonObjectBuilder object = Json.createObjectBuilder();
        Records.values(record).forEach((name, value) -> {
            if (value != null) {
                object.add(name, of(value, plainNumbers));
            }
        });
        return object.build();
    }
}
