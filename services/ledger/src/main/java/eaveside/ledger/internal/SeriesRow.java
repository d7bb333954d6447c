package eaveside.ledger.internal;

import eaveside.ledger.DocumentType;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/** The counter of a series of document numbers; locked from the draw to the commit, so that no number is ever lost. */
@Entity
@Table(name = "number_series")
class SeriesRow {
    @Id
    @Enumerated(EnumType.STRING)
    DocumentType type;

    @Column(name = "last_number")
    long lastNumber;

    @Column(name = "last_date")
    @Nullable
    LocalDate lastDate;

    SeriesRow() {}

    long draw() {
        return ++lastNumber;
    }
}
