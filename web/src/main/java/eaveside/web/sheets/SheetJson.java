package eaveside.web.sheets;

import eaveside.costing.Effort;
import eaveside.customers.SurfaceAttribute;
import eaveside.customers.SurfaceType;
import eaveside.findings.FindingTypeCode;
import eaveside.findings.SeverityCode;
import eaveside.inventory.CountBasis;
import eaveside.inventory.Ppm;
import eaveside.inventory.WaterReading;
import eaveside.kernel.DocumentId;
import eaveside.kernel.FindingId;
import eaveside.kernel.LocationId;
import eaveside.kernel.LotId;
import eaveside.kernel.MixId;
import eaveside.kernel.PhotoId;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.StockItemId;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import eaveside.kernel.VisitLineId;
import eaveside.visits.JobSheet;
import eaveside.visits.JobSheet.SurfaceFact;
import eaveside.visits.JobSheet.Used;
import eaveside.visits.SkipReason;
import eaveside.web.Json;
import eaveside.web.Json.Measured;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** A sheet as scripts send it. Absent lists are empty. */
public final class SheetJson {
    private SheetJson() {}

    public record Skip(
            @Nullable Measured quantity,
            @Nullable String reason,
            @Nullable String note,
            @Nullable String finding) {}

    public record Line(
            @Nullable String line,
            @Nullable Measured done,
            @Nullable List<Skip> skips) {}

    public record Extra(
            @Nullable String id,
            @Nullable String serviceItem,
            @Nullable String surface,
            @Nullable Measured quantity,
            @Nullable String agreedBy) {}

    /**
     * A reading.
     *
     * @param  tapWater     parts per million, as is the product water
     * @param  canister absent for a tank filled elsewhere
     */
    public record Reading(
            @Nullable String tapWater,
            @Nullable String pureWater,
            @Nullable Measured volume,
            @Nullable String canister,
            @Nullable String serviceLine) {}

    /** One of mix, brush (a lot) or item. */
    public record Use(
            @Nullable String mix,
            @Nullable String brush,
            @Nullable String item,
            @Nullable Measured quantity,
            @Nullable String serviceLine) {}

    /** @param  basis FOUND or DIFFERENCE */
    public record Counted(
            @Nullable String item,
            @Nullable String lot,
            @Nullable String basis,
            @Nullable Measured quantity) {}

    public record Count(
            @Nullable String document,
            @Nullable String reason,
            @Nullable List<Counted> lines) {}

    /** Labor minutes, and the way there and back. */
    public record Spent(
            @Nullable Integer onSiteMinutes,
            @Nullable Integer drivingMinutes,
            @Nullable Integer loadingMinutes,
            @Nullable Measured distance) {}

    public record Finding(
            @Nullable String id,
            @Nullable String type,
            @Nullable String severity,
            @Nullable String surface,
            @Nullable String note,
            boolean customerNotified,
            @Nullable List<String> photos) {}

    /** A surface counted again; with a type and a name, one that nobody had listed. */
    public record Surface(
            @Nullable String surface,
            @Nullable Measured extent,
            @Nullable String type,
            @Nullable String name,
            int rows,
            @Nullable Map<String, Integer> attributes) {}

    /** The sheet. */
    public record Sheet(
            @Nullable String id,
            @Nullable String completedOn,
            @Nullable String location,
            @Nullable List<Line> lines,
            @Nullable List<Extra> extras,
            @Nullable List<Reading> readings,
            @Nullable List<Use> used,
            @Nullable Count count,
            @Nullable Spent effort,
            @Nullable List<Finding> findings,
            @Nullable List<Surface> surfaces,
            @Nullable String note) {
        JobSheet read(VisitId visit, UserId by) {
            Spent spent = Json.required("effort", effort);
            return new JobSheet(
                    DocumentId.of(Json.required("id", id)),
                    visit,
                    Json.date("completedOn", completedOn),
                    by,
                    optional(location, LocationId::of),
                    each(lines, SheetJson::line),
                    each(extras, SheetJson::extra),
                    each(readings, SheetJson::reading),
                    each(used, SheetJson::use),
                    optional(count, SheetJson::count),
                    new Effort(
                            Json.required("effort.onSiteMinutes", spent.onSiteMinutes()),
                            Json.required("effort.drivingMinutes", spent.drivingMinutes()),
                            Json.required("effort.loadingMinutes", spent.loadingMinutes()),
                            Json.quantity("effort.distance", spent.distance())),
                    each(findings, SheetJson::finding),
                    each(surfaces, SheetJson::surface),
                    note == null ? "" : note);
        }
    }

    private static <T, R> @Nullable R optional(@Nullable T value, Function<T, R> read) {
        return value == null ? null : read.apply(value);
    }

    private static <T, R> List<R> each(@Nullable List<T> values, Function<T, R> read) {
        List<R> all = new ArrayList<>();
        if (values != null) {
            values.forEach(value -> all.add(read.apply(value)));
        }
        return all;
    }

    private static JobSheet.DoneLine line(Line line) {
        return new JobSheet.DoneLine(
                VisitLineId.of(Json.required("lines.line", line.line())),
                Json.quantity("lines.done", line.done()),
                each(
                        line.skips(),
                        skip -> new JobSheet.Skip(
                                Json.quantity("skips.quantity", skip.quantity()),
                                Json.choice("skips.reason", SkipReason.class, skip.reason()),
                                skip.note() == null ? "" : skip.note(),
                                optional(skip.finding(), FindingId::of))));
    }

    private static JobSheet.Extra extra(Extra extra) {
        return new JobSheet.Extra(
                VisitLineId.of(Json.required("extras.id", extra.id())),
                ServiceItemId.of(Json.required("extras.serviceItem", extra.serviceItem())),
                optional(extra.surface(), SurfaceId::of),
                Json.quantity("extras.quantity", extra.quantity()),
                Json.required("extras.agreedBy", extra.agreedBy()));
    }

    private static JobSheet.Reading reading(Reading reading) {
        return new JobSheet.Reading(
                new WaterReading(
                        new Ppm(Json.number("readings.tapWater", reading.tapWater())),
                        new Ppm(Json.number("readings.pureWater", reading.pureWater())),
                        Json.quantity("readings.volume", reading.volume())),
                optional(reading.canister(), LotId::of),
                optional(reading.serviceLine(), ServiceLineId::of));
    }

    private static Used use(Use use) {
        ServiceLineId line = optional(use.serviceLine(), ServiceLineId::of);
        if (use.mix() != null) {
            return new Used.OfMix(MixId.of(use.mix()), Json.quantity("used.quantity", use.quantity()), line);
        }
        if (use.brush() != null) {
            return new Used.OfBrush(LotId.of(use.brush()), Json.quantity("used.quantity", use.quantity()), line);
        }
        return new Used.OfItem(
                StockItemId.of(Json.required("used.item", use.item())),
                Json.quantity("used.quantity", use.quantity()),
                line);
    }

    private static JobSheet.Declared count(Count count) {
        return new JobSheet.Declared(
                DocumentId.of(Json.required("count.document", count.document())),
                Json.required("count.reason", count.reason()),
                each(
                        count.lines(),
                        counted -> new JobSheet.Counted(
                                StockItemId.of(Json.required("count.item", counted.item())),
                                optional(counted.lot(), LotId::of),
                                Json.choice("count.basis", CountBasis.class, counted.basis()),
                                Json.quantity("count.quantity", counted.quantity()))));
    }

    private static JobSheet.Seen finding(Finding finding) {
        return new JobSheet.Seen(
                FindingId.of(Json.required("findings.id", finding.id())),
                new FindingTypeCode(Json.required("findings.type", finding.type())),
                new SeverityCode(Json.required("findings.severity", finding.severity())),
                optional(finding.surface(), SurfaceId::of),
                finding.note() == null ? "" : finding.note(),
                finding.customerNotified(),
                each(finding.photos(), PhotoId::of));
    }

    private static SurfaceFact surface(Surface surface) {
        SurfaceId id = SurfaceId.of(Json.required("surfaces.surface", surface.surface()));
        if (surface.type() == null) {
            return new SurfaceFact.Recounted(id, Json.quantity("surfaces.extent", surface.extent()));
        }
        Map<SurfaceAttribute, Integer> attributes = new EnumMap<>(SurfaceAttribute.class);
        if (surface.attributes() != null) {
            surface.attributes()
                    .forEach((name, value) ->
                            attributes.put(Json.choice("surfaces.attributes", SurfaceAttribute.class, name), value));
        }
        return new SurfaceFact.Found(
                id,
                Json.choice("surfaces.type", SurfaceType.class, surface.type()),
                Json.required("surfaces.name", surface.name()),
                Json.quantity("surfaces.extent", surface.extent()),
                surface.rows(),
                attributes);
    }
}
