package eaveside.access;

import eaveside.access.AuditEvent.Outcome;
import eaveside.access.internal.AuditSearch;
import eaveside.kernel.Slice;
import eaveside.kernel.UserId;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import org.jspecify.annotations.Nullable;

/** Reads the audit log of who did what, newest first. */
@Dependent
public class ReadAudit {
    private final AuditSearch search;

    @Inject
    public ReadAudit(AuditSearch search) {
        this.search = search;
    }

    /**
     * Which lines; null lets all through.
     *
     * @param  action an action, or the beginning of one that ends with a dot, such as {@code invoice.}
     * @param  until  exclusive
     */
    public record Filter(
            @Nullable UserId by,
            @Nullable String action,
            @Nullable Outcome outcome,
            @Nullable Instant from,
            @Nullable Instant until) {
        /** Refuses an action that none can be called. */
        public Filter {
            if (action != null && !AuditEvent.isAction(action)) {
                throw new AccessRefusal.BadAction();
            }
        }

        public static Filter everything() {
            return new Filter(null, null, null, null, null);
        }
    }

    /**
     * Which lines people ask for, by whole days; null lets all through.
     *
     * @param  action as in {@link Filter}
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
        public Filter in(ZoneId zone) {
            return new Filter(
                    by,
                    action,
                    outcome,
                    from == null ? null : from.atStartOfDay(zone).toInstant(),
                    to == null ? null : to.plusDays(1).atStartOfDay(zone).toInstant());
        }
    }

    /**
     * A line with the name of who did it; see {@link AuditEvent}.
     *
     * @param  by     null for a request without a sign-in, and for the command line
     * @param  byName empty for the same
     */
    public record Line(
            Instant at,
            @Nullable UserId by,
            String byName,
            String action,
            String subject,
            String detail,
            Outcome outcome,
            String address) {}

    /** One page; {@code after} is the key that the page before gave. Refuses another key. */
    @Transactional
    public Slice<Line> lines(Filter filter, @Nullable String after, int size) {
        return search.find(filter, after, size);
    }
}
