package eaveside.visits;

import eaveside.kernel.DocumentId;
import eaveside.kernel.Quantity;
import eaveside.kernel.ScopeChangeId;
import eaveside.kernel.UserId;
import eaveside.kernel.Versioned;
import eaveside.kernel.VisitId;
import eaveside.kernel.VisitLineId;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * What a job sheet did not do of the plan, or did beyond it, and what the office decided about it.
 *
 * @param  reason of skipped work
 * @param  by     who decided; absent while open
 */
public record ScopeChange(
        ScopeChangeId id,
        VisitId visit,
        DocumentId sheet,
        VisitLineId line,
        ScopeChangeType type,
        Quantity quantity,
        @Nullable SkipReason reason,
        ScopeDecision decision,
        @Nullable UserId by,
        @Nullable Instant at,
        String note,
        int version)
        implements Versioned {}
