package eaveside.customers;

import eaveside.access.Edits;
import eaveside.customers.internal.SiteRow;
import eaveside.kernel.CustomerId;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;

/** Adds a site to a customer, or changes one. */
@Shared
public class SaveSite {
    private final Edits edits;
    private final ReadCustomer readCustomer;

    @Inject
    public SaveSite(Edits edits, ReadCustomer readCustomer) {
        this.edits = edits;
        this.readCustomer = readCustomer;
    }

    /**
     * Answers what is stored, with its version. Refuses what {@link Edits} refuses, an unknown customer, and another
     * customer than was first saved.
     */
    @Transactional
    public Site save(Site given, UserId by) {
        Site site = given.ofCustomer(customerOf(given));
        return edits.save(SiteRow.class, site.id(), site, by, stored -> {
            if (stored != null && !stored.customer().equals(site.customer())) {
                throw new KernelRefusal.Fixed("site", "customer");
            }
        });
    }

    /** A site keeps the id that it was entered under, whichever of its merged customer's ids it is saved under. */
    private CustomerId customerOf(Site site) {
        CustomerId kept = readCustomer.kept(site.customer());
        SiteRow row = edits.locked(SiteRow.class, site.id());
        if (row == null) {
            return kept;
        }
        CustomerId stored = row.content().customer();
        return readCustomer.idsOf(site.customer()).contains(stored) ? stored : site.customer();
    }
}
