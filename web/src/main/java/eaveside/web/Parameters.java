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
import java.util.function.Function;
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
        String name = Stream.of(annotations)
                .map(annotation -> annotation instanceof QueryParam inQuery
                        ? inQuery.value()
                        : annotation instanceof PathParam inPath ? inPath.value() : null)
                .filter(Objects::nonNull)
                .findFirst()
                .orElse(null);
        if (Id.class.isAssignableFrom(type) && type.isRecord()) {
            boolean inQuery = Stream.of(annotations).anyMatch(QueryParam.class::isInstance);
            return new Converter<>(null, text -> Records.make(type, Map.of("value", id(inQuery ? name : null, text))));
        }
        if (name == null) {
            return null;
        }
        if (type.isEnum()) {
            return new Converter<>(null, text -> choice(name, type, text));
        }
        if (type == LocalDate.class) {
            return new Converter<>(null, text -> (T) date(name, text));
        }
        return type == boolean.class ? new Converter<>((T) Boolean.FALSE, text -> (T) flag(name, text)) : null;
    }

    private static Refusal unreadable(String name, String pattern) {
        return new WebRefusal.Within(Refusal.Type.MALFORMED, "web.unreadable", name, pattern);
    }

    /** @param  query the name in the query; null where the id is part of the path */
    private static UUID id(@Nullable String query, String text) {
        try {
            return Ids.parse(text);
        } catch (KernelRefusal.NotAnId e) {
            throw query == null ? e : unreadable(query, "{field} must be an id");
        }
    }

    private static <T> T choice(String name, Class<T> type, String text) {
        return Stream.of(type.getEnumConstants())
                .filter(constant -> constant.toString().equals(text))
                .findFirst()
                .orElseThrow(
                        () -> unreadable(name, "{field} must be one of " + Arrays.toString(type.getEnumConstants())));
    }

    private static Boolean flag(String name, String text) {
        if (!text.equals("true") && !text.equals("false")) {
            throw unreadable(name, "{field} must be true or false");
        }
        return Boolean.valueOf(text);
    }

    private static LocalDate date(String name, String text) {
        try {
            return Notation.possible(name, LocalDate.parse(text));
        } catch (DateTimeException e) {
            throw unreadable(name, "{field} must be a date such as 2026-03-31");
        } catch (KernelRefusal.Unfit e) {
            throw unreadable(name, e.problems().getFirst().pattern());
        }
    }

    /** Asked also for what an address does not say at all, which is then the value of its own. */
    private record Converter<T>(@Nullable T unsaid, Function<String, T> reading) implements ParamConverter<T> {
        @Override
        public @Nullable T fromString(@Nullable String text) {
            return text == null || text.isEmpty() ? unsaid : reading.apply(text);
        }

        @Override
        public String toString(T value) {
            return value.toString();
        }
    }
}
