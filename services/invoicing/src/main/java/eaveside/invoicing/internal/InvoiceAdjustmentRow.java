package eaveside.invoicing.internal;

import eaveside.catalog.TaxCategory;
import eaveside.catalog.TaxCode;
import eaveside.invoicing.Adjustment;
import eaveside.invoicing.InvoiceInput;
import eaveside.invoicing.TaxRate;
import eaveside.kernel.Percent;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Table;
import java.math.BigDecimal;
import java.util.Optional;
import org.hibernate.annotations.Immutable;
import org.joda.money.CurrencyUnit;
import org.jspecify.annotations.Nullable;

/** An allowance or charge of an issued invoice. */
@Entity
@Immutable
@Table(name = "invoice_adjustment")
class InvoiceAdjustmentRow extends AdjustmentColumns {
    @Column(name = "tax_category")
    @Enumerated(EnumType.STRING)
    @Nullable
    TaxCategory taxCategory;

    @Column(name = "tax_rate")
    @Nullable
    BigDecimal taxRate;

    InvoiceAdjustmentRow() {}

    static InvoiceAdjustmentRow ofLine(PartKey key, Adjustment adjustment, int linePosition) {
        return new InvoiceAdjustmentRow(key, adjustment, linePosition, null);
    }

    static InvoiceAdjustmentRow ofDocument(PartKey key, Adjustment adjustment, TaxCode code, TaxRate tax) {
        InvoiceAdjustmentRow row = new InvoiceAdjustmentRow(key, adjustment, null, code.value());
        row.taxCategory = tax.category();
        row.taxRate = tax.rate().value();
        return row;
    }

    private InvoiceAdjustmentRow(
            PartKey key, Adjustment adjustment, @Nullable Integer linePosition, @Nullable String taxCode) {
        super(key, adjustment, linePosition, taxCode);
    }

    /** Present where it is of the whole document. */
    Optional<InvoiceInput.DocumentAdjustment> toDocumentAdjustment(CurrencyUnit currency) {
        return taxCategory == null || taxRate == null
                ? Optional.empty()
                : Optional.of(new InvoiceInput.DocumentAdjustment(
                        toAdjustment(currency), new TaxRate(taxCategory, Percent.of(taxRate))));
    }
}
