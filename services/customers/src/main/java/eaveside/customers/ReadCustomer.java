package eaveside.customers;

import eaveside.customers.WholeCustomer.WholeSite;
import eaveside.customers.internal.ContactRow;
import eaveside.customers.internal.CustomerRow;
import eaveside.customers.internal.CustomersQueries;
import eaveside.customers.internal.SiteRow;
import eaveside.customers.internal.SurfaceRow;
import eaveside.kernel.ContactId;
import eaveside.kernel.CustomerId;
import eaveside.kernel.Id;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Shared;
import eaveside.kernel.SiteId;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * Reads customers, their contacts and their sites. Lists hold what is no longer active too, last. Where customers were
 * merged ({@link MergeCustomers}), every id of theirs answers with the customer kept.
 */
@Shared
public class ReadCustomer {
    private final EntityManager entities;
    private final CustomersQueries queries;

    @Inject
    public ReadCustomer(EntityManager entities, CustomersQueries queries) {
        this.entities = entities;
        this.queries = queries;
    }

    @Transactional
    public Customer customer(CustomerId id) {
        return row(kept(id)).content();
    }

    /** The id of the customer that this one was merged into; its own where it was not. Refuses an unknown id. */
    @Transactional
    public CustomerId kept(CustomerId id) {
        return row(id).kept();
    }

    /**
     * Every id that the customer's documents may bear: that of the customer kept first, then those of customers merged
     * into it. Lists of a customer's business read all of them. An unknown id stands for itself.
     */
    @Transactional
    public List<CustomerId> idsOf(CustomerId customer) {
        CustomerRow row = entities.find(CustomerRow.class, customer.value());
        if (row == null) {
            return List.of(customer);
        }
        List<CustomerId> ids = new ArrayList<>();
        ids.add(row.kept());
        ids.addAll(queries.mergedInto(row.kept()));
        return List.copyOf(ids);
    }

    /** The same for several customers at once, in no order; unknown ids are left out. */
    @Transactional
    public List<CustomerId> idsOf(Collection<CustomerId> customers) {
        return queries.idsOf(customers);
    }

    /** Several at once, for lists, by the ids asked for; unknown ids are left out. */
    @Transactional
    public Map<CustomerId, Customer> customers(Collection<CustomerId> ids) {
        List<CustomerRow> asked = queries.customers(values(ids));
        Map<CustomerId, Customer> contents = new HashMap<>();
        asked.forEach(row -> contents.put(row.content().id(), row.content()));
        // Few were merged into another, which is read only where it was not asked for itself.
        Set<CustomerId> others = asked.stream()
                .map(CustomerRow::kept)
                .filter(kept -> !contents.containsKey(kept))
                .collect(Collectors.toSet());
        if (!others.isEmpty()) {
            queries.customers(values(others))
                    .forEach(row -> contents.put(row.content().id(), row.content()));
        }
        return asked.stream()
                .collect(Collectors.toUnmodifiableMap(
                        row -> row.content().id(), row -> Objects.requireNonNull(contents.get(row.kept()))));
    }

    /** What several are called, for lists: one that was merged into another, as that one. */
    @Transactional
    public Map<CustomerId, String> customerNames(Collection<CustomerId> ids) {
        return queries.customerNames(values(ids)).stream()
                .collect(Collectors.toUnmodifiableMap(
                        called -> new CustomerId(called.id()), CustomersQueries.Called::name));
    }

    /** What several sites are called, for lists. */
    @Transactional
    public Map<SiteId, String> siteNames(Collection<SiteId> ids) {
        return queries.siteNames(values(ids)).stream()
                .collect(
                        Collectors.toUnmodifiableMap(called -> new SiteId(called.id()), CustomersQueries.Called::name));
    }

    private static List<UUID> values(Collection<? extends Id> ids) {
        return ids.stream().map(Id::value).toList();
    }

    private CustomerRow row(CustomerId id) {
        CustomerRow row = entities.find(CustomerRow.class, id.value());
        if (row == null) {
            throw new KernelRefusal.NotFound("customer", id);
        }
        return row;
    }

    @Transactional
    public List<Contact> contacts(CustomerId customer) {
        return queries.contactsOf(idsOf(customer)).stream()
                .map(ContactRow::content)
                .toList();
    }

    @Transactional
    public List<Site> sites(CustomerId customer) {
        return queries.sitesOf(idsOf(customer)).stream().map(SiteRow::content).toList();
    }

    /** Everything of a customer at once. */
    @Transactional
    public WholeCustomer whole(CustomerId id) {
        List<Site> sites = sites(id);
        Map<SiteId, List<Surface>> surfaces = queries
                .surfacesOfAll(sites.stream().map(Site::id).toList())
                .stream()
                .map(SurfaceRow::content)
                .collect(Collectors.groupingBy(Surface::site));
        return new WholeCustomer(
                customer(id),
                contacts(id),
                sites.stream()
                        .map(site -> new WholeSite(site, surfaces.getOrDefault(site.id(), List.of())))
                        .toList());
    }

    /** A contact of the customer's. */
    @Transactional
    public Contact contact(CustomerId customer, ContactId id) {
        return contacts(customer).stream()
                .filter(contact -> contact.id().equals(id))
                .findFirst()
                .orElseThrow(() -> new KernelRefusal.NotFound("contact", id));
    }

    @Transactional
    public Site site(SiteId id) {
        SiteRow row = entities.find(SiteRow.class, id.value());
        if (row == null) {
            throw new KernelRefusal.NotFound("site", id);
        }
        return row.content();
    }

    /** Several at once, for lists; unknown ids are left out. */
    @Transactional
    public Map<SiteId, Site> sites(Collection<SiteId> ids) {
        return queries.sites(values(ids)).stream()
                .map(SiteRow::content)
                .collect(Collectors.toUnmodifiableMap(Site::id, Function.identity()));
    }
}
