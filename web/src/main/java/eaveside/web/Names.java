package eaveside.web;

import eaveside.access.ReadUsers;
import eaveside.catalog.Catalog;
import eaveside.customers.ReadCustomer;
import eaveside.customers.ReadSurfaces;
import eaveside.kernel.CustomerId;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.SiteId;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.UserId;
import eaveside.ledger.EntryLine;
import jakarta.enterprise.context.RequestScoped;
import jakarta.inject.Inject;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** What ids are called, each looked up once in a request. */
@RequestScoped
public class Names {
    private final Map<Object, String> known = new HashMap<>();

    @Inject
    ReadUsers readUsers;

    @Inject
    Catalog catalog;

    @Inject
    ReadCustomer readCustomer;

    @Inject
    ReadSurfaces readSurfaces;

    public String user(@Nullable UserId id) {
        return id == null ? "" : known.computeIfAbsent(id, k -> readUsers.nameOf(id));
    }

    public String users(List<UserId> ids) {
        return String.join(", ", ids.stream().map(this::user).toList());
    }

    public String site(SiteId id) {
        return known.computeIfAbsent(id, k -> readCustomer.site(id).name());
    }

    public String serviceItem(ServiceItemId id) {
        return known.computeIfAbsent(id, k -> catalog.serviceItem(id).name());
    }

    public String surface(@Nullable SurfaceId id) {
        return id == null
                ? ""
                : known.computeIfAbsent(id, k -> readSurfaces.surface(id).name());
    }

    public String line(@Nullable ServiceLineId id) {
        return id == null ? "" : known.computeIfAbsent(id, k -> catalog.line(id).name());
    }

    public String customer(@Nullable CustomerId id) {
        return id == null
                ? ""
                : known.computeIfAbsent(id, k -> readCustomer.customer(id).name());
    }

    /** Looks several customers up at once, for a list that is about to name them. */
    public void lookUp(Collection<CustomerId> customers) {
        known.putAll(readCustomer.customerNames(customers));
    }

    /** The service line and customer of an entry, as a short phrase. */
    public String about(EntryLine entry) {
        String line = line(entry.serviceLine());
        String customer = customer(entry.customer());
        return line.isEmpty() || customer.isEmpty() ? line + customer : line + ", " + customer;
    }
}
