package eaveside.visits;

import static eaveside.visits.VisitsFixture.pieces;

import eaveside.costing.Effort;
import eaveside.inventory.CountBasis;
import eaveside.inventory.Ppm;
import eaveside.inventory.WaterReading;
import eaveside.kernel.DocumentId;
import eaveside.kernel.FindingId;
import eaveside.kernel.LocationId;
import eaveside.kernel.LotId;
import eaveside.kernel.Quantity;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.StockItemId;
import eaveside.kernel.Unit;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitLineId;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The language of the tests about sheets: everything is done as planned unless something else is said. */
final class SheetBuilder {
    private final VisitsFixture company;
    private final Visit visit;
    private DocumentId id = DocumentId.next();
    private LocalDate completedOn;
    private UserId by;
    private @Nullable LocationId location;
    private final List<JobSheet.DoneLine> lines = new ArrayList<>();
    private final List<JobSheet.Extra> extras = new ArrayList<>();
    private final List<JobSheet.Reading> readings = new ArrayList<>();
    private final List<JobSheet.Used> used = new ArrayList<>();
    private JobSheet.@Nullable Declared count;
    private Effort effort = VisitsFixture.effort();
    private final List<JobSheet.Seen> findings = new ArrayList<>();
    private final List<JobSheet.SurfaceFact> surfaces = new ArrayList<>();

    SheetBuilder(VisitsFixture company, Visit visit) {
        this.company = company;
        this.visit = visit;
        this.completedOn = visit.date();
        this.by = company.technician;
        visit.lines().forEach(line -> lines.add(new JobSheet.DoneLine(line.id(), line.planned(), List.of())));
    }

    SheetBuilder id(DocumentId other) {
        id = other;
        return this;
    }

    SheetBuilder by(UserId signer) {
        by = signer;
        return this;
    }

    SheetBuilder from(LocationId named) {
        location = named;
        return this;
    }

    SheetBuilder on(LocalDate day) {
        completedOn = day;
        return this;
    }

    SheetBuilder effort(Effort other) {
        effort = other;
        return this;
    }

    /** So many units of the line at that place of the plan were skipped. */
    SheetBuilder skipped(int line, int units, SkipReason reason, @Nullable FindingId finding) {
        Visit.Line planned = visit.lines().get(line);
        lines.set(
                line,
                new JobSheet.DoneLine(
                        planned.id(),
                        planned.planned().minus(pieces(units)),
                        List.of(new JobSheet.Skip(pieces(units), reason, "", finding))));
        return this;
    }

    SheetBuilder extraSkylights(int units) {
        extras.add(new JobSheet.Extra(
                VisitLineId.next(), company.skylightWash, company.skylights, pieces(units), "Ms. Quill, on site"));
        return this;
    }

    SheetBuilder mixed(String gallons, @Nullable ServiceLineId line) {
        used.add(new JobSheet.Used.OfMix(company.van.mix, Quantity.of(gallons, Unit.US_GALLON), line));
        return this;
    }

    SheetBuilder water(String tapWater, String pureWater, String gallons) {
        return water(tapWater, pureWater, gallons, company.van.canister);
    }

    SheetBuilder water(String tapWater, String pureWater, String gallons, LotId canister) {
        readings.add(new JobSheet.Reading(
                new WaterReading(Ppm.of(tapWater), Ppm.of(pureWater), Quantity.of(gallons, Unit.US_GALLON)),
                canister,
                null));
        return this;
    }

    SheetBuilder brushed(int units, @Nullable ServiceLineId line) {
        used.add(new JobSheet.Used.OfBrush(company.van.brush, pieces(units), line));
        return this;
    }

    SheetBuilder parts(int units) {
        used.add(new JobSheet.Used.OfItem(company.van.parts, pieces(units), null));
        return this;
    }

    SheetBuilder countedParts(int found) {
        return counted(company.van.parts, null, pieces(found));
    }

    SheetBuilder counted(StockItemId item, @Nullable LotId lot, Quantity found) {
        count = new JobSheet.Declared(
                DocumentId.next(),
                "Another quantity than in the books",
                List.of(new JobSheet.Counted(item, lot, CountBasis.FOUND, found)));
        return this;
    }

    SheetBuilder saw(JobSheet.Seen seen) {
        findings.add(seen);
        return this;
    }

    SheetBuilder fact(JobSheet.SurfaceFact fact) {
        surfaces.add(fact);
        return this;
    }

    JobSheet build() {
        return new JobSheet(
                id,
                visit.id(),
                completedOn,
                by,
                location,
                lines,
                extras,
                readings,
                used,
                count,
                effort,
                findings,
                surfaces,
                "");
    }
}
