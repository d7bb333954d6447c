package eaveside.catalog.internal;

import eaveside.catalog.ServiceLine;
import eaveside.kernel.EditedRow;
import jakarta.persistence.AttributeOverride;
import jakarta.persistence.Column;
import jakarta.persistence.Embedded;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;

/** A service line. */
@Entity
@Table(name = "service_line")
public class ServiceLineRow extends EditedRow<ServiceLine> {
    @Embedded
    @AttributeOverride(name = "id", column = @Column(name = "id", insertable = false, updatable = false))
    @AttributeOverride(name = "version", column = @Column(name = "version", insertable = false, updatable = false))
    ServiceLine line;

    @Override
    protected ServiceLine stored() {
        return line;
    }

    @Override
    protected void store(ServiceLine content) {
        line = content;
    }
}
