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
        @Column(name = "service_item_id") UUID serviceItemId,
        @Column(name = "from_quantity") BigDecimal fromQuantity,
        @Column(name = "price") BigDecimal price) {
    static StepValue of(UUID serviceItem, QuantityStep step) {
        return new StepValue(serviceItem, step.from().value(), step.price().amount());
    }

    QuantityStep toStep(Quantity base, CurrencyUnit currency) {
        return new QuantityStep(Quantity.of(fromQuantity, base.unit()), new UnitPrice(currency, price, base));
    }
}
