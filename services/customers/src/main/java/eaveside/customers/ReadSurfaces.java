package eaveside.customers;

import eaveside.customers.internal.CustomersQueries;
import eaveside.customers.internal.SurfaceCountRow;
import eaveside.customers.internal.SurfaceRow;
import eaveside.kernel.Id;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Shared;
import eaveside.kernel.SiteId;
import eaveside.kernel.SurfaceId;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Reads surfaces and how often they were counted. */
@Shared
public class ReadSurfaces {
    private final EntityManager entities;
    private final CustomersQueries queries;

    @Inject
    public ReadSurfaces(EntityManager entities, CustomersQueries queries) {
        this.entities = entities;
        this.queries = queries;
    }

    @Transactional
    public Surface surface(SurfaceId id) {
        SurfaceRow row = entities.find(SurfaceRow.class, id.value());
        if (row == null) {
            throw new KernelRefusal.NotFound("surface", id);
        }
        return row.content();
    }

    /** Several at once, for lists; unknown ids are left out. */
    @Transactional
    public Map<SurfaceId, Surface> surfaces(Collection<SurfaceId> ids) {
        return queries.surfaces(ids.stream().map(Id::value).toList()).stream()
                .map(SurfaceRow::content)
                .collect(Collectors.toUnmodifiableMap(Surface::id, Function.identity()));
    }

    /** By type and name; those no longer active too. */
    @Transactional
    public List<Surface> ofSite(SiteId site) {
        return queries.surfacesOf(site).stream().map(SurfaceRow::content).toList();
    }

    /** The histories of several surfaces at once, each as {@link #history} has it. */
    @Transactional
    public Map<SurfaceId, List<SurfaceCount>> histories(Collection<SurfaceId> surfaces) {
        return queries.countsOfAll(surfaces.stream().map(Id::value).toList()).stream()
                .map(SurfaceCountRow::toCount)
                .collect(Collectors.groupingBy(SurfaceCount::surface));
    }

    /** Every extent that the surface has had, the first count first. */
    @Transactional
    public List<SurfaceCount> history(SurfaceId surface) {
        return queries.countsOf(surface.value()).stream()
                .map(SurfaceCountRow::toCount)
                .toList();
    }
}
