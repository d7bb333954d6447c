package eaveside.web.settings;

import eaveside.access.AuditEvent;
import eaveside.access.ReadAudit;
import eaveside.kernel.UserId;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import org.jspecify.annotations.Nullable;

/** Which lines of the audit log a page or a script asks for, whose days are days where the company is. */
final class AuditLogDays {
    private AuditLogDays() {}

    /**
     * The lines of the days from the first to the last, both included; null lets all through. Refuses an action that none
     * can be called.
     */
    @SuppressWarnings("NullAway") // it does not see in a class file that a nested type, the outcome's, may be null
    static ReadAudit.Filter filter(
            @Nullable UserId by,
            @Nullable String action,
            AuditEvent.@Nullable Outcome outcome,
            @Nullable LocalDate first,
            @Nullable LocalDate last,
            ZoneId zone) {
        return new ReadAudit.Filter(
                by,
                action,
                outcome,
                first == null ? null : start(first, zone),
                last == null ? null : start(last.plusDays(1), zone));
    }

    private static Instant start(LocalDate day, ZoneId zone) {
        return day.atStartOfDay(zone).toInstant();
    }
}
