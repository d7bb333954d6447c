package eaveside.customers.internal;

import eaveside.kernel.Quantity;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.VisitId;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import org.jspecify.annotations.Nullable;

/** The history of surfaces' extents. */
@Dependent
public class SurfaceCounts {
    private final EntityManager entities;
    private final CustomersQueries queries;

    @Inject
    public SurfaceCounts(EntityManager entities, CustomersQueries queries) {
        this.entities = entities;
        this.queries = queries;
    }

    /**
     * Notes a new extent; nothing where it is the one before. To be called by whoever holds the surface's turn.
     *
     * @param  before null for a new surface
     */
    public void note(
            SurfaceId surface, @Nullable Quantity before, Quantity after, @Nullable VisitId visit, Signature by) {
        if (!after.equals(before)) {
            int entry = before == null ? 1 : queries.countsOf(surface.value()).size() + 1;
            entities.persist(new SurfaceCountRow(surface, entry, before, after, visit, by));
            entities.flush();
        }
    }
}
