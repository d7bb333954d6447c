package eaveside.web.forms;

import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.Unit;
import eaveside.kernel.UnitPrice;
import jakarta.json.Json;
import jakarta.json.JsonNumber;
import jakarta.json.JsonObject;
import jakarta.json.JsonString;
import jakarta.json.JsonValue;
import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Map;

/** The one shape that each value has in JSON: read, with refusals that name the field, written, and described. */
final class JsonValues {
    /** Of a decimal, which travels as a text. */
    private static final String DIGITS = "-?\\d{1,15}(\\.\\d{1,10})?";

    private JsonValues() {}

    static String string(String field, JsonValue value) {
        if (value instanceof JsonString text) {
            return text.getString();
        }
        throw new KernelRefusal.Unfit(field, "{field} must be a text");
    }

    static Integer integer(String field, JsonValue value) {
        if (value instanceof JsonNumber number && number.isIntegral()) {
            try {
                return number.intValueExact();
            } catch (ArithmeticException e) {
                throw new KernelRefusal.Unfit(field, "{field} has more digits than fit");
            }
        }
        throw new KernelRefusal.Unfit(field, "{field} must be a whole number");
    }

    static Boolean bool(String field, JsonValue value) {
        if (value == JsonValue.TRUE || value == JsonValue.FALSE) {
            return value == JsonValue.TRUE;
        }
        throw new KernelRefusal.Unfit(field, "{field} must be true or false");
    }

    /** A text, so that no digit is lost on the way; a plain number is taken too. */
    static BigDecimal decimal(String field, JsonValue value) {
        String text = value instanceof JsonNumber number ? number.toString() : string(field, value);
        if (!text.matches(DIGITS)) {
            throw new KernelRefusal.Unfit(
                    field, "{field} must be a number such as \"12.50\", of at most 15 digits and 10 decimals");
        }
        return new BigDecimal(text);
    }

    static Money money(String field, JsonValue value) {
        JsonObject parts = object(field, value, "amount", "currency");
        return Money.of(
                Scalar.currency(field + ".currency", string(field + ".currency", there(field, parts, "currency"))),
                decimal(field + ".amount", there(field, parts, "amount")));
    }

    static Quantity quantity(String field, JsonValue value) {
        JsonObject parts = object(field, value, "value", "unit");
        return Quantity.of(
                decimal(field + ".value", there(field, parts, "value")),
                Unit.ofCode(string(field + ".unit", there(field, parts, "unit"))));
    }

    static UnitPrice unitPrice(String field, JsonValue value) {
        JsonObject parts = object(field, value, "amount", "currency", "per");
        return new UnitPrice(
                Scalar.currency(field + ".currency", string(field + ".currency", there(field, parts, "currency"))),
                decimal(field + ".amount", there(field, parts, "amount")),
                quantity(field + ".per", there(field, parts, "per")));
    }

    static JsonObject object(String field, JsonValue value, String... members) {
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

    static JsonValue there(String field, JsonObject parts, String name) {
        JsonValue value = parts.get(name);
        if (value == null || value == JsonValue.NULL) {
            throw new KernelRefusal.Unfit(field + "." + name, "{field} is required");
        }
        return value;
    }

    static JsonValue tree(Object value) {
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

    static Map<String, Object> schema(String type) {
        return Map.of("type", type);
    }

    static Map<String, Object> schema(String type, String key, Object value) {
        return Map.of("type", type, key, value);
    }

    static Map<String, Object> decimalSchema() {
        return schema("string", "pattern", "^" + DIGITS + "$");
    }

    static Map<String, Object> unitSchema() {
        return schema(
                "string", "enum", Arrays.stream(Unit.values()).map(Unit::code).toList());
    }

    static Map<String, Object> object(Map<String, Object> properties) {
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
