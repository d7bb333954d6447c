package eaveside.customers;

import eaveside.kernel.CustomerId;
import eaveside.kernel.SiteId;
import eaveside.kernel.Texts;

/**
 * A place where the company works for a customer.
 *
 * @param accessNotes how to get in and park
 * @param hazards     what can hurt there; shown on every visit sheet
 * @param waterOnSite whether there is a tap to feed from
 * @param version     see {@link Editable}
 */
public record Site(
        SiteId id,
        CustomerId customerId,
        String name,
        Address address,
        String accessNotes,
        String hazards,
        boolean waterOnSite,
        boolean active,
        int version)
        implements Editable {
    public Site {
        name = Texts.required("name", name, 200);
        accessNotes = Texts.optional("accessNotes", accessNotes, 2000);
        hazards = Texts.optional("hazards", hazards, 2000);
    }

    Site ofCustomer(CustomerId customer) {
        return new Site(id, customer, name, address, accessNotes, hazards, waterOnSite, active, version);
    }

    @Override
    public Site withVersion(int version) {
        return new Site(id, customerId, name, address, accessNotes, hazards, waterOnSite, active, version);
    }
}
