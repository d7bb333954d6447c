package eaveside.visits.internal;

import eaveside.kernel.DocumentId;
import eaveside.kernel.Quantity;
import eaveside.kernel.QuoteLineId;
import eaveside.kernel.ScopeChangeId;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.VisitId;
import eaveside.kernel.VisitLineId;
import eaveside.visits.BillableLine;
import eaveside.visits.JobSheet;
import eaveside.visits.Visit;
import jakarta.persistence.AttributeOverride;
import jakarta.persistence.Column;
import jakarta.persistence.Embedded;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.util.UUID;
import org.hibernate.annotations.Immutable;
import org.jspecify.annotations.Nullable;

/** A line of a visit's work: planned, or an extra that a sheet reports. */
@Entity
@Immutable
@Table(name = "visit_line")
public class VisitLineRow {
    @Id
    UUID id;

    @Column(name = "visit_id")
    UUID visitId;

    int position;

    @Column(name = "sheet_id")
    @Nullable
    UUID sheetId;

    @Column(name = "service_item_id")
    UUID serviceItemId;

    @Column(name = "service_line_id")
    UUID serviceLineId;

    @Column(name = "surface_id")
    @Nullable
    UUID surfaceId;

    @Column(name = "quote_line_id")
    @Nullable
    UUID quoteLineId;

    @Column(name = "returns_for")
    @Nullable
    UUID returnsFor;

    @Embedded
    @AttributeOverride(name = "value", column = @Column(name = "quantity"))
    Quantity quantity;

    @Column(name = "accepted_by")
    String acceptedBy;

    VisitLineRow() {}

    /** A planned line. */
    public VisitLineRow(VisitId visit, int position, NewVisit.Line line) {
        this.id = line.id().value();
        this.visitId = visit.value();
        this.position = position;
        this.serviceItemId = line.serviceItem().value();
        this.serviceLineId = line.serviceLine().value();
        this.surfaceId = line.surface() == null ? null : line.surface().value();
        this.quoteLineId = line.quoteLine() == null ? null : line.quoteLine().value();
        this.returnsFor = line.returnsFor() == null ? null : line.returnsFor().value();
        this.quantity = line.quantity();
        this.acceptedBy = "";
    }

    /** An extra. */
    public VisitLineRow(
            VisitId visit,
            DocumentId sheet,
            int position,
            JobSheet.Extra extra,
            ServiceLineId line,
            Quantity quantity) {
        this.id = extra.id().value();
        this.visitId = visit.value();
        this.position = position;
        this.sheetId = sheet.value();
        this.serviceItemId = extra.serviceItem().value();
        this.serviceLineId = line.value();
        this.surfaceId = extra.surface() == null ? null : extra.surface().value();
        this.quantity = quantity;
        this.acceptedBy = extra.acceptedBy();
    }

    public VisitLineId id() {
        return new VisitLineId(id);
    }

    public ServiceItemId serviceItem() {
        return new ServiceItemId(serviceItemId);
    }

    public ServiceLineId serviceLine() {
        return new ServiceLineId(serviceLineId);
    }

    public @Nullable SurfaceId surface() {
        return surfaceId == null ? null : new SurfaceId(surfaceId);
    }

    public @Nullable QuoteLineId quoteLine() {
        return quoteLineId == null ? null : new QuoteLineId(quoteLineId);
    }

    public Quantity quantity() {
        return quantity;
    }

    public String acceptedBy() {
        return acceptedBy;
    }

    /** So much of the line as work to be billed or at no charge. */
    BillableLine billable(Quantity done, boolean noCharge) {
        return new BillableLine(id(), serviceItem(), serviceLine(), surface(), done, quoteLine(), noCharge);
    }

    public Visit.Line toLine() {
        return new Visit.Line(
                id(),
                serviceItem(),
                serviceLine(),
                surface(),
                quantity(),
                quoteLine(),
                returnsFor == null ? null : new ScopeChangeId(returnsFor));
    }
}
