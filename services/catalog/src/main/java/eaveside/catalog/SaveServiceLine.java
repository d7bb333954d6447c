package eaveside.catalog;

import eaveside.catalog.internal.CatalogQueries;
import eaveside.catalog.internal.ServiceLineRow;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.UserId;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Clock;

/** Adds a service line, or changes one. */
@Dependent
public class SaveServiceLine {
    private final EntityManager entities;
    private final CatalogQueries queries;
    private final Clock clock;

    @Inject
    public SaveServiceLine(EntityManager entities, CatalogQueries queries, Clock clock) {
        this.entities = entities;
        this.queries = queries;
        this.clock = clock;
    }

    /**
     * Answers what is stored, with its version. Refuses a code that is taken, and an edit of a version that somebody
     * else has saved over; the same content again is a retry.
     */
    @Transactional
    public ServiceLine save(ServiceLine line, UserId by) {
        queries.takeTurn(CatalogQueries.CATALOG);
        ServiceLineRow row = entities.find(ServiceLineRow.class, line.id().value());
        if (row != null && row.toServiceLine().saysTheSameAs(line)) {
            return row.toServiceLine();
        }
        if (row == null && line.version() != 0) {
            throw new CatalogRefusal.NoSuchServiceLine(line.id().toString());
        }
        if (row != null && row.toServiceLine().version() != line.version()) {
            throw new KernelRefusal.Stale(line.what(), line, row.toServiceLine());
        }
        for (ServiceLineRow other : queries.linesCoded(line.code())) {
            if (!other.toServiceLine().id().equals(line.id())) {
                throw new CatalogRefusal.CodeTaken(
                        line.code(), other.toServiceLine().name());
            }
        }
        if (row == null) {
            row = new ServiceLineRow(line, by, clock.instant());
            entities.persist(row);
        } else {
            row.write(line, by, clock.instant());
        }
        entities.flush();
        return row.toServiceLine();
    }
}
