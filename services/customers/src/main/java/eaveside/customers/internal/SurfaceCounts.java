package eaveside.customers.internal;

import eaveside.customers.SurfaceCount;
import eaveside.kernel.Shared;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;

/** The history of surfaces' extents. */
@Shared
public class SurfaceCounts {
    private final EntityManager entities;
    private final CustomersQueries queries;

    @Inject
    public SurfaceCounts(EntityManager entities, CustomersQueries queries) {
        this.entities = entities;
        this.queries = queries;
    }

    /** Notes a new extent; nothing where it is the one before. To be called by whoever holds the surface's turn. */
    public void note(SurfaceCount count) {
        if (!count.to().equals(count.from())) {
            int entry = count.from() == null
                    ? 1
                    : queries.countsOf(count.surface().value()).size() + 1;
            entities.persist(new SurfaceCountRow(count, entry));
            entities.flush();
        }
    }
}
