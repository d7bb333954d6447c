package eaveside.visits;

import static eaveside.visits.VisitsFixture.pieces;

import eaveside.costing.Effort;
import eaveside.inventory.CountStock;
import eaveside.inventory.Ppm;
import eaveside.inventory.WaterReading;
import eaveside.kernel.DocumentId;
import eaveside.kernel.FindingId;
import eaveside.kernel.LotId;
import eaveside.kernel.PlaceId;
import eaveside.kernel.Quantity;
import eaveside.kernel.ServiceLineId;
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
    private LocalDate doneOn;
    private UserId by;
    private @Nullable PlaceId place;
    private final List<VisitSheet.DoneLine> lines = new ArrayList<>();
    private final List<VisitSheet.Extra> extras = new ArrayList<>();
    private final List<VisitSheet.Reading> readings = new ArrayList<>();
    private final List<VisitSheet.Used> used = new ArrayList<>();
    private VisitSheet.@Nullable Declared count;
    private Effort effort = VisitsFixture.effort();
    private final List<VisitSheet.Seen> findings = new ArrayList<>();
    private final List<VisitSheet.SurfaceFact> surfaces = new ArrayList<>();

    SheetBuilder(VisitsFixture company, Visit visit) {
        this.company = company;
        this.visit = visit;
        this.doneOn = visit.date();
        this.by = company.technician;
        visit.lines().forEach(line -> lines.add(new VisitSheet.DoneLine(line.id(), line.planned(), List.of())));
    }

    SheetBuilder id(DocumentId other) {
        id = other;
        return this;
    }

    SheetBuilder by(UserId signer) {
        by = signer;
        return this;
    }

    SheetBuilder from(PlaceId named) {
        place = named;
        return this;
    }

    SheetBuilder on(LocalDate day) {
        doneOn = day;
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
                new VisitSheet.DoneLine(
                        planned.id(),
                        planned.planned().minus(pieces(units)),
                        List.of(new VisitSheet.Skip(pieces(units), reason, "", finding))));
        return this;
    }

    SheetBuilder extraSkylights(int units) {
        extras.add(new VisitSheet.Extra(
                VisitLineId.next(), company.skylightWash, company.skylights, pieces(units), "Ms. Quill, on site"));
        return this;
    }

    SheetBuilder mixed(String gallons, @Nullable ServiceLineId line) {
        used.add(new VisitSheet.Used.OfMix(company.van.mix, Quantity.of(gallons, Unit.US_GALLON), line));
        return this;
    }

    SheetBuilder water(String feed, String product, String gallons) {
        return water(feed, product, gallons, company.van.canister);
    }

    SheetBuilder water(String feed, String product, String gallons, LotId canister) {
        readings.add(new VisitSheet.Reading(
                new WaterReading(Ppm.of(feed), Ppm.of(product), Quantity.of(gallons, Unit.US_GALLON)), canister, null));
        return this;
    }

    SheetBuilder brushed(int units, @Nullable ServiceLineId line) {
        used.add(new VisitSheet.Used.OfBrush(company.van.brush, pieces(units), line));
        return this;
    }

    SheetBuilder parts(int units) {
        used.add(new VisitSheet.Used.OfItem(company.van.parts, pieces(units), null));
        return this;
    }

    SheetBuilder countedParts(int found) {
        count = new VisitSheet.Declared(
                DocumentId.next(),
                "More on the shelf than in the books",
                List.of(new VisitSheet.Counted(company.van.parts, null, CountStock.Basis.FOUND, pieces(found))));
        return this;
    }

    SheetBuilder saw(VisitSheet.Seen seen) {
        findings.add(seen);
        return this;
    }

    SheetBuilder fact(VisitSheet.SurfaceFact fact) {
        surfaces.add(fact);
        return this;
    }

    VisitSheet build() {
        return new VisitSheet(
                id,
                visit.id(),
                doneOn,
                by,
                place,
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
