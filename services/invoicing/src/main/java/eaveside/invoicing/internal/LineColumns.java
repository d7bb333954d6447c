package eaveside.invoicing.internal;

import eaveside.catalog.TaxCode;
import eaveside.invoicing.Adjustment;
import eaveside.invoicing.DraftLine;
import eaveside.invoicing.ItemPrice;
import eaveside.invoicing.LineOrigin;
import eaveside.kernel.FindingId;
import eaveside.kernel.InvoiceLineId;
import eaveside.kernel.Quantity;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.UnitPrice;
import eaveside.kernel.VisitLineId;
import jakarta.persistence.AttributeOverride;
import jakarta.persistence.Column;
import jakarta.persistence.Embedded;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.MappedSuperclass;
import java.math.BigDecimal;
import java.util.List;
import org.joda.money.CurrencyUnit;
import org.jspecify.annotations.Nullable;

/** What the lines of drafts and of issued invoices have in common. */
@MappedSuperclass
abstract class LineColumns {
    @EmbeddedId
    PartKey key;

    InvoiceLineId id;

    @Column(name = "service_line_id")
    ServiceLineId serviceLineId;

    String description;

    @Embedded
    @AttributeOverride(name = "value", column = @Column(name = "quantity"))
    Quantity quantity;

    @Column(name = "gross_price")
    BigDecimal grossPrice;

    BigDecimal discount;

    /** What the gross price is for. */
    @Embedded
    @AttributeOverride(name = "value", column = @Column(name = "base_quantity"))
    @AttributeOverride(name = "unit", column = @Column(name = "base_unit"))
    Quantity base;

    @Column(name = "tax_code")
    String taxCode;

    @Column(name = "visit_line_id")
    @Nullable
    VisitLineId visitLineId;

    @Column(name = "finding_id")
    @Nullable
    FindingId findingId;

    boolean noCharge;

    @Column(name = "price_reason")
    String priceReason = "";

    LineColumns() {}

    LineColumns(PartKey key, DraftLine line, @Nullable LineOrigin origin) {
        this.key = key;
        this.id = line.id();
        this.serviceLineId = line.serviceLine();
        this.description = line.description();
        this.quantity = line.quantity();
        UnitPrice gross = line.price().gross();
        this.grossPrice = gross.amount();
        this.discount = line.price().discount();
        this.base = gross.base();
        this.taxCode = line.taxCode().value();
        if (origin != null) {
            this.visitLineId = origin.visitLine();
            FindingId finding = origin.finding();
            this.findingId = finding;
            this.noCharge = origin.noCharge();
            this.priceReason = origin.priceReason();
        }
    }

    DraftLine toDraftLine(CurrencyUnit currency, List<Adjustment> adjustments) {
        return new DraftLine(
                id,
                serviceLineId,
                description,
                quantity,
                new ItemPrice(new UnitPrice(currency, grossPrice.stripTrailingZeros(), base), discount),
                adjustments,
                new TaxCode(taxCode));
    }

    @Nullable
    LineOrigin toOrigin() {
        return visitLineId == null ? null : new LineOrigin(visitLineId, findingId, noCharge, priceReason);
    }
}
