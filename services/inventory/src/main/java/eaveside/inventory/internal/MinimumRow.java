package eaveside.inventory.internal;

import eaveside.kernel.PlaceId;
import eaveside.kernel.Quantity;
import eaveside.kernel.Unit;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.math.BigDecimal;

/** How much of an item a place should hold at least, in the item's base unit. */
@Entity
@Table(name = "stock_minimum")
public class MinimumRow {
    @EmbeddedId
    MinimumKey key;

    BigDecimal quantity;

    String unit;

    MinimumRow() {}

    public MinimumRow(MinimumKey key, Quantity quantity) {
        this.key = key;
        this.quantity = quantity.value();
        this.unit = quantity.unit().code();
    }

    public PlaceId place() {
        return new PlaceId(key.placeId());
    }

    public Quantity least() {
        return Quantity.of(quantity, Unit.ofCode(unit));
    }

    public void change(Quantity newQuantity) {
        this.quantity = newQuantity.value();
    }
}
