package eaveside.kernel;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * Something that several people edit, always a public record with a component {@code version}: the one that this content
 * was read with, 0 where it is new. A save must name the version that it started from.
 */
public interface Versioned {
    int version();

    /** The same content under another version. */
    default Versioned withVersion(int version) {
        return (Versioned) Records.with((Record) this, "version", version);
    }

    /** What it is, in one or two words, such as {@code service line}. */
    default String what() {
        return getClass().getSimpleName().replaceAll("(?<=[a-z])(?=[A-Z])", " ").toLowerCase(Locale.ROOT);
    }

    /** Whether the other says the same, whatever its version. */
    default boolean saysTheSameAs(Versioned other) {
        return withVersion(0).equals(other.withVersion(0));
    }

    /** The names of the parts in which the other differs, their versions aside. */
    default List<String> differencesFrom(Versioned other) {
        Map<String, @Nullable Object> theirs = Records.values((Record) other);
        List<String> names = new ArrayList<>();
        Records.values((Record) this).forEach((name, value) -> {
            if (!name.equals("version") && !Objects.equals(value, theirs.get(name))) {
                names.add(name);
            }
        });
        return names;
    }
}
