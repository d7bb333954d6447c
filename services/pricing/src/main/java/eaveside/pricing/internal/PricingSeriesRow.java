package eaveside.pricing.internal;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.Table;

/** The counter of a series. */
@Entity
@Table(name = "pricing_series")
class PricingSeriesRow {
    @Id
    @Enumerated(EnumType.STRING)
    PricingSeries type;

    @Column(name = "last_number")
    long lastNumber;

    PricingSeriesRow() {}

    long draw() {
        return ++lastNumber;
    }
}
