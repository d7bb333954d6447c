package eaveside.web.forms;

import eaveside.kernel.Records;
import jakarta.json.JsonArrayBuilder;
import jakarta.json.JsonObjectBuilder;
import jakarta.json.JsonValue;
import jakarta.json.bind.Jsonb;
import jakarta.json.bind.JsonbBuilder;
import jakarta.json.bind.JsonbConfig;
import jakarta.json.bind.serializer.JsonbSerializer;
import jakarta.json.bind.serializer.SerializationContext;
import jakarta.json.spi.JsonProvider;
import jakarta.json.stream.JsonGenerator;
import jakarta.ws.rs.ext.ContextResolver;
import jakarta.ws.rs.ext.Provider;
import java.math.BigDecimal;
import java.util.Collection;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Writes records as JSON: single values in the one shape that each has, what is absent left out. The platform's JSON
 * binding is told to write every record so.
 */
@Provider
public class JsonWriting implements ContextResolver<Jsonb> {
    /** Asked for once: {@code Json}'s own methods look through every library for it each time, for each value. */
    static final JsonProvider JSON = JsonProvider.provider();

    private final Jsonb jsonb = JsonbBuilder.create(new JsonbConfig().withSerializers(new OfRecords()));

    @Override
    public Jsonb getContext(Class<?> type) {
        return jsonb;
    }

    /** Of every record, down to its single values. */
    public static final class OfRecords implements JsonbSerializer<Record> {
        @Override
        public void serialize(Record record, JsonGenerator generator, SerializationContext context) {
            generator.write(of(record));
        }
    }

    /** The value in JSON; {@link JsonValue#NULL} for null. */
    public static JsonValue of(@Nullable Object value) {
        return switch (value) {
            case null -> JsonValue.NULL;
            case JsonValue json -> json;
            case Long number -> JSON.createValue(number);
            case BigDecimal number -> JSON.createValue(number.toPlainString());
            case Collection<?> list -> {
                JsonArrayBuilder array = JSON.createArrayBuilder();
                // A set has no order of its own, and a script compares texts.
                (list instanceof Set<?> ? list.stream().sorted() : list.stream()).forEach(one -> array.add(of(one)));
                yield array.build();
            }
            case Map<?, ?> map -> object(map);
            default -> {
                Class<?> type = value instanceof Enum<?> constant ? constant.getDeclaringClass() : value.getClass();
                var scalar = Scalar.of(type);
                if (scalar.isPresent()) {
                    yield scalar.get().json(value);
                }
                if (value instanceof Record record) {
                    yield object(Records.values(record));
                }
                throw new IllegalArgumentException("no JSON for " + type);
            }
        };
    }

    private static JsonValue object(Map<?, ? extends @Nullable Object> members) {
        JsonObjectBuilder object = JSON.createObjectBuilder();
        members.forEach((key, value) -> {
            if (value != null) {
                String name = key instanceof Enum<?> constant ? constant.name() : key.toString();
                object.add(name, of(value));
            }
        });
        return object.build();
    }
}
