package eaveside.customers.internal;

import eaveside.customers.Customer;
import eaveside.customers.Site;
import eaveside.customers.Surface;
import eaveside.kernel.Records;
import eaveside.kernel.SiteId;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** A stored customer with sites and surfaces, to tell whether a file says anything that is not here yet. */
public record KnownCustomer(Customer customer, List<Site> sites, List<Surface> surfaces) {

    /** Ids and versions aside; a site or surface that is no longer active is known all the same. */
    boolean saysAll(Customer other, List<Site> otherSites, List<Surface> otherSurfaces) {
        if (!saysTheSame(customer, other, "id", "version")) {
            return false;
        }
        Map<SiteId, SiteId> matching = new HashMap<>();
        for (Site site : otherSites) {
            sites.stream()
                    .filter(known -> saysTheSame(known, site, "id", "customer", "active", "version"))
                    .findFirst()
                    .ifPresent(known -> matching.put(site.id(), known.id()));
        }
        return matching.size() == otherSites.size()
                && otherSurfaces.stream()
                        .allMatch(surface -> surfaces.stream()
                                .anyMatch(known -> known.site().equals(matching.get(surface.site()))
                                        && saysTheSame(known, surface, "id", "site", "active", "version")));
    }

    /** Whose it is, how often it was saved and whether it is still there aside. */
    private static <T extends Record> boolean saysTheSame(T known, T other, String... aside) {
        Map<String, @Nullable Object> one = Records.values(known);
        Map<String, @Nullable Object> two = Records.values(other);
        for (String component : aside) {
            one.remove(component);
            two.remove(component);
        }
        return one.equals(two);
    }
}
