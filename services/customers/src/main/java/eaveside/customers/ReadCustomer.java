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
import eaveside.kernel.SiteId;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.Collection;
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
@Dependent
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
        Map<CustomerId, CustomerId> kept = queries.customers(values(ids)).stream()
                .collect(Collectors.toMap(row -> row.content().id(), CustomerRow::kept));
        Map<CustomerId, Customer> contents = queries.customers(values(Set.copyOf(kept.values()))).stream()
                .map(CustomerRow::content)
                .collect(Collectors.toMap(Customer::id, Function.identity()));
        return kept.entrySet().stream()
                .collect(Collectors.toUnmodifiableMap(
                        Map.Entry::getKey, asked -> Objects.requireNonNull(contents.get(asked.getValue()))));
    }

    private static List<UUID> values(Collection<CustomerId> ids) {
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
        return queries.sites(ids.stream().map(Id::value).toList()).stream()
                .map(SiteRow::content)
                .collect(Collectors.toUnmodifiableMap(Site::id, Function.identity()));
    }
}
