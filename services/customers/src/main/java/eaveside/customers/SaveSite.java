package eaveside.customers;

import eaveside.customers.internal.Edits;
import eaveside.customers.internal.SiteRow;
import eaveside.kernel.CustomerId;
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
    public Site save(Site given, UserId by) {
        Site site = given.ofCustomer(customerOf(given));
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

    /** A site keeps the id that it was entered under, whichever of its merged customer's ids it is saved under. */
    private CustomerId customerOf(Site site) {
        SiteRow row = edits.locked(SiteRow.class, site.id().value());
        if (row == null) {
            return readCustomer.kept(site.customerId());
        }
        CustomerId stored = row.content().customerId();
        return readCustomer.idsOf(site.customerId()).contains(stored) ? stored : site.customerId();
    }
}
