package eaveside.costing.internal;

import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import java.time.LocalDate;

/** The how-manieth rates for a day. */
@Embeddable
record CostRatesKey(@Column(name = "valid_from") LocalDate from, int entry) {}
