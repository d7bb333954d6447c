package eaveside.access;

import eaveside.access.AuditEvent.Outcome;
import eaveside.kernel.UserId;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * Which lines; null lets all through.
 *
 * @param  action an action, or the beginning of one that ends with a dot, such as {@code invoice.}
 * @param  until  exclusive
 */
public record AuditFilter(
        @Nullable UserId by,
        @Nullable String action,
        @Nullable Outcome outcome,
        @Nullable Instant from,
        @Nullable Instant until) {
    /** Refuses an action that none can be called. */
    public AuditFilter {
        if (action != null && !AuditEvent.isAction(action)) {
            throw new AccessRefusal.BadAction();
        }
    }

    public static AuditFilter everything() {
        return new AuditFilter(null, null, null, null, null);
    }
}
