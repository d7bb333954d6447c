package eaveside.customers.internal;

import eaveside.customers.Site;
import eaveside.kernel.CustomerId;
import eaveside.kernel.SiteId;
import jakarta.persistence.Column;
import jakarta.persistence.Embedded;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.util.UUID;

/** A place where the company works. */
@Entity
@Table(name = "site")
public class SiteRow implements EditableRow<Site> {
    @Id
    UUID id;

    @Column(name = "customer_id", updatable = false)
    UUID customerId;

    String name;

    @Embedded
    AddressRow address;

    @Column(name = "access_notes")
    String accessNotes;

    String hazards;

    @Column(name = "water_on_site")
    boolean waterOnSite;

    boolean active;

    @Version
    int version;

    @Embedded
    Signature signature;

    SiteRow() {}

    public SiteRow(Site site, Signature signature) {
        this.id = site.id().value();
        this.customerId = site.customerId().value();
        this.version = 1;
        write(site, signature);
    }

    @Override
    public final void write(Site site, Signature by) {
        this.name = site.name();
        this.address = AddressRow.of(site.address());
        this.accessNotes = site.accessNotes();
        this.hazards = site.hazards();
        this.waterOnSite = site.waterOnSite();
        this.active = site.active();
        this.signature = by;
    }

    @Override
    public Site content() {
        return new Site(
                new SiteId(id),
                new CustomerId(customerId),
                name,
                address.toAddress(),
                accessNotes,
                hazards,
                waterOnSite,
                active,
                version);
    }
}
