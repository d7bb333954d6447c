package eaveside.web.forms;

import eaveside.kernel.Elements;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Refusal;
import eaveside.web.security.WebRefusal;
import jakarta.json.JsonArray;
import jakarta.json.JsonObject;
import jakarta.json.JsonPointer;
import jakarta.json.JsonValue;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * Reads a record from a JSON object. A member that the record does not have is refused by its name: a script that
 * misspells one must not believe that it was heard.
 */
public final class JsonReading extends Reading {
    /** So many names that are not known are told; whoever sends more has another record in mind. */
    private static final int MOST_UNKNOWN = 20;

    private static final int LONGEST_NAME = 60;

    private final JsonObject body;

    private JsonReading(JsonObject body) {
        this.body = body;
    }

    /**
     * The record that the object describes.
     *
     * @param  given values that the body does not choose, by component; where the body says one all the same, it must be
     *              the same
     */
    public static <T> T read(Class<T> type, JsonObject body, Map<String, ?> given) {
        JsonReading reading = new JsonReading(body);
        Shape<T> shape = Shape.of(type);
        reading.refuseUnknown("", shape, body);
        T record = reading.read(shape, "", given);
        reading.refuseContradictions(shape, given);
        if (record == null || !reading.problems().isEmpty()) {
            throw reading.refusal();
        }
        return record;
    }

    /** A body that does not have the form that this address takes is malformed; what it says is for the record to judge. */
    private static Refusal malformed(String field, String pattern) {
        return new WebRefusal.Within(Refusal.Type.MALFORMED, "web.unreadable", field, pattern);
    }

    @Override
    Refusal missing(String path) {
        return malformed(path, "{field} is required");
    }

    private static Object value(String path, Shape.Field field, JsonValue said) {
        try {
            return field.scalar().fromJson().read(path, said);
        } catch (KernelRefusal.Unfit refusal) {
            Refusal.Problem problem = refusal.problems().getFirst();
            throw malformed(problem.field(), problem.pattern());
        }
    }

    private void refuseContradictions(Shape<?> shape, Map<String, ?> given) {
        for (Shape.Field field : shape.fields()) {
            JsonValue said = body.get(field.name());
            Object is = given.get(field.name());
            if (said != null && said != JsonValue.NULL && is != null && field.type() == Shape.Type.SINGLE) {
                Object read = noted("", () -> value(field.name(), field, said));
                if (read != null && !read.equals(is)) {
                    refused("", malformed(field.name(), "{field} is another than that of the address"));
                }
            }
        }
    }

    private void refuseUnknown(String prefix, Shape<?> shape, JsonObject object) {
        object.keySet().stream()
                .filter(name -> shape.fields().stream().noneMatch(f -> f.name().equals(name)))
                .limit(MOST_UNKNOWN)
                .map(JsonReading::shortened)
                .forEach(name -> refused("", malformed(prefix + name, "{field} is not known here")));
    }

    /** What is said of a name is about as long as any that is known. */
    private static String shortened(String name) {
        return name.length() <= LONGEST_NAME ? name : name.substring(0, LONGEST_NAME) + "\u2026";
    }

    private @Nullable JsonValue at(String path) {
        JsonPointer pointer = JsonWriting.JSON.createPointer(
                "/" + path.replace('.', '/').replace('[', '/').replace("]", ""));
        JsonValue value = pointer.containsValue(body) ? pointer.getValue(body) : JsonValue.NULL;
        return value == JsonValue.NULL ? null : value;
    }

    @Override
    @Nullable
    Object single(String path, Shape.Field field) {
        JsonValue value = at(path);
        return value == null ? null : value(path, field, value);
    }

    @Override
    List<Supplier<Object>> several(String path, Shape.Field field) {
        List<Supplier<Object>> values = new ArrayList<>();
        for (JsonValue one : array(path)) {
            String at = path + "[" + values.size() + "]";
            values.add(() -> value(at, field, one));
        }
        return values;
    }

    @Override
    List<String> rows(String path, Shape.Field field) {
        List<String> rows = new ArrayList<>();
        JsonArray list = array(path);
        for (int i = 0; i < list.size(); i++) {
            String at = path + "[" + i + "]";
            if (list.get(i) instanceof JsonObject object) {
                refuseUnknown(at + ".", field.shape(), object);
                rows.add(at + ".");
            } else {
                refused("", malformed(at, "{field} must be an object"));
            }
        }
        return rows;
    }

    private JsonArray array(String path) {
        JsonValue value = at(path);
        if (value instanceof JsonArray list) {
            if (list.size() > MOST_ROWS) {
                throw new KernelRefusal.TooMany(path, list.size(), MOST_ROWS);
            }
            return list;
        }
        if (value != null) {
            refused("", malformed(path, "{field} must be a list"));
        }
        return JsonValue.EMPTY_JSON_ARRAY;
    }

    @Override
    @Nullable
    String part(String path, Shape.Field field) {
        JsonValue value = at(path);
        if (value == null) {
            return null;
        }
        if (value instanceof JsonObject object) {
            refuseUnknown(path + ".", field.shape(), object);
            return path + ".";
        }
        throw malformed(path, "{field} must be an object");
    }

    /** In JSON, the values by constants are members of an object of their own. */
    @Override
    <T> T made(Shape<T> shape, Map<String, @Nullable Object> values) {
        try {
            return super.made(shape, values);
        } catch (Refusal refusal) {
            throw Elements.byConstant(shape.type(), refusal);
        }
    }

    @Override
    Map<Enum<?>, Supplier<Object>> byConstant(String path, Shape.Field field) {
        Map<Enum<?>, Supplier<Object>> values = new LinkedHashMap<>();
        if (at(path) instanceof JsonObject object) {
            object.forEach((name, said) -> field.keys().stream()
                    .filter(key -> key.name().equals(name))
                    .findFirst()
                    .ifPresentOrElse(
                            key -> values.put(key, () -> value(path + "." + name, field, said)),
                            () -> refused("", malformed(path + "." + name, "{field} is not known here"))));
        } else if (at(path) != null && at(path) != JsonValue.NULL) {
            refused("", malformed(path, "{field} must be an object"));
        }
        return values;
    }
}
