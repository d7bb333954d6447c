package eaveside.web;

import eaveside.kernel.Id;
import eaveside.kernel.Ids;
import eaveside.kernel.Records;
import jakarta.ws.rs.ext.ParamConverter;
import jakarta.ws.rs.ext.ParamConverterProvider;
import jakarta.ws.rs.ext.Provider;
import java.lang.annotation.Annotation;
import java.lang.reflect.Type;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Reads ids from addresses, so that resources take them typed; what is no id is not found. */
@Provider
public class Parameters implements ParamConverterProvider {
    @Override
    public <T> @Nullable ParamConverter<T> getConverter(Class<T> type, Type generic, Annotation[] annotations) {
        return Id.class.isAssignableFrom(type) && type.isRecord() ? new IdConverter<>(type) : null;
    }

    private record IdConverter<T>(Class<T> type) implements ParamConverter<T> {
        @Override
        public @Nullable T fromString(@Nullable String text) {
            // Asked also for what an address does not say at all.
            return text == null || text.isEmpty() ? null : Records.make(type, Map.of("value", Ids.parse(text)));
        }

        @Override
        public String toString(T id) {
            return id.toString();
        }
    }
}
