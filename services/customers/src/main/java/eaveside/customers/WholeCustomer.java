package eaveside.customers;

import java.util.List;

/** A customer with all that belongs to it: contacts, and sites with their surfaces; active ones first. */
public record WholeCustomer(Customer customer, List<Contact> contacts, List<WholeSite> sites) {
    /** A site with its surfaces, by type and name. */
    public record WholeSite(Site site, List<Surface> surfaces) {}
}
