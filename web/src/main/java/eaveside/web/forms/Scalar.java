package eaveside.web.forms;

import eaveside.access.NewPassword;
import eaveside.kernel.Ids;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Money;
import eaveside.kernel.Percent;
import eaveside.kernel.Quantity;
import eaveside.kernel.Records;
import eaveside.kernel.Refusal;
import eaveside.kernel.Texts;
import eaveside.kernel.Unit;
import eaveside.kernel.UnitPrice;
import eaveside.web.Notation;
import eaveside.web.security.WebRefusal;
import jakarta.json.JsonObject;
import jakarta.json.JsonObjectBuilder;
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
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
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

    Scalar {
        Typed<T> ofText = typed;
        FromJson<T> ofJson = fromJson;
        typed = (field, text, notation) -> named(field, () -> ofText.read(field, text, notation));
        fromJson = (field, value) -> named(field, () -> ofJson.read(field, value));
    }

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

    /** Of the types that are not made of one other value. */
    private static final Map<Class<?>, Scalar<?>> OWN = new HashMap<>();

    private static final ClassValue<Optional<Scalar<?>>> KNOWN = new ClassValue<>() {
        @Override
        protected Optional<Scalar<?>> computeValue(Class<?> type) {
            return Optional.ofNullable(made(type));
        }
    };

    // What is made of several values comes after them.
    static {
        add(text(String.class, (field, text) -> Texts.seen(text), text -> text, JsonValues.schema("string")));
        add(new Scalar<>(
                Integer.class,
                (f, text, n) -> n.integer(f, text),
                (v, n) -> n.plain(BigDecimal.valueOf(v)),
                JsonValues::integer,
                JsonWriting.JSON::createValue,
                JsonValues.schema("integer")));
        add(new Scalar<>(
                Boolean.class,
                (f, text, n) -> !text.isBlank(),
                (v, n) -> v ? "yes" : "",
                JsonValues::bool,
                v -> v ? JsonValue.TRUE : JsonValue.FALSE,
                JsonValues.schema("boolean")));
        add(decimal(BigDecimal.class, (f, text, n) -> n.decimal(f, text), value -> value, value -> value));
        add(decimal(Percent.class, (f, text, n) -> n.percentage(f, text), Percent::of, Percent::value));
        add(text(Unit.class, (field, text) -> at(field, () -> Unit.ofCode(text)), Unit::code, JsonValues.unitSchema()));
        add(text(
                CurrencyUnit.class,
                parsed(CurrencyUnit::of, "a currency code of ISO 4217"),
                CurrencyUnit::getCode,
                JsonValues.schema("string", "pattern", "^[A-Z]{3}$")));
        add(object(
                Money.class,
                (f, text, n) -> Money.of(n.currency(), n.amount(f, text)).bounded(""),
                (v, n) -> n.plain(v.amount()),
                MoneyParts.class,
                parts -> Money.of(parts.currency, parts.amount).bounded(""),
                v -> new MoneyParts(v.amount(), v.currency())));
        add(object(
                Quantity.class,
                (f, text, n) -> {
                    throw withUnit(f);
                },
                (v, n) -> n.plain(v.value()),
                QuantityParts.class,
                parts -> Quantity.of(parts.value, parts.unit).bounded(""),
                v -> new QuantityParts(v.value(), v.unit())));
        add(object(
                UnitPrice.class,
                (f, text, n) -> {
                    throw withUnit(f);
                },
                (v, n) -> n.plain(v.amount()
                        .setScale(Math.max(v.amount().scale(), v.currency().getDecimalPlaces()))),
                PriceParts.class,
                parts -> new UnitPrice(parts.currency, parts.amount, parts.per).bounded(""),
                v -> new PriceParts(v.amount(), v.currency(), v.base())));
        add(text(
                        LocalDate.class,
                        (field, text) -> Notation.possible(
                                field,
                                parsed(LocalDate::parse, "a date such as 2026-03-31")
                                        .apply(field, text)),
                        LocalDate::toString,
                        JsonValues.schema("string", "format", "date"))
                .typedAs((f, text, n) -> n.date(f, text)));
        add(text(
                YearMonth.class,
                parsed(YearMonth::parse, "a month, such as 2026-03"),
                YearMonth::toString,
                JsonValues.schema("string", "pattern", "^\\d{4}-\\d{2}$")));
        add(text(
                LocalTime.class,
                parsed(LocalTime::parse, "a time, such as 08:30"),
                LocalTime::toString,
                JsonValues.schema("string", "pattern", "^\\d{2}:\\d{2}(:\\d{2}(\\.\\d{1,9})?)?$")));
        add(text(
                Instant.class,
                parsed(Instant::parse, "a time such as 2026-03-31T12:00:00Z"),
                Instant::toString,
                JsonValues.schema("string", "format", "date-time")));
        add(text(
                ZoneId.class,
                parsed(ZoneId::of, "a time zone, such as America/Chicago"),
                ZoneId::getId,
                JsonValues.schema("string")));
        add(text(UUID.class, parsed(Ids::parse, "an id"), UUID::toString, JsonValues.schema("string", "format", "uuid"))
                .typedAs((f, text, n) -> Ids.parse(text.strip())));
        add(new Scalar<>(
                NewPassword.class,
                (f, text, n) -> new NewPassword(text),
                (v, n) -> "", // a password is never sent back
                (f, j) -> new NewPassword(JsonValues.string(f, j)),
                v -> JsonValue.NULL,
                JsonValues.schema("string", "format", "password")));
    }

    private record MoneyParts(BigDecimal amount, CurrencyUnit currency) {}

    private record QuantityParts(BigDecimal value, Unit unit) {}

    private record PriceParts(BigDecimal amount, CurrencyUnit currency, Quantity per) {}

    private static void add(Scalar<?> scalar) {
        OWN.put(scalar.type, scalar);
    }

    /** The scalar of a type; empty where the type is made of several fields. */
    static Optional<Scalar<?>> of(Class<?> type) {
        return KNOWN.get(type == int.class ? Integer.class : type == boolean.class ? Boolean.class : type);
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

    private Scalar<T> typedAs(Typed<T> otherwise) {
        return new Scalar<>(type, otherwise, shown, fromJson, toJson, schema);
    }

    private static @Nullable Scalar<?> made(Class<?> type) {
        Scalar<?> own = OWN.get(type);
        if (own != null || type.isEnum()) {
            return own == null ? choice(type) : own;
        }
        // A code, a name, an id: by custom its one component is called so. Any other record is an object, however
        // small.
        RecordComponent[] parts = type.isRecord() ? type.getRecordComponents() : new RecordComponent[0];
        return parts.length == 1 && parts[0].getName().equals("value") ? wrapper(type, parts[0]) : null;
    }

    /** A value that is one text, the same wherever it stands. */
    private static <T> Scalar<T> text(
            Class<T> type, BiFunction<String, String, T> read, Function<T, String> shown, Map<String, Object> schema) {
        return new Scalar<>(
                type,
                (f, text, n) -> read.apply(f, text.strip()),
                (v, n) -> shown.apply(v),
                (f, j) -> read.apply(f, JsonValues.string(f, j)),
                v -> JsonWriting.JSON.createValue(shown.apply(v)),
                schema);
    }

    private static <T> BiFunction<String, String, T> parsed(Function<String, T> parse, String expected) {
        return (field, text) -> {
            try {
                return parse.apply(text);
            } catch (DateTimeException | IllegalCurrencyException | KernelRefusal.NotAnId e) {
                throw new KernelRefusal.Unfit(field, "{field} must be " + expected);
            }
        };
    }

    private static <T> Scalar<T> choice(Class<T> type) {
        Map<String, T> byName = new LinkedHashMap<>();
        Arrays.stream(type.getEnumConstants()).forEach(c -> byName.put(((Enum<?>) c).name(), c));
        List<String> names = List.copyOf(byName.keySet());
        return text(
                type,
                (field, name) -> Optional.ofNullable(byName.get(name))
                        .orElseThrow(() ->
                                new KernelRefusal.Unfit(field, "{field} must be one of " + String.join(", ", names))),
                constant -> ((Enum<?>) constant).name(),
                JsonValues.schema("string", "enum", names));
    }

    /** A number, which travels as a text. */
    private static <T> Scalar<T> decimal(
            Class<T> type, Typed<BigDecimal> typed, Function<BigDecimal, T> wrap, Function<T, BigDecimal> unwrap) {
        return new Scalar<>(
                type,
                (f, text, n) -> wrap.apply(typed.read(f, text, n)),
                (v, n) -> n.plain(unwrap.apply(v)),
                (f, j) -> wrap.apply(JsonValues.decimal(f, j)),
                v -> JsonWriting.JSON.createValue(unwrap.apply(v).toPlainString()),
                JsonValues.decimalSchema());
    }

    private static IllegalStateException withUnit(String field) {
        return new IllegalStateException(field + " is read with its unit");
    }

    /** A value that is one field of a form and an object of these parts in JSON. */
    private static <T, P extends Record> Scalar<T> object(
            Class<T> type, Typed<T> typed, Shown<T> shown, Class<P> parts, Function<P, T> whole, Function<T, P> taken) {
        Map<String, Object> properties = new LinkedHashMap<>();
        for (RecordComponent part : parts.getRecordComponents()) {
            properties.put(part.getName(), ofPart(part).schema);
        }
        return new Scalar<>(
                type,
                typed,
                shown,
                (f, j) -> {
                    P read = parts(parts, f, j);
                    return inside(f, () -> whole.apply(read));
                },
                v -> tree(taken.apply(v)),
                Schemas.closed(properties, List.copyOf(properties.keySet())));
    }

    private static Scalar<?> ofPart(RecordComponent part) {
        return of(part.getType()).orElseThrow();
    }

    private static <P> P parts(Class<P> type, String field, JsonValue value) {
        List<RecordComponent> parts = List.of(type.getRecordComponents());
        List<String> names = parts.stream().map(RecordComponent::getName).toList();
        if (!(value instanceof JsonObject object)) {
            throw new KernelRefusal.Unfit(field, "{field} must be an object of " + String.join(" and ", names));
        }
        object.keySet().stream().filter(name -> !names.contains(name)).forEach(name -> {
            throw new KernelRefusal.Unfit(field + "." + name, "{field} is not known here");
        });
        Map<String, Object> values = new HashMap<>();
        for (RecordComponent part : parts) {
            String at = field + "." + part.getName();
            JsonValue said = object.getOrDefault(part.getName(), JsonValue.NULL);
            if (said == JsonValue.NULL) {
                throw new KernelRefusal.Unfit(at, "{field} is required");
            }
            values.put(part.getName(), ofPart(part).fromJson.read(at, said));
        }
        return Records.make(type, values);
    }

    private static JsonValue tree(Record parts) {
        JsonObjectBuilder object = JsonWriting.JSON.createObjectBuilder();
        for (RecordComponent part : parts.getClass().getRecordComponents()) {
            object.add(part.getName(), ofPart(part).json(bare(part, parts)));
        }
        return object.build();
    }

    private static Object bare(RecordComponent part, Object from) {
        return Objects.requireNonNull(Records.value(part, from), () -> "nothing in " + part);
    }

    /** A record around one value, such as an id, a code or a name: written as that value. */
    private static <T> Scalar<T> wrapper(Class<T> type, RecordComponent part) {
        Scalar<?> inner = ofPart(part);
        Function<Object, T> wrap = value -> Records.make(type, Map.of(part.getName(), value));
        return new Scalar<>(
                type,
                (f, text, n) -> at(f, () -> wrap.apply(inner.typed.read(f, text, n))),
                (v, n) -> inner.text(bare(part, v), n),
                (f, j) -> at(f, () -> wrap.apply(inner.fromJson.read(f, j))),
                v -> inner.json(bare(part, v)),
                inner.schema);
    }

    /** An amount or a quantity does not know what it is for when it is refused: the field that holds it does. */
    static <T> T named(String field, Supplier<T> value) {
        return told(value, name -> name.isEmpty() ? field : name);
    }

    /** A code or a name is refused by its own name; here it is told under that of the field that holds it. */
    static <T> T at(String field, Supplier<T> value) {
        return told(value, name -> field);
    }

    /** One of its parts is refused by its name alone; here it is told where it stands. */
    private static <T> T inside(String field, Supplier<T> whole) {
        return told(whole, name -> name.isEmpty() ? field : field + "." + name);
    }

    /** What is refused, under the name that the field has here. */
    private static <T> T told(Supplier<T> value, UnaryOperator<String> here) {
        try {
            return value.get();
        } catch (Refusal refusal) {
            Refusal.Problem problem = refusal.problems().getFirst();
            String name = here.apply(problem.field());
            if (name.equals(problem.field())) {
                throw refusal;
            }
            throw new WebRefusal.Within(refusal.type(), refusal.code(), name, problem.pattern());
        }
    }
}
