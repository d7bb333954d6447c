package eaveside.pricing;

import eaveside.kernel.QuoteId;
import eaveside.kernel.UserId;
import eaveside.kernel.Versioned;
import java.util.List;

/**
 * The whole new scope.
 *
 * @param  version the one that the change started from
 */
public record QuoteRevision(QuoteId id, int version, QuoteScope scope, UserId by) implements QuoteChange {
    /** By the parts of the scope; the version where only the status has changed. */
    @Override
    public List<String> differencesFrom(Versioned other) {
        return Versioned.differencesWithin("scope", scope, ((QuoteRevision) other).scope);
    }
}
