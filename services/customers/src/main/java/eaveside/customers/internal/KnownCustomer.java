package eaveside.customers.internal;

import eaveside.customers.Customer;
import eaveside.customers.Site;
import eaveside.customers.Surface;
import eaveside.kernel.SiteId;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** A stored customer with sites and surfaces, to tell whether a file says anything that is not here yet. */
public record KnownCustomer(Customer customer, List<Site> sites, List<Surface> surfaces) {

    /** Ids and versions aside; a site or surface that is no longer active is known all the same. */
    boolean saysAll(Customer other, List<Site> otherSites, List<Surface> otherSurfaces) {
        if (!saysTheSame(other)) {
            return false;
        }
        Map<SiteId, SiteId> matching = new HashMap<>();
        for (Site site : otherSites) {
            sites.stream()
                    .filter(known -> saysTheSame(known, site))
                    .findFirst()
                    .ifPresent(known -> matching.put(site.id(), known.id()));
        }
        return matching.size() == otherSites.size()
                && otherSurfaces.stream()
                        .allMatch(surface -> surfaces.stream()
                                .anyMatch(known -> known.siteId().equals(matching.get(surface.siteId()))
                                        && saysTheSame(known, surface)));
    }

    private boolean saysTheSame(Customer other) {
        return customer.equals(new Customer(
                customer.id(),
                other.name(),
                other.type(),
                other.address(),
                other.email(),
                other.phone(),
                other.paymentTermDays(),
                other.note(),
                other.active(),
                customer.version()));
    }

    private static boolean saysTheSame(Site known, Site other) {
        return known.equals(new Site(
                known.id(),
                known.customerId(),
                other.name(),
                other.address(),
                other.accessNotes(),
                other.hazards(),
                other.waterOnSite(),
                known.active(),
                known.version()));
    }

    private static boolean saysTheSame(Surface known, Surface other) {
        return known.equals(new Surface(
                known.id(),
                known.siteId(),
                other.type(),
                other.name(),
                other.extent(),
                other.rows(),
                other.panelManufacturer(),
                other.attributes(),
                known.active(),
                known.version()));
    }
}
