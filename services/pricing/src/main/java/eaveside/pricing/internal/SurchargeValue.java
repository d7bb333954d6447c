package eaveside.pricing.internal;

import eaveside.customers.SurfaceAttribute;
import eaveside.kernel.Percent;
import eaveside.kernel.Quantity;
import eaveside.kernel.UnitPrice;
import eaveside.pricing.Surcharge;
import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import java.math.BigDecimal;
import java.util.UUID;
import org.joda.money.CurrencyUnit;
import org.jspecify.annotations.Nullable;

/** A row of {@code surcharge}: either a percentage or a fixed amount. */
@Embeddable
record SurchargeValue(
        @Column(name = "service_item_id") UUID serviceItemId,

        @Column(name = "attribute") @Enumerated(EnumType.STRING)
        SurfaceAttribute attribute,

        @Column(name = "at_least") int atLeast,
        @Column(name = "percent") @Nullable BigDecimal percent,
        @Column(name = "per_unit") @Nullable BigDecimal perUnit) {
    static SurchargeValue of(UUID serviceItem, Surcharge surcharge) {
        return switch (surcharge.rate()) {
            case Surcharge.OfPrice share ->
                new SurchargeValue(
                        serviceItem,
                        surcharge.attribute(),
                        surcharge.atLeast(),
                        share.percent().value(),
                        null);
            case Surcharge.PerUnit fixed ->
                new SurchargeValue(
                        serviceItem,
                        surcharge.attribute(),
                        surcharge.atLeast(),
                        null,
                        fixed.amount().amount());
        };
    }

    Surcharge toSurcharge(Quantity base, CurrencyUnit currency) {
        return new Surcharge(attribute, atLeast, rate(base, currency));
    }

    private Surcharge.Rate rate(Quantity base, CurrencyUnit currency) {
        if (percent != null) {
            return new Surcharge.OfPrice(Percent.of(percent));
        }
        if (perUnit != null) {
            return new Surcharge.PerUnit(new UnitPrice(currency, perUnit, base));
        }
        throw new IllegalStateException("a surcharge has a percentage or an amount: the table's check says so");
    }
}
