package eaveside.costing.internal;

import eaveside.costing.CostRates;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.UnitPrice;
import eaveside.kernel.UserId;
import jakarta.persistence.AttributeOverride;
import jakarta.persistence.Column;
import jakarta.persistence.Embedded;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import org.hibernate.annotations.Immutable;
import org.joda.money.CurrencyUnit;

/** Cost rates as they were entered; the last entry for a day counts. */
@Entity
@Immutable
@Table(name = "cost_rates")
public class CostRatesRow {
    @EmbeddedId
    CostRatesKey key;

    @Column(name = "labor_per_hour")
    BigDecimal laborPerHour;

    @Column(name = "travel_amount")
    BigDecimal travelAmount;

    @Embedded
    @AttributeOverride(name = "value", column = @Column(name = "travel_base"))
    @AttributeOverride(name = "unit", column = @Column(name = "travel_unit"))
    Quantity travelBase;

    @Column(name = "overhead_per_hour")
    BigDecimal overheadPerHour;

    @Column(name = "set_by")
    UserId setBy;

    @Column(name = "set_at")
    Instant setAt;

    CostRatesRow() {}

    public CostRatesRow(CostRates rates, int entry, UserId by, Instant at) {
        this.key = new CostRatesKey(rates.from(), entry);
        this.laborPerHour = rates.laborPerHour().amount();
        this.travelAmount = rates.travelPerDistance().amount();
        this.travelBase = rates.travelPerDistance().base();
        this.overheadPerHour = rates.overheadPerHour().amount();
        this.setBy = by;
        this.setAt = at;
    }

    public LocalDate from() {
        return key.from();
    }

    public CostRates toCostRates(CurrencyUnit currency) {
        return new CostRates(
                key.from(),
                Money.of(currency, laborPerHour.stripTrailingZeros()),
                new UnitPrice(currency, travelAmount.stripTrailingZeros(), travelBase),
                Money.of(currency, overheadPerHour.stripTrailingZeros()));
    }
}
