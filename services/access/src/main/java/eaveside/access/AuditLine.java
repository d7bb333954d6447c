package eaveside.access;

import eaveside.access.AuditEvent.Outcome;
import eaveside.kernel.UserId;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * A line with the name of who did it; see {@link AuditEvent}.
 *
 * @param  by     null for a request without a sign-in, and for the command line
 * @param  byName empty for the same
 */
public record AuditLine(
        Instant at,
        @Nullable UserId by,
        String byName,
        String action,
        String subject,
        String detail,
        Outcome outcome,
        String address) {}
