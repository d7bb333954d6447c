package eaveside.access.internal;

import eaveside.access.AuditFilter;
import eaveside.access.AuditLine;
import eaveside.kernel.PageKey;
import eaveside.kernel.Shared;
import eaveside.kernel.Slice;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Pages through the audit log by the moment and the id of its lines. */
@Shared
public class AuditSearch {
    private final EntityManager entities;

    @Inject
    public AuditSearch(EntityManager entities) {
        this.entities = entities;
    }

    /** A line's row with the name of its user. */
    record Found(AuditRow row, @Nullable String byName) {}

    public Slice<AuditLine> find(AuditFilter filter, @Nullable String after, int size) {
        StringBuilder where = new StringBuilder("1 = 1");
        Map<String, Object> parameters = new LinkedHashMap<>();
        add(where, parameters, "a.userId = :by", "by", filter.by());
        add(where, parameters, "a.outcome = :outcome", "outcome", filter.outcome());
        add(where, parameters, "a.at >= :from", "from", filter.from());
        add(where, parameters, "a.at < :until", "until", filter.until());
        String action = filter.action();
        if (action != null && action.endsWith(".")) {
            add(where, parameters, "left(a.action, " + action.length() + ") = :action", "action", action);
        } else {
            add(where, parameters, "a.action = :action", "action", action);
        }
        if (after != null) {
            PageKey<Instant> key = PageKey.beforeMoment(after);
            add(where, parameters, "(a.at, a.id) < (:at, :id)", "at", key.sort());
            parameters.put("id", key.id());
        }
        var query = entities.createQuery(
                "select a, u.name from AuditRow a left join UserRow u on u.id = a.userId where " + where
                        + " order by a.at desc, a.id desc",
                Found.class);
        parameters.forEach(query::setParameter);
        List<Found> rows = query.setMaxResults(size + 1).getResultList();
        return Slice.of(rows, size, found -> found.row().key())
                .map(found -> found.row().toLine(found.byName()));
    }

    private static void add(
            StringBuilder where,
            Map<String, Object> parameters,
            String condition,
            String name,
            @Nullable Object value) {
        if (value != null) {
            where.append(" and ").append(condition);
            parameters.put(name, value);
        }
    }
}
