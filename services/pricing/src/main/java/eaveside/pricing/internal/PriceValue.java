package eaveside.pricing.internal;

import eaveside.kernel.Quantity;
import eaveside.kernel.Unit;
import eaveside.pricing.OfferingPrice;
import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import java.math.BigDecimal;
import java.util.UUID;

/** A row of {@code offering_price}: that a book prices the offering, and what its prices are per. */
@Embeddable
record PriceValue(
        @Column(name = "offering_id") UUID offeringId,
        @Column(name = "base_quantity") BigDecimal baseQuantity,
        @Column(name = "unit") String unit,
        @Column(name = "position") int position) {
    static PriceValue of(OfferingPrice price, int position) {
        Quantity base = price.base();
        return new PriceValue(
                price.offering().value(), base.value(), base.unit().code(), position);
    }

    Quantity base() {
        return Quantity.of(baseQuantity, Unit.ofCode(unit));
    }
}
