package eaveside.customers.internal;

import eaveside.customers.Customer;
import eaveside.customers.Site;
import eaveside.customers.Surface;
import eaveside.kernel.CustomerId;
import eaveside.kernel.Shared;
import eaveside.kernel.SiteId;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Tuple;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Looks customers up by name, whatever the accents and capitals. */
@Shared
public class KnownCustomers {
    private final EntityManager entities;
    private final CustomersQueries queries;

    @Inject
    public KnownCustomers(EntityManager entities, CustomersQueries queries) {
        this.entities = entities;
        this.queries = queries;
    }

    /** Those of the names that customers here have already, with these customers. */
    public Map<String, List<KnownCustomer>> named(List<String> names) {
        List<Tuple> found = entities.createNativeQuery(
                        "select n as name, c.id as id from unnest(cast(:names as text[])) n"
                                + " join customer c on c.sort_name = search_words(n) collate \"C\""
                                + " where c.merged_into is null order by c.id",
                        Tuple.class)
                .setParameter("names", names.toArray(String[]::new))
                .getResultList();
        Map<UUID, KnownCustomer> customers = whole(
                found.stream().map(row -> row.get("id", UUID.class)).distinct().toList());
        Map<String, List<KnownCustomer>> named = new LinkedHashMap<>();
        for (Tuple row : found) {
            KnownCustomer customer = customers.get(row.get("id", UUID.class));
            if (customer != null) {
                named.computeIfAbsent(row.get("name", String.class), k -> new ArrayList<>())
                        .add(customer);
            }
        }
        return named;
    }

    private Map<UUID, KnownCustomer> whole(Collection<UUID> ids) {
        Map<CustomerId, List<Site>> sites = queries
                .sitesOf(ids.stream().map(CustomerId::new).toList())
                .stream()
                .map(SiteRow::content)
                .collect(Collectors.groupingBy(Site::customer));
        List<SiteId> siteIds =
                sites.values().stream().flatMap(List::stream).map(Site::id).toList();
        Map<SiteId, List<Surface>> surfaces = queries.surfacesOfAll(siteIds).stream()
                .map(SurfaceRow::content)
                .collect(Collectors.groupingBy(Surface::site));
        return queries.customers(ids).stream()
                .map(CustomerRow::content)
                .map(customer -> whole(customer, sites.getOrDefault(customer.id(), List.of()), surfaces))
                .collect(Collectors.toMap(known -> known.customer().id().value(), Function.identity()));
    }

    private static KnownCustomer whole(Customer customer, List<Site> sites, Map<SiteId, List<Surface>> surfaces) {
        return new KnownCustomer(
                customer,
                sites,
                sites.stream()
                        .flatMap(site -> surfaces.getOrDefault(site.id(), List.of()).stream())
                        .toList());
    }
}
