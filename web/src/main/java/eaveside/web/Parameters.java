package eaveside.web;

import eaveside.kernel.Id;
import eaveside.kernel.Ids;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Records;
import eaveside.kernel.Refusal;
import eaveside.web.security.WebRefusal;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.ext.ParamConverter;
import jakarta.ws.rs.ext.ParamConverterProvider;
import jakarta.ws.rs.ext.Provider;
import java.lang.annotation.Annotation;
import java.lang.reflect.Type;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Reads ids from addresses, so that resources take them typed; what is no id in a path is not found. Ids, dates, choices
 * and flags in a query are read as well; what is none is malformed, and the refusal names the parameter.
 */
@Provider
public class Parameters implements ParamConverterProvider {
    @Override
    @SuppressWarnings("unchecked")
    public <T> @Nullable ParamConverter<T> getConverter(Class<T> type, Type generic, Annotation[] annotations) {
        String query = Stream.of(annotations)
                .map(annotation -> annotation instanceof QueryParam inQuery
                        ? inQuery.value()
                        : annotation instanceof PathParam inPath ? inPath.value() : null)
                .filter(Objects::nonNull)
                .findFirst()
                .orElse(null);
        if (Id.class.isAssignableFrom(type) && type.isRecord()) {
            boolean inQuery = Stream.of(annotations).anyMatch(QueryParam.class::isInstance);
            return new IdConverter<>(type, inQuery ? query : null);
        }
        if (query == null) {
            return null;
        }
        if (type == boolean.class) {
            return (ParamConverter<T>) new FlagConverter(query);
        }
        return type.isEnum()
                ? new ChoiceConverter<>(query, type)
                : type == LocalDate.class ? (ParamConverter<T>) new DateConverter(query) : null;
    }

    private static Refusal unreadable(String query, String pattern) {
        return new WebRefusal.Within(Refusal.Type.MALFORMED, "web.unreadable", query, pattern);
    }

    /** @param  query the name in the query; null where the id is part of the path */
    private record IdConverter<T>(Class<T> type, @Nullable String query) implements ParamConverter<T> {
        @Override
        public @Nullable T fromString(@Nullable String text) {
            // Asked also for what an address does not say at all.
            return text == null || text.isEmpty() ? null : Records.make(type, Map.of("value", parsed(text)));
        }

        private UUID parsed(String text) {
            try {
                return Ids.parse(text);
            } catch (KernelRefusal.NotAnId e) {
                throw query == null ? e : unreadable(query, "{field} must be an id");
            }
        }

        @Override
        public String toString(T id) {
            return id.toString();
        }
    }

    private record ChoiceConverter<T>(String query, Class<T> type) implements ParamConverter<T> {
        @Override
        public @Nullable T fromString(@Nullable String text) {
            if (text == null || text.isEmpty()) {
                return null;
            }
            return Stream.of(type.getEnumConstants())
                    .filter(constant -> constant.toString().equals(text))
                    .findFirst()
                    .orElseThrow(() ->
                            unreadable(query, "{field} must be one of " + Arrays.toString(type.getEnumConstants())));
        }

        @Override
        public String toString(T constant) {
            return constant.toString();
        }
    }

    private record FlagConverter(String query) implements ParamConverter<Boolean> {
        @Override
        public Boolean fromString(@Nullable String text) {
            if (text == null || text.isEmpty()) {
                return false;
            }
            if (!text.equals("true") && !text.equals("false")) {
                throw unreadable(query, "{field} must be true or false");
            }
            return Boolean.valueOf(text);
        }

        @Override
        public String toString(Boolean flag) {
            return flag.toString();
        }
    }

    private record DateConverter(String query) implements ParamConverter<LocalDate> {
        @Override
        public @Nullable LocalDate fromString(@Nullable String text) {
            try {
                return text == null || text.isEmpty() ? null : LocalDate.parse(text);
            } catch (DateTimeException e) {
                throw unreadable(query, "{field} must be a date such as 2026-03-31");
            }
        }

        @Override
        public String toString(LocalDate date) {
            return date.toString();
        }
    }
}
