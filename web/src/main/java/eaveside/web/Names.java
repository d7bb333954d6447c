package eaveside.web;

import eaveside.access.ReadUsers;
import eaveside.catalog.Catalog;
import eaveside.customers.ReadCustomer;
import eaveside.customers.ReadSurfaces;
import eaveside.customers.Site;
import eaveside.inventory.Lot;
import eaveside.inventory.ReadStock;
import eaveside.kernel.CustomerId;
import eaveside.kernel.LocationId;
import eaveside.kernel.LotId;
import eaveside.kernel.MixId;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.SiteId;
import eaveside.kernel.StockItemId;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.UserId;
import eaveside.ledger.EntryLine;
import eaveside.visits.Visit;
import jakarta.enterprise.context.RequestScoped;
import jakarta.inject.Inject;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** What ids are called, each looked up once in a request. */
@RequestScoped
public class Names {
    private final Map<Object, String> known = new HashMap<>();
    private final Map<SiteId, Site> sites = new HashMap<>();

    @Inject
    ReadUsers readUsers;

    @Inject
    Catalog catalog;

    @Inject
    ReadCustomer readCustomer;

    @Inject
    ReadSurfaces readSurfaces;

    @Inject
    ReadStock readStock;

    public String user(@Nullable UserId id) {
        return known(id, readUsers::nameOf);
    }

    public String users(List<UserId> ids) {
        return String.join(", ", ids.stream().map(this::user).toList());
    }

    public String site(SiteId id) {
        return sites.computeIfAbsent(id, readCustomer::site).name();
    }

    /** Where the site is. */
    public String address(SiteId id) {
        return sites.computeIfAbsent(id, readCustomer::site).address().oneLine();
    }

    public String serviceItem(ServiceItemId id) {
        return known(id, k -> catalog.serviceItem(k).name());
    }

    public String surface(@Nullable SurfaceId id) {
        return known(id, k -> readSurfaces.surface(k).name());
    }

    public String line(@Nullable ServiceLineId id) {
        return known(id, k -> catalog.line(k).name());
    }

    public String customer(@Nullable CustomerId id) {
        return known(id, k -> readCustomer.customer(k).name());
    }

    private <I> String known(@Nullable I id, Function<I, String> lookUp) {
        return id == null ? "" : known.computeIfAbsent(id, k -> lookUp.apply(id));
    }

    /** Looks several customers up at once, for a list that is about to name them. */
    public void lookUp(Collection<CustomerId> customers) {
        known.putAll(readCustomer.customerNames(customers));
    }

    /** Looks several users up at once. */
    public void lookUpUsers(Stream<UserId> users) {
        known.putAll(readUsers.namesOf(users.distinct().toList()));
    }

    /** Looks all service lines up at once, for what is about to name several. */
    public void lookUpLines() {
        catalog.lines().forEach(line -> known.put(line.id(), line.name()));
    }

    /** Looks up at once what work at the site may name: every service with its line, and the site's surfaces. */
    public void lookUpWork(SiteId site) {
        lookUpLines();
        catalog.serviceItems().forEach(service -> known.put(service.id(), service.name()));
        readSurfaces.ofSite(site).forEach(surface -> known.put(surface.id(), surface.name()));
    }

    /** Looks up at once whom the visits of a list are for, and where they are. */
    public void lookUpVisits(List<Visit.Summary> visits) {
        lookUp(visits.stream().map(Visit.Summary::customer).distinct().toList());
        sites.putAll(readCustomer.sites(
                visits.stream().map(Visit.Summary::site).distinct().toList()));
    }

    public String item(StockItemId id) {
        return known(id, k -> readStock.item(k).name());
    }

    /** Looks all items of the stock up at once, for what is about to name several. */
    public void lookUpItems() {
        readStock.items().forEach(item -> known.put(item.id(), item.name()));
    }

    /** A canister or brush, or a batch of another item. */
    public String lot(LotId id) {
        String name = known.get(id);
        if (name == null) {
            Lot lot = readStock.lot(id);
            name = (item(lot.item()) + " " + lot.label()).strip();
            known.put(id, name);
        }
        return name;
    }

    /** An item, or one lot of it. */
    public String item(StockItemId id, @Nullable LotId lot) {
        return lot == null ? item(id) : lot(lot);
    }

    public String mix(MixId id) {
        return known(id, k -> readStock.mix(k).name());
    }

    public String location(@Nullable LocationId id) {
        return known(id, k -> readStock.location(k).name());
    }

    /** The service line and customer of an entry, as a short phrase. */
    public String about(EntryLine entry) {
        String line = line(entry.serviceLine());
        String customer = customer(entry.customer());
        return line.isEmpty() || customer.isEmpty() ? line + customer : line + ", " + customer;
    }
}
