package eaveside.access;

import eaveside.access.internal.AuditSearch;
import eaveside.kernel.Slice;
import eaveside.kernel.UserId;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Instant;
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
            AuditEvent.@Nullable Outcome outcome,
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
     * A line with the name of who did it.
     *
     * @param  byName empty for nobody signed in, and for the command line
     */
    public record Line(Instant at, AuditEvent event, String byName) {}

    /** One page; {@code after} is the key that the page before gave. Refuses another key. */
    @Transactional
    public Slice<Line> lines(Filter filter, @Nullable String after, int size) {
        return search.find(filter, after, size);
    }
}
