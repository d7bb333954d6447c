package eaveside.demo;

import eaveside.costing.Effort;
import eaveside.customers.Surface;
import eaveside.customers.SurfaceType;
import eaveside.kernel.DocumentId;
import eaveside.kernel.FindingId;
import eaveside.kernel.PhotoId;
import eaveside.kernel.Quantity;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.Unit;
import eaveside.kernel.VisitLineId;
import eaveside.visits.JobSheet;
import eaveside.visits.SkipReason;
import eaveside.visits.Visit;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** What a technician writes down on site, line by line: all done as planned unless something else is said. */
final class Report {
    private final Visit visit;
    private final Range range;
    private final List<JobSheet.DoneLine> lines = new ArrayList<>();
    private final List<JobSheet.Extra> extras = new ArrayList<>();
    private final List<JobSheet.Seen> seen = new ArrayList<>();
    private final List<JobSheet.SurfaceFact> facts = new ArrayList<>();
    private final Map<Work, Quantity> done = new EnumMap<>(Work.class);
    private String note = "";

    Report(Visit visit, Range range) {
        this.visit = visit;
        this.range = range;
        for (Visit.Line line : visit.lines()) {
            lines.add(new JobSheet.DoneLine(line.id(), line.planned(), List.of()));
            done.merge(range.work(line.serviceItem()), line.planned(), Quantity::plus);
        }
    }

    Visit visit() {
        return visit;
    }

    /** What was done, extras too. */
    Map<Work, Quantity> done() {
        return done;
    }

    void note(String text) {
        note = text;
    }

    Optional<Visit.Line> planned(SurfaceType type) {
        return visit.lines().stream()
                .filter(line -> range.work(line.serviceItem()).type == type)
                .findFirst();
    }

    /** The share of the line that is left undone, at least one unit. */
    Quantity part(Visit.Line line, int percent) {
        BigDecimal units = line.planned()
                .value()
                .multiply(BigDecimal.valueOf(percent))
                .divide(BigDecimal.valueOf(100), 0, RoundingMode.HALF_UP)
                .max(BigDecimal.ONE);
        return Quantity.of(units, line.planned().unit()).min(line.planned());
    }

    void skip(Visit.Line line, Quantity quantity, SkipReason reason, String why, @Nullable FindingId finding) {
        lines.set(
                visit.lines().indexOf(line),
                new JobSheet.DoneLine(
                        line.id(),
                        line.planned().minus(quantity),
                        List.of(new JobSheet.Skip(quantity, reason, why, finding))));
        done.computeIfPresent(range.work(line.serviceItem()), (work, units) -> units.minus(quantity));
    }

    void extra(Work work, SurfaceId surface, int units, String acceptedBy) {
        Quantity quantity = Quantity.of(units, work.unit);
        extras.add(new JobSheet.Extra(VisitLineId.next(), range.id(work), surface, quantity, acceptedBy));
        done.merge(work, quantity, Quantity::plus);
    }

    /** Counts so many more of the surface, or enters it where nobody had listed one. */
    SurfaceId more(Optional<Surface> known, SurfaceType type, String name, int units) {
        Quantity quantity = Quantity.of(units, Unit.PIECE);
        SurfaceId id = known.map(Surface::id).orElseGet(SurfaceId::next);
        facts.add(
                known.isPresent()
                        ? new JobSheet.SurfaceFact.Recounted(
                                id, known.get().extent().plus(quantity))
                        : new JobSheet.SurfaceFact.Found(id, type, name, quantity, 0, Map.of()));
        return id;
    }

    void saw(FindingId id, Sighting what, @Nullable SurfaceId surface, boolean told, List<PhotoId> photos) {
        seen.add(new JobSheet.Seen(id, what.type, what.severity, surface, what.note, told, photos));
    }

    /** Labor minutes that the work done takes by the company's standard. */
    int standardMinutes() {
        BigDecimal minutes = BigDecimal.ZERO;
        for (Map.Entry<Work, Quantity> entry : done.entrySet()) {
            minutes = minutes.add(entry.getValue().value().multiply(new BigDecimal(entry.getKey().minutes)));
        }
        return minutes.setScale(0, RoundingMode.HALF_UP).intValueExact();
    }

    JobSheet sheet(
            DocumentId id,
            List<JobSheet.Reading> readings,
            List<JobSheet.Used> used,
            JobSheet.@Nullable Declared count,
            Effort effort) {
        return new JobSheet(
                id,
                visit.id(),
                visit.date(),
                visit.crew().getFirst(),
                null,
                lines,
                extras,
                readings,
                used,
                count,
                effort,
                seen,
                facts,
                note);
    }
}
