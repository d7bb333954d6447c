package eaveside.inventory.internal;

import eaveside.inventory.Vehicle;
import eaveside.kernel.EditedRow;
import jakarta.persistence.AttributeOverride;
import jakarta.persistence.Column;
import jakarta.persistence.Embedded;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;

/** A vehicle. */
@Entity
@Table(name = "vehicle")
public class VehicleRow extends EditedRow<Vehicle> {
    @Embedded
    @AttributeOverride(name = "id", column = @Column(name = "id", insertable = false, updatable = false))
    @AttributeOverride(name = "version", column = @Column(name = "version", insertable = false, updatable = false))
    Vehicle vehicle;

    @Override
    protected Vehicle stored() {
        return vehicle;
    }

    @Override
    protected void store(Vehicle content) {
        vehicle = content;
    }
}
