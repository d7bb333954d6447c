package eaveside.customers;

import eaveside.customers.internal.ContactRow;
import eaveside.customers.internal.CustomerRow;
import eaveside.customers.internal.CustomersQueries;
import eaveside.customers.internal.SiteRow;
import eaveside.kernel.CustomerId;
import eaveside.kernel.Id;
import eaveside.kernel.SiteId;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Reads customers, their contacts and their sites. Lists hold what is no longer active too, last. */
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
        CustomerRow row = entities.find(CustomerRow.class, id.value());
        if (row == null) {
            throw new CustomersRefusal.NoSuchCustomer(id.toString());
        }
        return row.content();
    }

    /** Several at once, for lists; unknown ids are left out. */
    @Transactional
    public Map<CustomerId, Customer> customers(Collection<CustomerId> ids) {
        return queries.customers(ids.stream().map(Id::value).toList()).stream()
                .map(CustomerRow::content)
                .collect(Collectors.toUnmodifiableMap(Customer::id, Function.identity()));
    }

    @Transactional
    public List<Contact> contacts(CustomerId customer) {
        return queries.contactsOf(customer.value()).stream()
                .map(ContactRow::content)
                .toList();
    }

    @Transactional
    public List<Site> sites(CustomerId customer) {
        return queries.sitesOf(customer.value()).stream().map(SiteRow::content).toList();
    }

    @Transactional
    public Site site(SiteId id) {
        SiteRow row = entities.find(SiteRow.class, id.value());
        if (row == null) {
            throw new CustomersRefusal.NoSuchSite(id.toString());
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
