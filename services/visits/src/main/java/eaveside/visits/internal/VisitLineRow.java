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
    VisitId visitId;

    int position;

    @Column(name = "sheet_id")
    @Nullable
    DocumentId sheetId;

    @Column(name = "service_item_id")
    ServiceItemId serviceItemId;

    @Column(name = "service_line_id")
    ServiceLineId serviceLineId;

    @Column(name = "surface_id")
    @Nullable
    SurfaceId surfaceId;

    @Column(name = "quote_line_id")
    @Nullable
    QuoteLineId quoteLineId;

    @Column(name = "returns_for")
    @Nullable
    ScopeChangeId returnsFor;

    @Embedded
    @AttributeOverride(name = "value", column = @Column(name = "quantity"))
    Quantity quantity;

    @Column(name = "accepted_by")
    String acceptedBy;

    VisitLineRow() {}

    /** A planned line. */
    public VisitLineRow(VisitId visit, int position, NewVisit.Line line) {
        this.id = line.id().value();
        this.visitId = visit;
        this.position = position;
        this.serviceItemId = line.serviceItem();
        this.serviceLineId = line.serviceLine();
        this.surfaceId = line.surface();
        this.quoteLineId = line.quoteLine();
        this.returnsFor = line.returnsFor();
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
        this.visitId = visit;
        this.position = position;
        this.sheetId = sheet;
        this.serviceItemId = extra.serviceItem();
        this.serviceLineId = line;
        this.surfaceId = extra.surface();
        this.quantity = quantity;
        this.acceptedBy = extra.acceptedBy();
    }

    public VisitLineId id() {
        return new VisitLineId(id);
    }

    public ServiceItemId serviceItem() {
        return serviceItemId;
    }

    public ServiceLineId serviceLine() {
        return serviceLineId;
    }

    public @Nullable SurfaceId surface() {
        return surfaceId;
    }

    public @Nullable QuoteLineId quoteLine() {
        return quoteLineId;
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
        return new Visit.Line(id(), serviceItem(), serviceLine(), surface(), quantity(), quoteLine(), returnsFor);
    }
}
