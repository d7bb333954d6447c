package eaveside.invoicing.internal;

import eaveside.catalog.TaxCategory;
import eaveside.invoicing.Adjustment;
import eaveside.invoicing.DraftLine;
import eaveside.invoicing.IssuedInvoice;
import eaveside.invoicing.LineOrigin;
import eaveside.invoicing.TaxRate;
import eaveside.kernel.Money;
import eaveside.kernel.Percent;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Table;
import java.math.BigDecimal;
import java.util.List;
import org.hibernate.annotations.Immutable;
import org.joda.money.CurrencyUnit;
import org.jspecify.annotations.Nullable;

/** A line of an issued invoice. */
@Entity
@Immutable
@Table(name = "invoice_line")
class InvoiceLineRow extends LineColumns {
    @Column(name = "tax_category")
    @Enumerated(EnumType.STRING)
    TaxCategory taxCategory;

    @Column(name = "tax_rate")
    BigDecimal taxRate;

    BigDecimal net;

    InvoiceLineRow() {}

    InvoiceLineRow(PartKey key, DraftLine line, @Nullable LineOrigin origin, TaxRate tax, Money net) {
        super(key, line, origin);
        this.taxCategory = tax.category();
        this.taxRate = tax.rate().value();
        this.net = net.amount();
    }

    IssuedInvoice.Line toLine(CurrencyUnit currency, List<Adjustment> adjustments) {
        DraftLine line = toDraftLine(currency, adjustments);
        return new IssuedInvoice.Line(
                line.id(),
                line.serviceLine(),
                line.description(),
                line.quantity(),
                line.price(),
                line.adjustments(),
                line.taxCode(),
                new TaxRate(taxCategory, Percent.of(taxRate)),
                Money.of(currency, net.stripTrailingZeros()),
                toOrigin());
    }
}
