package eaveside.customers;

import eaveside.customers.internal.CustomerSearch;
import eaveside.kernel.Shared;
import eaveside.kernel.Slice;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import org.jspecify.annotations.Nullable;

/** Finds customers while somebody types. */
@Shared
public class FindCustomers {
    private final CustomerSearch search;

    @Inject
    public FindCustomers(CustomerSearch search) {
        this.search = search;
    }

    /**
     * Customers by name, a page at a time.
     *
     * @param  text  words, or beginnings of words, that must all occur in the customer's name, address, phone or email,
     *              or those of its contacts and sites; accents and capitals do not count; empty for all
     * @param  after the {@link Slice#next} of the page before; null for the first
     * @param  size  rows a page, 1 to 200
     */
    @Transactional
    public Slice<CustomerLine> find(String text, boolean activeOnly, @Nullable String after, int size) {
        return search.find(text, activeOnly, after, size);
    }
}
