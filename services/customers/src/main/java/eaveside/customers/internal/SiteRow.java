package eaveside.customers.internal;

import eaveside.customers.Site;
import eaveside.kernel.EditedRow;
import jakarta.persistence.AttributeOverride;
import jakarta.persistence.Column;
import jakarta.persistence.Embedded;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;

/** A place where the company works. */
@Entity
@Table(name = "site")
public class SiteRow extends EditedRow<Site> {
    @Embedded
    @AttributeOverride(name = "id", column = @Column(name = "id", insertable = false, updatable = false))
    @AttributeOverride(name = "version", column = @Column(name = "version", insertable = false, updatable = false))
    Site site;

    @Override
    protected Site stored() {
        return site;
    }

    @Override
    protected void store(Site content) {
        site = content;
    }
}
