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

    static {
        add(
                String.class,
                (f, text, n) -> text.strip(),
                (v, n) -> v,
                JsonValues::string,
                JsonValues::tree,
                JsonValues.schema("string"));
        add(
                Integer.class,
                (f, text, n) -> n.integer(f, text, Integer.MIN_VALUE, Integer.MAX_VALUE),
                (v, n) -> n.plain(BigDecimal.valueOf(v)),
                JsonValues::integer,
                Json::createValue,
                JsonValues.schema("integer"));
        add(
                Boolean.class,
                (f, text, n) -> !text.isBlank(),
                (v, n) -> v ? "yes" : "",
                JsonValues::bool,
                v -> v ? JsonValue.TRUE : JsonValue.FALSE,
                JsonValues.schema("boolean"));
        add(
                BigDecimal.class,
                (f, text, n) -> n.decimal(f, text),
                (v, n) -> n.plain(v),
                JsonValues::decimal,
                v -> Json.createValue(v.toPlainString()),
                JsonValues.decimalSchema());
        add(
                Percent.class,
                (f, text, n) -> Percent.of(n.decimal(f, text)),
                (v, n) -> n.plain(v.value()),
                (f, j) -> Percent.of(JsonValues.decimal(f, j)),
                v -> Json.createValue(v.value().toPlainString()),
                JsonValues.decimalSchema());
        add(
                Money.class,
                (f, text, n) -> Money.of(n.currency(), n.decimal(f, text)),
                (v, n) -> n.plain(v.amount()),
                JsonValues::money,
                JsonValues::tree,
                JsonValues.object(Map.of(
                        "amount",
                        JsonValues.decimalSchema(),
                        "currency",
                        JsonValues.schema("string", "pattern", "^[A-Z]{3}$"))));
        add(
                Quantity.class,
                (f, text, n) -> {
                    throw new IllegalStateException("a quantity is read with its unit: " + f);
                },
                (v, n) -> n.plain(v.value()),
                JsonValues::quantity,
                JsonValues::tree,
                JsonValues.object(Map.of("value", JsonValues.decimalSchema(), "unit", JsonValues.unitSchema())));
        add(
                UnitPrice.class,
                (f, text, n) -> {
                    throw new IllegalStateException("a unit price is read with its unit: " + f);
                },
                (v, n) -> n.plain(v.amount()
                        .setScale(Math.max(v.amount().scale(), v.currency().getDecimalPlaces()))),
                JsonValues::unitPrice,
                JsonValues::tree,
                JsonValues.object(Map.of(
                        "amount",
                        JsonValues.decimalSchema(),
                        "currency",
                        JsonValues.schema("string", "pattern", "^[A-Z]{3}$"),
                        "per",
                        JsonValues.object(
                                Map.of("value", JsonValues.decimalSchema(), "unit", JsonValues.unitSchema())))));
        add(
                Unit.class,
                (f, text, n) -> Unit.ofCode(text.strip()),
                (v, n) -> v.code(),
                (f, j) -> Unit.ofCode(JsonValues.string(f, j)),
                v -> Json.createValue(v.code()),
                JsonValues.unitSchema());
        add(
                CurrencyUnit.class,
                (f, text, n) -> currency(f, text.strip()),
                (v, n) -> v.getCode(),
                (f, j) -> currency(f, JsonValues.string(f, j)),
                v -> Json.createValue(v.getCode()),
                JsonValues.schema("string", "pattern", "^[A-Z]{3}$"));
        add(
                LocalDate.class,
                (f, text, n) -> n.date(f, text),
                (v, n) -> v.toString(),
                (f, j) -> parsed(f, j, LocalDate::parse, "a date such as 2026-03-31"),
                JsonValues::tree,
                JsonValues.schema("string", "format", "date"));
        add(
                YearMonth.class,
                (f, text, n) -> month(f, text.strip()),
                (v, n) -> v.toString(),
                (f, j) -> month(f, JsonValues.string(f, j)),
                JsonValues::tree,
                JsonValues.schema("string", "pattern", "^\\d{4}-\\d{2}$"));
        add(
                LocalTime.class,
                (f, text, n) -> time(f, text.strip()),
                (v, n) -> v.toString(),
                (f, j) -> time(f, JsonValues.string(f, j)),
                JsonValues::tree,
                JsonValues.schema("string", "pattern", "^\\d{2}:\\d{2}(:\\d{2}(\\.\\d{1,9})?)?$"));
        add(
                Instant.class,
                (f, text, n) -> {
                    throw new IllegalStateException("instants are not typed: " + f);
                },
                (v, n) -> v.toString(),
                (f, j) -> parsed(f, j, Instant::parse, "a time such as 2026-03-31T12:00:00Z"),
                JsonValues::tree,
                JsonValues.schema("string", "format", "date-time"));
        add(
                ZoneId.class,
                (f, text, n) -> zone(f, text.strip()),
                (v, n) -> v.getId(),
                (f, j) -> zone(f, JsonValues.string(f, j)),
                JsonValues::tree,
                JsonValues.schema("string"));
        add(
                NewPassword.class,
                (f, text, n) -> new NewPassword(text),
                (v, n) -> "", // a password is never sent back
                (f, j) -> new NewPassword(JsonValues.string(f, j)),
                v -> JsonValue.NULL,
                JsonValues.schema("string", "format", "password"));
        add(
                UUID.class,
                (f, text, n) -> Ids.parse(text.strip()),
                (v, n) -> v.toString(),
                (f, j) -> id(f, JsonValues.string(f, j)),
                JsonValues::tree,
                JsonValues.schema("string", "format", "uuid"));
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
                (f, j) -> chosen(f, JsonValues.string(f, j), byName),
                v -> Json.createValue(((Enum<?>) v).name()),
                JsonValues.schema("string", "enum", List.copyOf(byName.keySet())));
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

    static CurrencyUnit currency(String field, String code) {
        try {
            return CurrencyUnit.of(code);
        } catch (IllegalCurrencyException e) {
            throw new KernelRefusal.Unfit(field, "{field} must be a currency code of ISO 4217");
        }
    }

    private static <T> T parsed(String field, JsonValue value, Function<String, T> parse, String expected) {
        try {
            return parse.apply(JsonValues.string(field, value));
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

    private static UUID id(String field, String text) {
        try {
            return Ids.parse(text);
        } catch (KernelRefusal.NotAnId e) {
            throw new KernelRefusal.Unfit(field, "{field} must be an id");
        }
    }

    private static ZoneId zone(String field, String text) {
        try {
            return ZoneId.of(text);
        } catch (DateTimeException e) {
            throw new KernelRefusal.Unfit(field, "{field} must be a time zone, such as America/Chicago");
        }
    }
}
