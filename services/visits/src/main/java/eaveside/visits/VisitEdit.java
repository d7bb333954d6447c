package eaveside.visits;

import eaveside.kernel.Records;
import eaveside.kernel.Versioned;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * A change of a stored visit, or of what its job sheet changed in scope. It names the version that it started from, so that
 * nobody overwrites what they have not seen.
 */
public sealed interface VisitEdit extends Versioned permits Cancellation, ScopeChangeDecision, Rescheduling {
    @Override
    default String what() {
        return "visit";
    }

    /** What both say, each in another way; the version where they say the same. */
    @Override
    default List<String> differencesFrom(Versioned other) {
        Map<String, @Nullable Object> theirs = Records.values((Record) other);
        List<String> names = Records.values((Record) this).entrySet().stream()
                .filter(mine -> theirs.containsKey(mine.getKey()))
                .filter(mine -> !List.of("version", "by").contains(mine.getKey()))
                .filter(mine -> !Objects.equals(mine.getValue(), theirs.get(mine.getKey())))
                .map(Map.Entry::getKey)
                .toList();
        return names.isEmpty() ? List.of("version") : names;
    }
}
