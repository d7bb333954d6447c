package eaveside.catalog.internal;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import org.hibernate.annotations.Immutable;

/** A tax code that has at least one setting. */
@Entity
@Immutable
@Table(name = "tax_code")
public class TaxCodeRow {
    @Id
    String code;

    TaxCodeRow() {}

    public TaxCodeRow(String code) {
        this.code = code;
    }
}
