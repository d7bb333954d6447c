package eaveside.catalog.internal;

import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import java.time.LocalDate;

/** The how-manieth setting of a code for a day. */
@Embeddable
record TaxSettingKey(
        String code, @Column(name = "valid_from") LocalDate from, int entry) {}
