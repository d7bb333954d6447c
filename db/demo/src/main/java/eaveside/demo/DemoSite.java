package eaveside.demo;

import eaveside.customers.Surface;
import eaveside.customers.SurfaceType;
import eaveside.kernel.CustomerId;
import eaveside.kernel.SiteId;
import java.util.List;
import java.util.Optional;

/**
 * A site with what is on it, as first entered.
 *
 * @param  contact whoever says yes there
 * @param  miles   there and back from the depot
 */
record DemoSite(CustomerId customer, SiteId site, String contact, boolean business, int miles, List<Surface> surfaces) {
    DemoSite {
        surfaces = List.copyOf(surfaces);
    }

    Optional<Surface> first(SurfaceType type) {
        return surfaces.stream().filter(s -> s.type() == type).findFirst();
    }
}
