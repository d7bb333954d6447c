package eaveside.customers;

import eaveside.kernel.Check;
import eaveside.kernel.CustomerId;
import eaveside.kernel.Default;
import eaveside.kernel.Records;
import eaveside.kernel.SiteId;
import eaveside.kernel.Versioned;
import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;

/**
 * A place where the company works for a customer.
 *
 * @param  accessNotes how to get in and park
 * @param  hazards     what can hurt there; shown on every job sheet
 * @param  waterOnSite whether there is a tap to feed from
 * @param  version     see {@link Versioned}
 */
@Embeddable
public record Site(
        SiteId id,
        @Column(name = "customer_id", updatable = false) CustomerId customer,
        String name,
        Address address,
        @Default String accessNotes,
        @Default String hazards,
        @Default("false") boolean waterOnSite,
        @Default("true") boolean active,
        @Default("0") int version)
        implements Versioned {
    public Site {
        Check check = new Check();
        name = check.required("name", name, 200);
        accessNotes = check.optional("accessNotes", accessNotes, 2000);
        hazards = check.optional("hazards", hazards, 2000);
        check.done();
    }

    Site ofCustomer(CustomerId customer) {
        return Records.with(this, "customer", customer);
    }

    @Override
    public Site withVersion(int version) {
        return Records.with(this, "version", version);
    }
}
