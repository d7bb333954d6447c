package eaveside.customers;

import eaveside.kernel.UserId;
import jakarta.enterprise.context.Dependent;
import jakarta.transaction.Transactional;

/** Imports customers with their sites and surfaces from a CSV file, all or nothing. */
@Dependent
public class ImportCustomers {
    /** What the file holds and every row that is bad; stores nothing. */
    @Transactional
    public ImportReport tryOut(byte[] file) {
        throw new IllegalStateException("being written");
    }

    /** Imports the file; refuses with {@link CustomersRefusal.BadRows} if a single row is bad. */
    @Transactional
    public ImportReport run(byte[] file, UserId by) {
        throw new IllegalStateException("being written");
    }
}
