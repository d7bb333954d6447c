package eaveside.visits.internal;

import eaveside.costing.Effort;
import eaveside.inventory.Drawn;
import eaveside.kernel.DocumentId;
import eaveside.kernel.LocationId;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import eaveside.visits.JobSheet;
import eaveside.visits.SoapWarning;
import eaveside.visits.internal.SheetParts.CostPart;
import eaveside.visits.internal.SheetParts.CountPart;
import eaveside.visits.internal.SheetParts.DonePart;
import eaveside.visits.internal.SheetParts.OverrunPart;
import eaveside.visits.internal.SheetParts.ReadingPart;
import eaveside.visits.internal.SheetParts.SkipPart;
import eaveside.visits.internal.SheetParts.UsePart;
import eaveside.visits.internal.SheetParts.WarningPart;
import jakarta.persistence.AttributeOverride;
import jakarta.persistence.CollectionTable;
import jakarta.persistence.Column;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Embedded;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.OrderColumn;
import jakarta.persistence.Table;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.hibernate.annotations.Immutable;
import org.joda.money.CurrencyUnit;
import org.jspecify.annotations.Nullable;

/** A signed-off sheet, as it was signed. */
@Entity
@Immutable
@Table(name = "job_sheet")
public class SheetRow {
    @Id
    @Column(name = "document_id")
    UUID documentId;

    @Column(name = "visit_id")
    VisitId visitId;

    @Column(name = "signed_by")
    UserId signedBy;

    @Column(name = "completed_on")
    LocalDate completedOn;

    @Column(name = "location_id")
    @Nullable
    LocationId locationId;

    @Column(name = "on_site_minutes")
    int onSiteMinutes;

    @Column(name = "driving_minutes")
    int drivingMinutes;

    @Column(name = "loading_minutes")
    int loadingMinutes;

    @Embedded
    @AttributeOverride(name = "value", column = @Column(name = "distance"))
    @AttributeOverride(name = "unit", column = @Column(name = "distance_unit"))
    Quantity distance;

    String note;

    @Immutable
    @ElementCollection
    @CollectionTable(name = "job_sheet_line", joinColumns = @JoinColumn(name = "sheet_id"))
    @OrderColumn(name = "position")
    List<DonePart> done;

    @Immutable
    @ElementCollection
    @CollectionTable(name = "job_sheet_skip", joinColumns = @JoinColumn(name = "sheet_id"))
    @OrderColumn(name = "position")
    List<SkipPart> skips;

    @Immutable
    @ElementCollection
    @CollectionTable(name = "job_sheet_reading", joinColumns = @JoinColumn(name = "sheet_id"))
    @OrderColumn(name = "position")
    List<ReadingPart> readings;

    @Immutable
    @ElementCollection
    @CollectionTable(name = "job_sheet_use", joinColumns = @JoinColumn(name = "sheet_id"))
    @OrderColumn(name = "position")
    List<UsePart> used;

    @Immutable
    @ElementCollection
    @CollectionTable(name = "job_sheet_count", joinColumns = @JoinColumn(name = "sheet_id"))
    @OrderColumn(name = "position")
    List<CountPart> counts;

    @Immutable
    @ElementCollection
    @CollectionTable(name = "job_sheet_cost", joinColumns = @JoinColumn(name = "sheet_id"))
    @OrderColumn(name = "position")
    List<CostPart> costs;

    @Immutable
    @ElementCollection
    @CollectionTable(name = "job_sheet_warning", joinColumns = @JoinColumn(name = "sheet_id"))
    @OrderColumn(name = "position")
    List<WarningPart> warnings;

    @Immutable
    @ElementCollection
    @CollectionTable(name = "job_sheet_overrun", joinColumns = @JoinColumn(name = "sheet_id"))
    @OrderColumn(name = "position")
    List<OverrunPart> overruns;

    SheetRow() {}

    SheetRow(
            JobSheet sheet,
            @Nullable LocationId location,
            ScopeChanges scope,
            SheetCost cost,
            List<Drawn.Overrun> exceeded,
            List<SoapWarning> soapWarnings) {
        this.documentId = sheet.id().value();
        this.visitId = sheet.visit();
        this.signedBy = sheet.by();
        this.completedOn = sheet.completedOn();
        this.locationId = location;
        this.onSiteMinutes = sheet.effort().onSiteMinutes();
        this.drivingMinutes = sheet.effort().drivingMinutes();
        this.loadingMinutes = sheet.effort().loadingMinutes();
        this.distance = sheet.effort().distance();
        this.note = sheet.note();
        this.done = sheet.lines().stream()
                .map(line -> new DonePart(sheet.visit(), line.line(), scope.doneOf(line.line())))
                .toList();
        this.skips = sheet.lines().stream()
                .flatMap(line -> line.skips().stream().map(skip -> SkipPart.of(line.line(), skip)))
                .toList();
        this.readings = sheet.readings().stream().map(ReadingPart::of).toList();
        this.used = sheet.used().stream().map(UsePart::of).toList();
        JobSheet.Declared declared = sheet.count();
        this.counts = declared == null
                ? List.of()
                : declared.counted().stream()
                        .map(line -> CountPart.of(declared, line))
                        .toList();
        this.costs = cost.parts().stream().map(CostPart::of).toList();
        this.overruns = exceeded.stream().map(OverrunPart::of).toList();
        this.warnings = soapWarnings.stream().map(WarningPart::of).toList();
    }

    public VisitId visit() {
        return visitId;
    }

    public DocumentId document() {
        return new DocumentId(documentId);
    }

    public UserId signedBy() {
        return signedBy;
    }

    public LocalDate completedOn() {
        return completedOn;
    }

    public @Nullable LocationId location() {
        return locationId;
    }

    public Effort effort() {
        return new Effort(onSiteMinutes, drivingMinutes, loadingMinutes, distance);
    }

    public String note() {
        return note;
    }

    /** What it says about the planned lines. */
    public List<JobSheet.DoneLine> lines() {
        return done.stream()
                .map(part -> new JobSheet.DoneLine(
                        part.line(),
                        part.done(),
                        skips.stream()
                                .filter(skip -> skip.line().equals(part.line()))
                                .map(SkipPart::toSkip)
                                .toList()))
                .toList();
    }

    public List<JobSheet.Reading> readings() {
        return readings.stream().map(ReadingPart::toReading).toList();
    }

    public List<JobSheet.Used> used() {
        return used.stream().map(UsePart::toUsed).toList();
    }

    /** The count difference that was declared with it. */
    public JobSheet.@Nullable Declared count() {
        return counts.isEmpty()
                ? null
                : new JobSheet.Declared(
                        counts.getFirst().document(),
                        counts.getFirst().reason(),
                        counts.stream().map(CountPart::toCounted).toList());
    }

    /** What it put into work in progress. */
    public SheetCost cost(CurrencyUnit currency) {
        SheetCost cost = new SheetCost();
        costs.forEach(part -> cost.add(
                part.serviceLine(),
                part.costType(),
                Money.of(currency, part.amount().stripTrailingZeros())));
        return cost;
    }

    public List<Drawn.Overrun> overruns() {
        return overruns.stream().map(OverrunPart::toOverrun).toList();
    }

    public List<SoapWarning> warnings() {
        return warnings.stream().map(WarningPart::toWarning).toList();
    }
}
