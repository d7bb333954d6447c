package eaveside.web.forms;

import eaveside.kernel.UserId;
import jakarta.json.JsonValue;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * JSON Schemas of records, made from what reads and writes them: bodies from {@link Shape}, as {@link JsonReading} reads
 * them, answers as {@link JsonWriting} writes them, single values from {@link Scalar}. A record that is both sent and
 * answered has two schemas, since what may be left out on the way in is always there on the way out.
 */
public final class Schemas {
    /** Where a description keeps its schemas. */
    private static final String AT = "#/components/schemas/";

    private final Map<String, Map<String, Object>> components = new TreeMap<>();
    private final Map<Class<?>, String> names;
    private final Set<Class<?>> answered;

    /** Of all records that are sent and answered; each has its name before the first schema refers to it. */
    public Schemas(Collection<? extends Type> sent, Collection<? extends Type> answered) {
        Set<Class<?>> all = new TreeSet<>(Comparator.comparing(Class::getName));
        this.answered = new TreeSet<>(Comparator.comparing(Class::getName));
        reach(sent.stream(), all);
        reach(answered.stream(), this.answered);
        all.addAll(this.answered);
        this.names = named(all);
    }

    /** By the names that references bear. */
    public Map<String, Map<String, Object>> components() {
        return components;
    }

    private static void reach(Type type, Set<Class<?>> records) {
        if (type instanceof ParameterizedType parameterized) {
            reach(Stream.of(parameterized.getActualTypeArguments()), records);
        } else if (type instanceof Class<?> known && known.isSealed() && !known.isEnum()) {
            reach(Stream.of(known.getPermittedSubclasses()), records);
        } else if (type instanceof Class<?> known
                && known.isRecord()
                && Scalar.of(known).isEmpty()
                && records.add(known)) {
            reach(Stream.of(known.getRecordComponents()).map(RecordComponent::getGenericType), records);
        }
    }

    private static void reach(Stream<? extends Type> types, Set<Class<?>> records) {
        types.forEach(type -> reach(type, records));
    }

    /** By the record's own name; where several have one name, by that of the class or module around it too. */
    private static Map<Class<?>, String> named(Set<Class<?>> records) {
        Map<String, List<Class<?>>> alike = records.stream()
                .collect(Collectors.groupingBy(Class::getSimpleName, TreeMap::new, Collectors.toList()));
        Map<Class<?>, String> names = new LinkedHashMap<>();
        alike.forEach((name, all) -> all.forEach(record -> {
            String own = all.size() == 1 ? name : around(record) + name;
            if (names.containsValue(own)) {
                throw new IllegalStateException("two records would be described as " + own);
            }
            names.put(record, own);
        }));
        return names;
    }

    private static String around(Class<?> record) {
        Class<?> outer = record.getEnclosingClass();
        if (outer != null) {
            return outer.getSimpleName();
        }
        return capital(record.getPackageName().replaceFirst(".*\\.", ""));
    }

    /**
     * Of a body.
     *
     * @param  given what need not be said, since the address says it
     */
    public Map<String, Object> sent(Class<?> record, Set<String> given) {
        Map<String, Object> schema = sent(Shape.of(record), given);
        String plain = name(record);
        String name = components.getOrDefault(plain, schema).equals(schema)
                ? plain
                // The same record sent to another address, which says other parts of it.
                : plain + "At"
                        + String.join(
                                "And", given.stream().map(Schemas::capital).toList());
        return component(name, schema);
    }

    private static String capital(String name) {
        return name.substring(0, 1).toUpperCase(Locale.ROOT) + name.substring(1);
    }

    private String name(Class<?> record) {
        String name = String.valueOf(names.get(record));
        return answered.contains(record) ? name + "Request" : name;
    }

    private Map<String, Object> sent(Shape<?> shape, Set<String> given) {
        Map<String, Object> properties = new LinkedHashMap<>();
        List<String> required = new ArrayList<>();
        for (Shape.Field field : shape.fields()) {
            properties.put(field.name(), sent(field));
            boolean fromSession = field.name().equals("by") && field.element() == UserId.class;
            // A list that is left out is read as an empty one, and whether it may be empty is for the record to say.
            boolean one = field.type() == Shape.Type.SINGLE || field.type() == Shape.Type.PART;
            if (one && !field.optional() && !fromSession && !given.contains(field.name())) {
                required.add(field.name());
            }
        }
        return closed(properties, required);
    }

    private Map<String, Object> sent(Shape.Field field) {
        return switch (field.type()) {
            case SINGLE -> withDefault(taken(field.scalar()), field);
            case PART -> sent(field.element(), Set.of());
            case SEVERAL -> array(taken(field.scalar()));
            case ROWS -> array(sent(field.element(), Set.of()));
            case BY_CONSTANT -> {
                Map<String, Object> values = new LinkedHashMap<>();
                field.keys().forEach(key -> values.put(key.name(), taken(field.scalar())));
                yield closed(values, List.of());
            }
        };
    }

    private static Map<String, Object> withDefault(Map<String, Object> schema, Shape.Field field) {
        String otherwise = field.otherwise();
        if (otherwise == null || otherwise.isEmpty() || schema.containsKey("anyOf")) {
            return schema;
        }
        return withDefault(schema, otherwise);
    }

    /** A schema with the value that a text means under it as its default. */
    public static Map<String, Object> withDefault(Map<String, Object> schema, String text) {
        return with(
                schema,
                "default",
                switch (String.valueOf(schema.get("type"))) {
                    case "boolean" -> Boolean.valueOf(text);
                    case "integer" -> Integer.valueOf(text);
                    default -> text;
                });
    }

    /** Values of several parts, such as money, are described once. */
    private Map<String, Object> taken(Scalar<?> scalar) {
        Map<String, Object> schema = taken(scalar.schema());
        return isObject(schema) ? component(scalar.type().getSimpleName() + "Request", schema) : schema;
    }

    private static boolean isObject(Map<String, Object> schema) {
        return "object".equals(schema.get("type"));
    }

    /** A decimal is written as a text, and read as a number too. */
    @SuppressWarnings("unchecked")
    private static Map<String, Object> taken(Map<String, Object> schema) {
        if (schema.equals(JsonValues.decimalSchema())) {
            return oneOf(List.of(schema, JsonValues.schema("number")));
        }
        if (!(schema.get("properties") instanceof Map<?, ?> parts)) {
            return schema;
        }
        Map<String, Object> properties = new LinkedHashMap<>();
        parts.forEach((name, part) -> properties.put((String) name, taken((Map<String, Object>) part)));
        return with(schema, "properties", properties);
    }

    /** Of a parameter of an address. */
    public static Map<String, Object> parameter(Class<?> type) {
        return Scalar.of(type)
                .orElseThrow(() -> new IllegalStateException(type + " is not one value"))
                .schema();
    }

    /** Of what a body of this record says in the address under that name; a text where it says nothing so. */
    public static Map<String, Object> parameter(@Nullable Class<?> record, String name) {
        return Stream.ofNullable(record)
                .flatMap(known -> Shape.of(known).fields().stream())
                .filter(field -> field.name().equals(name) && field.type() == Shape.Type.SINGLE)
                .map(field -> field.scalar().schema())
                .findFirst()
                .orElseGet(() -> JsonValues.schema("string"));
    }

    /** The name of what answers say of a record. */
    public String nameOf(Class<?> record) {
        return String.valueOf(names.get(record));
    }

    /** Keeps a schema that is no record's under a name of its own. */
    public Map<String, Object> component(String name, Map<String, Object> schema) {
        if (!components.getOrDefault(name, schema).equals(schema)) {
            throw new IllegalStateException("two schemas would be described as " + name);
        }
        components.put(name, schema);
        return reference(name);
    }

    /** Of a value as it is answered. */
    public Map<String, Object> answered(Type type) {
        if (type instanceof ParameterizedType parameterized) {
            Type[] arguments = parameterized.getActualTypeArguments();
            Class<?> raw = (Class<?>) parameterized.getRawType();
            if (Collection.class.isAssignableFrom(raw)) {
                return array(answered(arguments[0]));
            }
            if (Map.class.isAssignableFrom(raw)) {
                return byKey((Class<?>) arguments[0], answered(arguments[1]));
            }
        }
        if (!(type instanceof Class<?> known)) {
            throw new IllegalStateException("no schema for " + type);
        }
        if (known == long.class || known == Long.class) {
            return Map.of("type", "integer", "format", "int64");
        }
        if (JsonValue.class.isAssignableFrom(known)) {
            return Map.of();
        }
        var scalar = Scalar.of(known);
        if (scalar.isPresent()) {
            Map<String, Object> schema = scalar.get().schema();
            return isObject(schema) ? component(known.getSimpleName(), schema) : schema;
        }
        if (known.isSealed()) {
            return oneOf(Arrays.stream(known.getPermittedSubclasses())
                    .map(this::answered)
                    .toList());
        }
        if (!known.isRecord()) {
            throw new IllegalStateException("no schema for " + type);
        }
        String name = String.valueOf(names.get(known));
        if (!components.containsKey(name)) {
            components.put(name, Map.of()); // a record may hold its like
            components.put(name, answer(known));
        }
        return reference(name);
    }

    private Map<String, Object> answer(Class<?> record) {
        Map<String, Object> properties = new LinkedHashMap<>();
        List<String> required = new ArrayList<>();
        for (RecordComponent part : record.getRecordComponents()) {
            properties.put(part.getName(), answered(part.getGenericType()));
            if (!part.getAnnotatedType().isAnnotationPresent(Nullable.class)) {
                required.add(part.getName());
            }
        }
        return object(properties, required);
    }

    private static Map<String, Object> byKey(Class<?> key, Map<String, Object> value) {
        if (!key.isEnum()) {
            return new LinkedHashMap<>(Map.of("type", "object", "additionalProperties", value));
        }
        Map<String, Object> properties = new LinkedHashMap<>();
        for (Object constant : key.getEnumConstants()) {
            properties.put(((Enum<?>) constant).name(), value);
        }
        return object(properties, List.of());
    }

    /** An object of these members. */
    public static Map<String, Object> object(Map<String, Object> properties, List<String> required) {
        Map<String, Object> schema = new LinkedHashMap<>();
        schema.put("type", "object");
        schema.put("properties", properties);
        if (!required.isEmpty()) {
            schema.put("required", required);
        }
        return schema;
    }

    /** The same where a member that nobody knows is refused. */
    static Map<String, Object> closed(Map<String, Object> properties, List<String> required) {
        return with(object(properties, required), "additionalProperties", false);
    }

    /** A schema that says one thing more, or otherwise. */
    public static Map<String, Object> with(Map<String, Object> schema, String key, Object value) {
        Map<String, Object> with = new LinkedHashMap<>(schema);
        with.put(key, value);
        return with;
    }

    public static Map<String, Object> array(Map<String, Object> items) {
        return Map.of("type", "array", "items", items);
    }

    /** Either of these. Several may fit: a member more than a record needs is no reason why it should not. */
    public static Map<String, Object> oneOf(List<Map<String, Object>> schemas) {
        return schemas.size() == 1 ? schemas.getFirst() : Map.of("anyOf", schemas);
    }

    public static Map<String, Object> reference(String name) {
        return Map.of("$ref", AT + name);
    }
}
