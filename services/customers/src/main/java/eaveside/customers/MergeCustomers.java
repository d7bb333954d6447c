package eaveside.customers;

import eaveside.access.Edits;
import eaveside.access.RecordAudit;
import eaveside.customers.internal.CustomerRow;
import eaveside.kernel.CustomerId;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.stream.Stream;

/**
 * Makes one customer of two that were entered for the same. Nothing that was posted, agreed or recorded changes: it
 * keeps the id of the customer merged, which from then on answers with the customer kept; its sites, quotes, visits,
 * invoices and payments are listed with the kept one's, its open invoices are paid from the same account. Contacts and
 * unapplied credit move. A merge is not undone.
 */
@Shared
public class MergeCustomers {
    private final EntityManager entities;
    private final Edits edits;
    private final ReadCustomer readCustomer;
    private final RecordAudit audit;
    private final Clock clock;

    @Inject
    public MergeCustomers(
            EntityManager entities, Edits edits, ReadCustomer readCustomer, RecordAudit audit, Clock clock) {
        this.entities = entities;
        this.edits = edits;
        this.readCustomer = readCustomer;
        this.audit = audit;
        this.clock = clock;
    }

    /** @param  from is listed no more; @param  into is kept, with its own name, address and terms */
    public record Merge(CustomerId from, CustomerId into, UserId by) {
        public Merge {
            if (from.equals(into)) {
                throw new CustomersRefusal.MergedIntoItself();
            }
        }
    }

    /**
     * Answers the customer kept; the same again is a retry. Refuses unknown customers, one that was merged into another
     * already, and merging into one that is merged itself.
     */
    @Transactional
    public Customer merge(Merge merge) {
        // Both are locked in the order of their ids, so that two who merge the same pair never wait for one another.
        Stream.of(merge.from(), merge.into())
                .sorted((a, b) -> a.value().compareTo(b.value()))
                .forEach(id -> edits.locked(CustomerRow.class, id));
        CustomerId alreadyIn = readCustomer.kept(merge.from());
        CustomerId kept = readCustomer.kept(merge.into());
        if (alreadyIn.equals(kept) && !alreadyIn.equals(merge.from())) {
            return readCustomer.customer(kept);
        }
        if (!alreadyIn.equals(merge.from())) {
            throw new CustomersRefusal.MergedAlready(
                    "from", readCustomer.customer(alreadyIn).name());
        }
        if (!kept.equals(merge.into())) {
            throw new CustomersRefusal.MergedAlready(
                    "into", readCustomer.customer(kept).name());
        }
        entities.createNativeQuery("update customer set merged_into = :into, merged_by = :by, merged_at = :at"
                        + " where id = :from")
                .setParameter("into", kept.value())
                .setParameter("by", merge.by().value())
                .setParameter("at", clock.instant())
                .setParameter("from", merge.from().value())
                .executeUpdate();
        audit.done("customer.merge", merge.by(), merge.from() + " into " + merge.into());
        entities.flush();
        entities.clear();
        return readCustomer.customer(kept);
    }
}
