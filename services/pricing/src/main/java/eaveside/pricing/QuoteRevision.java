package eaveside.pricing;

import eaveside.kernel.QuoteId;
import eaveside.kernel.Records;
import eaveside.kernel.UserId;
import eaveside.kernel.Versioned;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * The whole new scope.
 *
 * @param  version the one that the change started from
 */
public record QuoteRevision(QuoteId id, int version, QuoteScope scope, UserId by) implements QuoteChange {
    /** By the parts of the scope; the version where only the status has changed. */
    @Override
    public List<String> differencesFrom(Versioned other) {
        Map<String, @Nullable Object> theirs = Records.values(((QuoteRevision) other).scope);
        List<String> names = Records.values(scope).entrySet().stream()
                .filter(part -> !Objects.equals(part.getValue(), theirs.get(part.getKey())))
                .map(Map.Entry::getKey)
                .toList();
        return names.isEmpty() ? List.of("version") : names;
    }
}
