package eaveside.customers;

import eaveside.customers.internal.Likeness;
import eaveside.kernel.CustomerId;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.List;

/** Finds customers who may have been entered twice: same phone, same email, or same name and address. */
@Dependent
public class FindDuplicates {
    private final ReadCustomer readCustomer;
    private final Likeness likeness;

    @Inject
    public FindDuplicates(ReadCustomer readCustomer, Likeness likeness) {
        this.readCustomer = readCustomer;
        this.likeness = likeness;
    }

    /** The customers that this one may be the same as, by name; refuses an unknown one. */
    @Transactional
    public List<Duplicate> of(CustomerId customer) {
        return likeness.of(readCustomer.customer(customer));
    }
}
