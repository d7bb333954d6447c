package eaveside.access;

import eaveside.access.AuditEvent.Outcome;
import eaveside.access.internal.AuditSearch;
import eaveside.kernel.Shared;
import eaveside.kernel.Slice;
import eaveside.kernel.UserId;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.time.ZoneId;
import org.jspecify.annotations.Nullable;

/** Reads the audit log of who did what, newest first. */
@Shared
public class ReadAudit {
    private final AuditSearch search;

    @Inject
    public ReadAudit(AuditSearch search) {
        this.search = search;
    }

    /**
     * Which lines people ask for, by whole days; null lets all through.
     *
     * @param  action as in {@link AuditFilter}
     * @param  from   the first day
     * @param  to     the last day
     */
    public record Asked(
            @Nullable UserId by,
            @Nullable String action,
            @Nullable Outcome outcome,
            @Nullable LocalDate from,
            @Nullable LocalDate to) {
        /** Refuses an action that none can be called. */
        public Asked {
            if (action != null && !AuditEvent.isAction(action)) {
                throw new AccessRefusal.BadAction();
            }
        }

        /** The same where the days begin at midnight of the zone. */
        public AuditFilter in(ZoneId zone) {
            return new AuditFilter(
                    by,
                    action,
                    outcome,
                    from == null ? null : from.atStartOfDay(zone).toInstant(),
                    to == null ? null : to.plusDays(1).atStartOfDay(zone).toInstant());
        }
    }

    /** One page; {@code after} is the key that the page before gave. Refuses another key. */
    @Transactional
    public Slice<AuditLine> lines(AuditFilter filter, @Nullable String after, int size) {
        return search.find(filter, after, size);
    }
}
