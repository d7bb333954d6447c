package eaveside.customers;

import eaveside.customers.internal.Edits;
import eaveside.customers.internal.SiteRow;
import eaveside.kernel.UserId;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;

/** Adds a site to a customer, or changes one. */
@Dependent
public class SaveSite {
    private final Edits edits;
    private final ReadCustomer readCustomer;

    @Inject
    public SaveSite(Edits edits, ReadCustomer readCustomer) {
        this.edits = edits;
        this.readCustomer = readCustomer;
    }

    /**
     * Answers what is stored, with its version. Refuses an unknown customer, another customer than was first saved, and
     * an edit of a version that somebody else has saved over; the same content again is a retry.
     */
    @Transactional
    public Site save(Site site, UserId by) {
        return edits.save(
                SiteRow.class,
                site.id().value(),
                site,
                by,
                stored -> {
                    if (stored != null && !stored.customerId().equals(site.customerId())) {
                        throw new CustomersRefusal.Fixed("customerId");
                    }
                    readCustomer.customer(site.customerId());
                },
                SiteRow::new,
                () -> new CustomersRefusal.NoSuchSite(site.id().toString()));
    }
}
