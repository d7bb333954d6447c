package eaveside.inventory.internal;

import eaveside.kernel.LocationId;
import eaveside.kernel.Quantity;
import jakarta.persistence.AttributeOverride;
import jakarta.persistence.Column;
import jakarta.persistence.Embedded;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;

/** How much of an item a location should hold at least, in the item's base unit. */
@Entity
@Table(name = "reorder_point")
public class ReorderPointRow {
    @EmbeddedId
    ReorderPointKey key;

    @Embedded
    @AttributeOverride(name = "value", column = @Column(name = "quantity"))
    Quantity quantity;

    ReorderPointRow() {}

    public ReorderPointRow(ReorderPointKey key, Quantity quantity) {
        this.key = key;
        this.quantity = quantity;
    }

    public LocationId location() {
        return new LocationId(key.locationId());
    }

    public Quantity least() {
        return quantity;
    }

    public void change(Quantity newQuantity) {
        this.quantity = newQuantity;
    }
}
