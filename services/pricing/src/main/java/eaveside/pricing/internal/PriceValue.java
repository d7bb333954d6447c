package eaveside.pricing.internal;

import eaveside.kernel.Quantity;
import eaveside.kernel.Unit;
import eaveside.pricing.ServiceItemPrice;
import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import java.math.BigDecimal;
import java.util.UUID;

/** A row of {@code service_item_price}: that a book prices the service, and what its prices are per. */
@Embeddable
record PriceValue(
        @Column(name = "service_item_id") UUID serviceItemId,
        @Column(name = "base_quantity") BigDecimal baseQuantity,
        @Column(name = "unit") String unit,
        @Column(name = "position") int position) {
    static PriceValue of(ServiceItemPrice price, int position) {
        Quantity base = price.base();
        return new PriceValue(
                price.serviceItem().value(), base.value(), base.unit().code(), position);
    }

    Quantity base() {
        return Quantity.of(baseQuantity, Unit.ofCode(unit));
    }
}
