package eaveside.invoicing.internal;

import eaveside.catalog.TaxCategory;
import eaveside.invoicing.InvoiceTotals.TaxSubtotal;
import eaveside.invoicing.TaxRate;
import eaveside.kernel.Money;
import eaveside.kernel.Percent;
import jakarta.persistence.Column;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Table;
import java.math.BigDecimal;
import org.hibernate.annotations.Immutable;
import org.joda.money.CurrencyUnit;

/** The tax of an issued invoice in one category and rate. */
@Entity
@Immutable
@Table(name = "invoice_tax")
class InvoiceTaxRow {
    @EmbeddedId
    PartKey key;

    @Column(name = "tax_category")
    @Enumerated(EnumType.STRING)
    TaxCategory taxCategory;

    @Column(name = "tax_rate")
    BigDecimal taxRate;

    BigDecimal taxable;
    BigDecimal tax;

    @Column(name = "exemption_reason")
    String exemptionReason;

    InvoiceTaxRow() {}

    InvoiceTaxRow(PartKey key, TaxSubtotal subtotal, String exemptionReason) {
        this.key = key;
        this.taxCategory = subtotal.rate().category();
        this.taxRate = subtotal.rate().rate().value();
        this.taxable = subtotal.taxable().amount();
        this.tax = subtotal.tax().amount();
        this.exemptionReason = exemptionReason;
    }

    TaxSubtotal toSubtotal(CurrencyUnit currency) {
        return new TaxSubtotal(
                new TaxRate(taxCategory, Percent.of(taxRate)),
                Money.of(currency, taxable.stripTrailingZeros()),
                Money.of(currency, tax.stripTrailingZeros()));
    }
}
