package eaveside.customers;

import eaveside.customers.internal.CustomerRow;
import eaveside.customers.internal.Edits;
import eaveside.kernel.UserId;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;

/** Adds a customer, or changes one. */
@Dependent
public class SaveCustomer {
    private final Edits edits;

    @Inject
    public SaveCustomer(Edits edits) {
        this.edits = edits;
    }

    /**
     * Answers what is stored, with its version. Refuses an edit of a version that somebody else has saved over; the
     * same content again is a retry.
     */
    @Transactional
    public Customer save(Customer customer, UserId by) {
        return edits.save(
                CustomerRow.class,
                customer.id().value(),
                customer,
                by,
                stored -> {},
                CustomerRow::new,
                () -> new CustomersRefusal.NoSuchCustomer(customer.id().toString()));
    }
}
