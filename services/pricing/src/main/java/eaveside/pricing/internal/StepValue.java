package eaveside.pricing.internal;

import eaveside.kernel.Quantity;
import eaveside.kernel.UnitPrice;
import eaveside.pricing.QuantityStep;
import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import java.math.BigDecimal;
import java.util.UUID;
import org.joda.money.CurrencyUnit;

/** A row of {@code quantity_step}. */
@Embeddable
record StepValue(
        @Column(name = "offering_id") UUID offeringId,
        @Column(name = "from_quantity") BigDecimal fromQuantity,
        @Column(name = "price") BigDecimal price) {
    static StepValue of(UUID offering, QuantityStep step) {
        return new StepValue(offering, step.from().value(), step.price().amount());
    }

    QuantityStep toStep(Quantity base, CurrencyUnit currency) {
        return new QuantityStep(Quantity.of(fromQuantity, base.unit()), new UnitPrice(currency, price, base));
    }
}
