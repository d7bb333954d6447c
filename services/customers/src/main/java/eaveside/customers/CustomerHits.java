package eaveside.customers;

import eaveside.kernel.ContactId;
import eaveside.kernel.CustomerId;
import eaveside.kernel.SiteId;
import java.util.List;

/**
 * What a search found among customers, the best of each first.
 *
 * @param  spelled whether what was typed is there as it was typed; otherwise this is what comes close to it
 */
public record CustomerHits(
        List<CustomerLine> customers, List<SiteHit> sites, List<ContactHit> contacts, boolean spelled) {
    public CustomerHits {
        customers = List.copyOf(customers);
        sites = List.copyOf(sites);
        contacts = List.copyOf(contacts);
    }

    public boolean isEmpty() {
        return customers.isEmpty() && sites.isEmpty() && contacts.isEmpty();
    }

    /** A site, with its customer. */
    public record SiteHit(
            SiteId id, String name, String street, String city, CustomerId customer, String customerName) {}

    /** A contact, with its customer. */
    public record ContactHit(
            ContactId id, String name, String phone, String email, CustomerId customer, String customerName) {}
}
