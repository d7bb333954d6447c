package eaveside.inventory.internal;

import eaveside.kernel.LocationId;
import eaveside.kernel.Quantity;
import eaveside.kernel.Unit;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.math.BigDecimal;

/** How much of an item a location should hold at least, in the item's base unit. */
@Entity
@Table(name = "reorder_point")
public class ReorderPointRow {
    @EmbeddedId
    ReorderPointKey key;

    BigDecimal quantity;

    String unit;

    ReorderPointRow() {}

    public ReorderPointRow(ReorderPointKey key, Quantity quantity) {
        this.key = key;
        this.quantity = quantity.value();
        this.unit = quantity.unit().code();
    }

    public LocationId location() {
        return new LocationId(key.locationId());
    }

    public Quantity least() {
        return Quantity.of(quantity, Unit.ofCode(unit));
    }

    public void change(Quantity newQuantity) {
        this.quantity = newQuantity.value();
    }
}
