package eaveside.pricing.internal;

import eaveside.kernel.Quantity;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.UnitPrice;
import eaveside.pricing.QuantityStep;
import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import java.math.BigDecimal;
import org.joda.money.CurrencyUnit;

/** A row of {@code quantity_step}. */
@Embeddable
record StepValue(
        @Column(name = "service_item_id") ServiceItemId serviceItem,
        @Column(name = "from_quantity") BigDecimal fromQuantity,
        @Column(name = "price") BigDecimal price) {
    static StepValue of(ServiceItemId serviceItem, QuantityStep step) {
        return new StepValue(serviceItem, step.from().value(), step.price().amount());
    }

    QuantityStep toStep(Quantity base, CurrencyUnit currency) {
        return new QuantityStep(Quantity.of(fromQuantity, base.unit()), new UnitPrice(currency, price, base));
    }
}
