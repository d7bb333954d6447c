package eaveside.web.forms;

import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Unit;
import jakarta.json.JsonNumber;
import jakarta.json.JsonString;
import jakarta.json.JsonValue;
import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Map;

/** The values that JSON has of its own: read, with refusals that name the field, and described. */
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
}
