package eaveside.customers;

import eaveside.access.Edits;
import eaveside.customers.internal.CustomerRow;
import eaveside.customers.internal.DuplicateSearch;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/** Adds a customer, or changes one. */
@Shared
public class SaveCustomer {
    private final Edits edits;
    private final DuplicateSearch duplicateSearch;
    private final ReadCustomer readCustomer;

    @Inject
    public SaveCustomer(Edits edits, DuplicateSearch duplicateSearch, ReadCustomer readCustomer) {
        this.edits = edits;
        this.duplicateSearch = duplicateSearch;
        this.readCustomer = readCustomer;
    }

    /**
     * Answers what is stored, with its version. Refuses what {@link Edits} refuses, and a customer that was merged into
     * another.
     */
    @Transactional
    public Customer save(Customer customer, UserId by) {
        return save(customer, by, stored -> {});
    }

    /**
     * The same, but refuses with {@link CustomersRefusal.PossibleDuplicate} to add a customer who may be here already:
     * same phone, same email, or same name and address. An edit is saved whatever it likens.
     */
    @Transactional
    public Customer saveUnlessKnown(Customer customer, UserId by) {
        return save(customer, by, stored -> {
            List<Duplicate> duplicates = stored == null ? duplicateSearch.of(customer) : List.of();
            if (!duplicates.isEmpty()) {
                throw new CustomersRefusal.PossibleDuplicate(duplicates);
            }
        });
    }

    private Customer save(Customer customer, UserId by, Consumer<@Nullable Customer> check) {
        CustomerRow row = edits.locked(CustomerRow.class, customer.id());
        if (row != null && !row.kept().equals(customer.id())) {
            throw new CustomersRefusal.MergedAlready(
                    "id", readCustomer.customer(row.kept()).name());
        }
        return edits.save(CustomerRow.class, customer.id(), customer, by, check);
    }
}
