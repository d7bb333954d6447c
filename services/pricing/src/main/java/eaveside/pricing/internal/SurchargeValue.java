package eaveside.pricing.internal;

import eaveside.customers.SurfaceAttribute;
import eaveside.kernel.Percent;
import eaveside.kernel.Quantity;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.UnitPrice;
import eaveside.pricing.Surcharge;
import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import java.math.BigDecimal;
import org.joda.money.CurrencyUnit;
import org.jspecify.annotations.Nullable;

/** A row of {@code surcharge}: either a percentage or a fixed amount. */
@Embeddable
record SurchargeValue(
        @Column(name = "service_item_id") ServiceItemId serviceItem,

        @Column(name = "attribute") @Enumerated(EnumType.STRING)
        SurfaceAttribute attribute,

        @Column(name = "at_least") int atLeast,
        @Column(name = "percent") @Nullable BigDecimal percent,
        @Column(name = "per_unit") @Nullable BigDecimal perUnit) {
    static SurchargeValue of(ServiceItemId serviceItem, Surcharge surcharge) {
        UnitPrice amount = surcharge.amount();
        return new SurchargeValue(
                serviceItem,
                surcharge.attribute(),
                surcharge.atLeast(),
                surcharge.percent() == null ? null : surcharge.percent().value(),
                amount == null ? null : amount.amount());
    }

    Surcharge toSurcharge(Quantity base, CurrencyUnit currency) {
        return new Surcharge(
                attribute,
                atLeast,
                percent == null ? null : Percent.of(percent),
                perUnit == null ? null : new UnitPrice(currency, perUnit, base));
    }
}
