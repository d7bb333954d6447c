package eaveside.visits.internal;

import eaveside.catalog.CatalogRefusal;
import eaveside.catalog.ServiceItem;
import eaveside.customers.ReadSurfaces;
import eaveside.customers.Surface;
import eaveside.kernel.Shared;
import eaveside.kernel.SiteId;
import eaveside.kernel.SurfaceId;
import eaveside.visits.VisitRefusal;
import jakarta.inject.Inject;
import org.jspecify.annotations.Nullable;

/** Holds work to surfaces of the visit's own site and of the type that it is for. */
@Shared
class Surroundings {
    private final ReadSurfaces readSurfaces;

    @Inject
    public Surroundings(ReadSurfaces readSurfaces) {
        this.readSurfaces = readSurfaces;
    }

    /** Work on no surface in particular always fits. */
    public void requireFits(SiteId site, @Nullable SurfaceId id, ServiceItem serviceItem) {
        if (id == null) {
            return;
        }
        Surface surface = requireOfSite(site, id);
        if (serviceItem.surfaceType() != null && serviceItem.surfaceType() != surface.type()) {
            throw new CatalogRefusal.ServiceItemDoesNotFit(serviceItem.name(), "is not for " + surface.name());
        }
    }

    public Surface requireOfSite(SiteId site, SurfaceId id) {
        Surface surface = readSurfaces.surface(id);
        if (!surface.site().equals(site)) {
            throw new VisitRefusal.OtherSite("surface");
        }
        return surface;
    }
}
