package eaveside.customers;

import eaveside.customers.internal.DuplicateSearch;
import eaveside.kernel.CustomerId;
import eaveside.kernel.Shared;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.List;

/** Finds customers who may have been entered twice: same phone, same email, or same name and address. */
@Shared
public class FindDuplicates {
    private final ReadCustomer readCustomer;
    private final DuplicateSearch duplicateSearch;

    @Inject
    public FindDuplicates(ReadCustomer readCustomer, DuplicateSearch duplicateSearch) {
        this.readCustomer = readCustomer;
        this.duplicateSearch = duplicateSearch;
    }

    /** The customers that this one may be the same as, by name; refuses an unknown one. */
    @Transactional
    public List<Duplicate> of(CustomerId customer) {
        return duplicateSearch.of(readCustomer.customer(customer));
    }
}
