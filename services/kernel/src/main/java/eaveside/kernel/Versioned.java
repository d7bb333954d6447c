package eaveside.kernel;

import java.util.ArrayList;
import java.util.List;
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
        return CamelCase.words(getClass().getSimpleName(), " ");
    }

    /** Whether the other says the same, whatever its version. */
    default boolean saysTheSameAs(Versioned other) {
        return withVersion(0).equals(other.withVersion(0));
    }

    /**
     * The names of the parts in which the other differs; {@code version} where they say the same. The other may be of another
     * kind, where this is a change of it: then only what both say counts.
     */
    default List<String> differencesFrom(Versioned other) {
        return differences((Record) this, (Record) other);
    }

    /** As {@link #differencesFrom}, where a component of that name holds what is edited. */
    static List<String> differencesWithin(String component, Record mine, Record theirs) {
        return differences(mine, theirs).stream()
                .map(name -> name.equals("version") ? name : component + "." + name)
                .toList();
    }

    private static List<String> differences(Record mine, Record theirs) {
        Map<String, @Nullable Object> others = Records.values(theirs);
        List<String> names = new ArrayList<>();
        Records.values(mine).forEach((name, value) -> {
            boolean counts = !name.equals("version") && !name.equals("by") && others.containsKey(name);
            if (counts && !Objects.equals(value, others.get(name))) {
                names.add(name);
            }
        });
        return names.isEmpty() ? List.of("version") : names;
    }
}
