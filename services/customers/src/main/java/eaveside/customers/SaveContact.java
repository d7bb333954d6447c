package eaveside.customers;

import eaveside.access.Edits;
import eaveside.customers.internal.ContactRow;
import eaveside.customers.internal.CustomerRow;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;

/** Adds a contact to a customer, or changes one. */
@Shared
public class SaveContact {
    private final Edits edits;
    private final ReadCustomer readCustomer;

    @Inject
    public SaveContact(Edits edits, ReadCustomer readCustomer) {
        this.edits = edits;
        this.readCustomer = readCustomer;
    }

    /**
     * Answers what is stored, with its version. Refuses what {@link Edits} refuses, an unknown customer, and another
     * customer than was first saved.
     */
    @Transactional
    public Contact save(Contact given, UserId by) {
        // A merge takes the same turn, so that no contact is left behind with the customer merged.
        edits.locked(CustomerRow.class, given.customer());
        Contact contact = given.ofCustomer(readCustomer.kept(given.customer()));
        return edits.save(ContactRow.class, contact.id(), contact, by, stored -> {
            if (stored != null && !stored.customer().equals(contact.customer())) {
                throw new KernelRefusal.Fixed("contact", "customer");
            }
        });
    }
}
