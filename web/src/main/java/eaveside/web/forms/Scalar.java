package eaveside.web.forms;

import eaveside.access.NewPassword;
import eaveside.kernel.Ids;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Money;
import eaveside.kernel.Percent;
import eaveside.kernel.Quantity;
import eaveside.kernel.Records;
import eaveside.kernel.Refusal;
import eaveside.kernel.Unit;
import eaveside.kernel.UnitPrice;
import eaveside.web.Notation;
import eaveside.web.security.WebRefusal;
import jakarta.json.Json;
import jakarta.json.JsonNumber;
import jakarta.json.JsonObject;
import jakarta.json.JsonString;
import jakarta.json.JsonValue;
import java.lang.reflect.RecordComponent;
import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.YearMonth;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import java.util.function.Supplier;
import org.joda.money.CurrencyUnit;
import org.joda.money.IllegalCurrencyException;
import org.jspecify.annotations.Nullable;

/**
 * A type of value that one field holds: how it reads what a person typed, how it shows itself for editing, and the one
 * shape that it has in JSON, wherever it stands. Refusals name the field.
 *
 * @param  typed    reads a field that is not blank
 * @param  shown    for editing again
 * @param  fromJson reads a value that is not null
 * @param  schema   of JSON Schema, for the description of the API
 */
record Scalar<T>(
        Class<T> type,
        Typed<T> typed,
        Shown<T> shown,
        FromJson<T> fromJson,
        Function<T, JsonValue> toJson,
        Map<String, Object> schema) {

    /** Reads what was typed. */
    interface Typed<T> {
        T read(String field, String text, Notation notation);
    }

    /** Shows for editing. */
    interface Shown<T> {
        String text(T value, Notation notation);
    }

    /** Reads JSON. */
    interface FromJson<T> {
        T read(String field, JsonValue value);
    }

    private static final Map<Class<?>, Scalar<?>> KNOWN = new LinkedHashMap<>();

    private static final String DIGITS = "-?\\d{1,15}(\\.\\d{1,10})?";

    static {
        add(String.class, (f, text, n) -> text.strip(), (v, n) -> v, Scalar::string, Scalar::tree, schema("string"));
        add(
                Integer.class,
                (f, text, n) -> n.integer(f, text, Integer.MIN_VALUE, Integer.MAX_VALUE),
                (v, n) -> n.plain(BigDecimal.valueOf(v)),
                Scalar::integer,
                Json::createValue,
                schema("integer"));
        add(
                Boolean.class,
                (f, text, n) -> !text.isBlank(),
                (v, n) -> v ? "yes" : "",
                Scalar::bool,
                v -> v ? JsonValue.TRUE : JsonValue.FALSE,
                schema("boolean"));
        add(
                BigDecimal.class,
                (f, text, n) -> n.decimal(f, text),
                (v, n) -> n.plain(v),
                Scalar::decimal,
                v -> Json.createValue(v.toPlainString()),
                decimalSchema());
        add(
                Percent.class,
                (f, text, n) -> Percent.of(n.decimal(f, text)),
                (v, n) -> n.plain(v.value()),
                (f, j) -> Percent.of(decimal(f, j)),
                v -> Json.createValue(v.value().toPlainString()),
                decimalSchema());
        add(
                Money.class,
                (f, text, n) -> Money.of(n.currency(), n.decimal(f, text)),
                (v, n) -> n.plain(v.amount()),
                Scalar::money,
                Scalar::tree,
                object(Map.of("amount", decimalSchema(), "currency", schema("string", "pattern", "[A-Z]{3}"))));
        add(
                Quantity.class,
                (f, text, n) -> {
                    throw new IllegalStateException("a quantity is read with its unit: " + f);
                },
                (v, n) -> n.plain(v.value()),
                Scalar::quantity,
                Scalar::tree,
                object(Map.of("value", decimalSchema(), "unit", unitSchema())));
        add(
                UnitPrice.class,
                (f, text, n) -> {
                    throw new IllegalStateException("a unit price is read with its unit: " + f);
                },
                (v, n) -> n.plain(v.amount()
                        .setScale(Math.max(v.amount().scale(), v.currency().getDecimalPlaces()))),
                Scalar::unitPrice,
                Scalar::tree,
                object(Map.of(
                        "amount",
                        decimalSchema(),
                        "currency",
                        schema("string", "pattern", "[A-Z]{3}"),
                        "per",
                        object(Map.of("value", decimalSchema(), "unit", unitSchema())))));
        add(
                Unit.class,
                (f, text, n) -> Unit.ofCode(text.strip()),
                (v, n) -> v.code(),
                (f, j) -> Unit.ofCode(string(f, j)),
                v -> Json.createValue(v.code()),
                unitSchema());
        add(
                CurrencyUnit.class,
                (f, text, n) -> currency(f, text.strip()),
                (v, n) -> v.getCode(),
                (f, j) -> currency(f, string(f, j)),
                v -> Json.createValue(v.getCode()),
                schema("string", "pattern", "[A-Z]{3}"));
        add(
                LocalDate.class,
                (f, text, n) -> n.date(f, text),
                (v, n) -> v.toString(),
                (f, j) -> parsed(f, j, LocalDate::parse, "a date such as 2026-03-31"),
                Scalar::tree,
                schema("string", "format", "date"));
        add(
                YearMonth.class,
                (f, text, n) -> month(f, text.strip()),
                (v, n) -> v.toString(),
                (f, j) -> month(f, string(f, j)),
                Scalar::tree,
                schema("string", "pattern", "\\d{4}-\\d{2}"));
        add(
                LocalTime.class,
                (f, text, n) -> time(f, text.strip()),
                (v, n) -> v.toString(),
                (f, j) -> time(f, string(f, j)),
                Scalar::tree,
                schema("string", "format", "time"));
        add(
                Instant.class,
                (f, text, n) -> {
                    throw new IllegalStateException("instants are not typed: " + f);
                },
                (v, n) -> v.toString(),
                (f, j) -> parsed(f, j, Instant::parse, "a time such as 2026-03-31T12:00:00Z"),
                Scalar::tree,
                schema("string", "format", "date-time"));
        add(
                ZoneId.class,
                (f, text, n) -> zone(f, text.strip()),
                (v, n) -> v.getId(),
                (f, j) -> zone(f, string(f, j)),
                Scalar::tree,
                schema("string"));
        add(
                NewPassword.class,
                (f, text, n) -> new NewPassword(text),
                (v, n) -> "", // a password is never sent back
                (f, j) -> new NewPassword(string(f, j)),
                v -> JsonValue.NULL,
                schema("string", "format", "password"));
        add(
                UUID.class,
                (f, text, n) -> Ids.parse(text.strip()),
                (v, n) -> v.toString(),
                (f, j) -> Ids.parse(string(f, j)),
                Scalar::tree,
                schema("string", "format", "uuid"));
    }

    /** The scalar of a type; empty where the type is made of several fields. */
    static Optional<Scalar<?>> of(Class<?> type) {
        Class<?> boxed = boxed(type);
        synchronized (KNOWN) {
            Scalar<?> known = KNOWN.get(boxed);
            if (known == null) {
                known = made(boxed);
                if (known != null) {
                    KNOWN.put(boxed, known);
                }
            }
            return Optional.ofNullable(known);
        }
    }

    /** The value in JSON. */
    @SuppressWarnings("unchecked")
    JsonValue json(Object value) {
        return toJson.apply((T) value);
    }

    /** The value for editing. */
    @SuppressWarnings("unchecked")
    String text(Object value, Notation notation) {
        return shown.text((T) value, notation);
    }

    private static Class<?> boxed(Class<?> type) {
        return type == int.class ? Integer.class : type == boolean.class ? Boolean.class : type;
    }

    private static @Nullable Scalar<?> made(Class<?> type) {
        if (type.isEnum()) {
            return choice(type);
        }
        if (!type.isRecord()) {
            return null;
        }
        RecordComponent[] parts = type.getRecordComponents();
        if (parts.length != 1) {
            return null;
        }
        // A code, a name, an id: by custom its one component is called so. Any other record is an object, however
        // small.
        return parts[0].getName().equals("value") ? wrapper(type, parts[0]) : null;
    }

    /** A record around one value, such as an id, a code or a name: written as that value. */
    private static <T> Scalar<T> wrapper(Class<T> type, RecordComponent part) {
        Scalar<?> inner = of(part.getType()).orElseThrow();
        Function<Object, T> wrap = value -> Records.make(type, Map.of(part.getName(), value));
        Function<T, Object> unwrap = value -> {
            Object bare = Records.value(part, value);
            if (bare == null) {
                throw new IllegalStateException("nothing in " + type);
            }
            return bare;
        };
        return new Scalar<>(
                type,
                (f, text, n) -> at(f, () -> wrap.apply(inner.typed.read(f, text, n))),
                (v, n) -> inner.text(unwrap.apply(v), n),
                (f, j) -> at(f, () -> wrap.apply(inner.fromJson.read(f, j))),
                v -> inner.json(unwrap.apply(v)),
                inner.schema);
    }

    /** A code or a name is refused by its own name; here it is told under that of the field that holds it. */
    private static <T> T at(String field, Supplier<T> value) {
        try {
            return value.get();
        } catch (Refusal refusal) {
            Refusal.Problem problem = refusal.problems().getFirst();
            if (problem.field().isEmpty() || problem.field().equals(field)) {
                throw refusal;
            }
            throw new WebRefusal.Within(refusal.type(), refusal.code(), field, problem.pattern());
        }
    }

    private static <T> Scalar<T> choice(Class<T> type) {
        Map<String, T> byName = new LinkedHashMap<>();
        Arrays.stream(type.getEnumConstants()).forEach(c -> byName.put(((Enum<?>) c).name(), c));
        return new Scalar<>(
                type,
                (f, text, n) -> chosen(f, text.strip(), byName),
                (v, n) -> ((Enum<?>) v).name(),
                (f, j) -> chosen(f, string(f, j), byName),
                v -> Json.createValue(((Enum<?>) v).name()),
                schema("string", "enum", List.copyOf(byName.keySet())));
    }

    private static <T> T chosen(String field, String name, Map<String, T> byName) {
        T constant = byName.get(name);
        if (constant == null) {
            throw new KernelRefusal.Unfit(field, "{field} must be one of " + String.join(", ", byName.keySet()));
        }
        return constant;
    }

    private static <T> void add(
            Class<T> type,
            Typed<T> typed,
            Shown<T> shown,
            FromJson<T> fromJson,
            Function<T, JsonValue> toJson,
            Map<String, Object> schema) {
        KNOWN.put(type, new Scalar<>(type, typed, shown, fromJson, toJson, schema));
    }

    private static String string(String field, JsonValue value) {
        if (value instanceof JsonString text) {
            return text.getString();
        }
        throw new KernelRefusal.Unfit(field, "{field} must be a text");
    }

    private static Integer integer(String field, JsonValue value) {
        if (value instanceof JsonNumber number && number.isIntegral()) {
            try {
                return number.intValueExact();
            } catch (ArithmeticException e) {
                throw new KernelRefusal.Unfit(field, "{field} has more digits than fit");
            }
        }
        throw new KernelRefusal.Unfit(field, "{field} must be a whole number");
    }

    private static Boolean bool(String field, JsonValue value) {
        if (value == JsonValue.TRUE || value == JsonValue.FALSE) {
            return value == JsonValue.TRUE;
        }
        throw new KernelRefusal.Unfit(field, "{field} must be true or false");
    }

    /** A text, so that no digit is lost on the way; a plain number is taken too. */
    private static BigDecimal decimal(String field, JsonValue value) {
        String text = value instanceof JsonNumber number ? number.toString() : string(field, value);
        if (!text.matches(DIGITS)) {
            throw new KernelRefusal.Unfit(
                    field, "{field} must be a number such as \"12.50\", of at most 15 digits and 10 decimals");
        }
        return new BigDecimal(text);
    }

    private static Money money(String field, JsonValue value) {
        JsonObject parts = object(field, value, "amount", "currency");
        return Money.of(
                currency(field + ".currency", string(field + ".currency", there(field, parts, "currency"))),
                decimal(field + ".amount", there(field, parts, "amount")));
    }

    private static Quantity quantity(String field, JsonValue value) {
        JsonObject parts = object(field, value, "value", "unit");
        return Quantity.of(
                decimal(field + ".value", there(field, parts, "value")),
                Unit.ofCode(string(field + ".unit", there(field, parts, "unit"))));
    }

    private static UnitPrice unitPrice(String field, JsonValue value) {
        JsonObject parts = object(field, value, "amount", "currency", "per");
        return new UnitPrice(
                currency(field + ".currency", string(field + ".currency", there(field, parts, "currency"))),
                decimal(field + ".amount", there(field, parts, "amount")),
                quantity(field + ".per", there(field, parts, "per")));
    }

    private static JsonObject object(String field, JsonValue value, String... members) {
        if (!(value instanceof JsonObject parts)) {
            throw new KernelRefusal.Unfit(field, "{field} must be an object of " + String.join(" and ", members));
        }
        for (String name : parts.keySet()) {
            if (!Arrays.asList(members).contains(name)) {
                throw new KernelRefusal.Unfit(field + "." + name, "{field} is not known here");
            }
        }
        return parts;
    }

    private static JsonValue there(String field, JsonObject parts, String name) {
        JsonValue value = parts.get(name);
        if (value == null || value == JsonValue.NULL) {
            throw new KernelRefusal.Unfit(field + "." + name, "{field} is required");
        }
        return value;
    }

    private static CurrencyUnit currency(String field, String code) {
        try {
            return CurrencyUnit.of(code);
        } catch (IllegalCurrencyException e) {
            throw new KernelRefusal.Unfit(field, "{field} must be a currency code of ISO 4217");
        }
    }

    private static <T> T parsed(String field, JsonValue value, Function<String, T> parse, String expected) {
        try {
            return parse.apply(string(field, value));
        } catch (DateTimeException e) {
            throw new KernelRefusal.Unfit(field, "{field} must be " + expected);
        }
    }

    private static YearMonth month(String field, String text) {
        try {
            return YearMonth.parse(text);
        } catch (DateTimeException e) {
            throw new KernelRefusal.Unfit(field, "{field} must be a month, such as 2026-03");
        }
    }

    private static LocalTime time(String field, String text) {
        try {
            return LocalTime.parse(text);
        } catch (DateTimeException e) {
            throw new KernelRefusal.Unfit(field, "{field} must be a time, such as 08:30");
        }
    }

    private static ZoneId zone(String field, String text) {
        try {
            return ZoneId.of(text);
        } catch (DateTimeException e) {
            throw new KernelRefusal.Unfit(field, "{field} must be a time zone, such as America/Chicago");
        }
    }

    private static JsonValue tree(Object value) {
        return switch (value) {
            case Money money ->
                Json.createObjectBuilder()
                        .add("amount", money.amount().toPlainString())
                        .add("currency", money.currency().getCode())
                        .build();
            case Quantity quantity ->
                Json.createObjectBuilder()
                        .add("value", quantity.value().toPlainString())
                        .add("unit", quantity.unit().code())
                        .build();
            case UnitPrice price ->
                Json.createObjectBuilder()
                        .add("amount", price.amount().toPlainString())
                        .add("currency", price.currency().getCode())
                        .add("per", tree(price.base()))
                        .build();
            default -> Json.createValue(value.toString());
        };
    }

    private static Map<String, Object> schema(String type) {
        return Map.of("type", type);
    }

    private static Map<String, Object> schema(String type, String key, Object value) {
        return Map.of("type", type, key, value);
    }

    private static Map<String, Object> decimalSchema() {
        return schema("string", "pattern", DIGITS);
    }

    private static Map<String, Object> unitSchema() {
        return schema(
                "string", "enum", Arrays.stream(Unit.values()).map(Unit::code).toList());
    }

    private static Map<String, Object> object(Map<String, Object> properties) {
        return Map.of(
                "type",
                "object",
                "properties",
                properties,
                "required",
                properties.keySet().stream().sorted().toList(),
                "additionalProperties",
                false);
    }
}
