package eaveside.pricing.internal;

import eaveside.kernel.Quantity;
import eaveside.kernel.ServiceItemId;
import eaveside.pricing.ServiceItemPrice;
import jakarta.persistence.AttributeOverride;
import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import jakarta.persistence.Embedded;

/** A row of {@code service_item_price}: that a book prices the service, and what its prices are per. */
@Embeddable
record PriceValue(
        @Column(name = "service_item_id") ServiceItemId serviceItem,

        @Embedded @AttributeOverride(name = "value", column = @Column(name = "base_quantity"))
        Quantity base,

        @Column(name = "position") int position) {
    static PriceValue of(ServiceItemPrice price, int position) {
        return new PriceValue(price.serviceItem(), price.base(), position);
    }
}
