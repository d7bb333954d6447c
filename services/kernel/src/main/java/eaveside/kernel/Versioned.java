package eaveside.kernel;

import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * Something that several people edit, always a public record. Its version is the one that this content was read with,
 * 0 where it is new; a save must name the version that it started from.
 */
public interface Versioned {
    int version();

    /** The same content under another version. */
    Versioned withVersion(int version);

    /** Whether the other says the same, whatever its version. */
    default boolean saysTheSameAs(Versioned other) {
        return withVersion(0).equals(other.withVersion(0));
    }

    /** The names of the parts in which the other differs, their versions aside. */
    default List<String> differencesFrom(Versioned other) {
        List<String> names = new ArrayList<>();
        for (RecordComponent part : getClass().getRecordComponents()) {
            if (!part.getName().equals("version") && !Objects.equals(read(part, this), read(part, other))) {
                names.add(part.getName());
            }
        }
        return names;
    }

    private static Object read(RecordComponent part, Versioned from) {
        try {
            Object value = part.getAccessor().invoke(from);
            return value == null ? "" : value;
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException("a public record's parts can be read", e);
        }
    }
}
