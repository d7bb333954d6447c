package eaveside.web.forms;

import jakarta.json.bind.Jsonb;
import jakarta.json.bind.JsonbBuilder;
import jakarta.json.bind.JsonbConfig;
import jakarta.json.bind.serializer.JsonbSerializer;
import jakarta.json.bind.serializer.SerializationContext;
import jakarta.json.stream.JsonGenerator;
import jakarta.ws.rs.ext.ContextResolver;
import jakarta.ws.rs.ext.Provider;

/** Tells the platform's JSON binding how ids, money, quantities, dates and the records made of them are written. */
@Provider
public class JsonShapes implements ContextResolver<Jsonb> {
    private final Jsonb jsonb = JsonbBuilder.create(new JsonbConfig().withSerializers(new OfRecords()));

    @Override
    public Jsonb getContext(Class<?> type) {
        return jsonb;
    }

    /** Of every record, down to its single values. */
    public static final class OfRecords implements JsonbSerializer<Record> {
        @Override
        public void serialize(Record record, JsonGenerator generator, SerializationContext context) {
            generator.write(JsonWriting.of(record));
        }
    }
}
