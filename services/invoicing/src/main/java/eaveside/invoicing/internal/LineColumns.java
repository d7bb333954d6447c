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
import eaveside.kernel.Unit;
import eaveside.kernel.UnitPrice;
import eaveside.kernel.VisitLineId;
import jakarta.persistence.Column;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.MappedSuperclass;
import java.math.BigDecimal;
import java.util.List;
import java.util.UUID;
import org.joda.money.CurrencyUnit;
import org.jspecify.annotations.Nullable;

/** What the lines of drafts and of issued invoices have in common. */
@MappedSuperclass
abstract class LineColumns {
    @EmbeddedId
    PartKey key;

    UUID id;

    @Column(name = "service_line_id")
    UUID serviceLineId;

    String description;
    BigDecimal quantity;
    String unit;

    @Column(name = "gross_price")
    BigDecimal grossPrice;

    BigDecimal discount;

    @Column(name = "base_quantity")
    BigDecimal baseQuantity;

    @Column(name = "base_unit")
    String baseUnit;

    @Column(name = "tax_code")
    String taxCode;

    @Column(name = "visit_line_id")
    @Nullable
    UUID visitLineId;

    @Column(name = "finding_id")
    @Nullable
    UUID findingId;

    boolean noCharge;

    @Column(name = "price_reason")
    String priceReason = "";

    LineColumns() {}

    LineColumns(PartKey key, DraftLine line, @Nullable LineOrigin origin) {
        this.key = key;
        this.id = line.id().value();
        this.serviceLineId = line.serviceLine().value();
        this.description = line.description();
        this.quantity = line.quantity().value();
        this.unit = line.quantity().unit().code();
        UnitPrice gross = line.price().gross();
        this.grossPrice = gross.amount();
        this.discount = line.price().discount();
        this.baseQuantity = gross.base().value();
        this.baseUnit = gross.base().unit().code();
        this.taxCode = line.taxCode().value();
        if (origin != null) {
            this.visitLineId = origin.visitLine().value();
            FindingId finding = origin.finding();
            this.findingId = finding == null ? null : finding.value();
            this.noCharge = origin.noCharge();
            this.priceReason = origin.priceReason();
        }
    }

    DraftLine toDraftLine(CurrencyUnit currency, List<Adjustment> adjustments) {
        return new DraftLine(
                new InvoiceLineId(id),
                new ServiceLineId(serviceLineId),
                description,
                Quantity.of(quantity, Unit.ofCode(unit)),
                new ItemPrice(
                        new UnitPrice(
                                currency,
                                grossPrice.stripTrailingZeros(),
                                Quantity.of(baseQuantity, Unit.ofCode(baseUnit))),
                        discount),
                adjustments,
                new TaxCode(taxCode));
    }

    @Nullable
    LineOrigin toOrigin() {
        return visitLineId == null
                ? null
                : new LineOrigin(
                        new VisitLineId(visitLineId),
                        findingId == null ? null : new FindingId(findingId),
                        noCharge,
                        priceReason);
    }
}
