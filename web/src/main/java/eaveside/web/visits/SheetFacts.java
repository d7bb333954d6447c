package eaveside.web.visits;

import eaveside.access.ReadUsers;
import eaveside.catalog.Catalog;
import eaveside.catalog.ServiceItem;
import eaveside.customers.ReadSurfaces;
import eaveside.customers.Surface;
import eaveside.findings.FindingView;
import eaveside.findings.Photo;
import eaveside.findings.ReadFindings;
import eaveside.findings.ReadPhoto;
import eaveside.inventory.Consumption;
import eaveside.inventory.Lot;
import eaveside.inventory.ReadStock;
import eaveside.inventory.StockItem;
import eaveside.kernel.FindingId;
import eaveside.kernel.LotId;
import eaveside.kernel.PhotoId;
import eaveside.kernel.Quantity;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.StockItemId;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.Unit;
import eaveside.kernel.VisitId;
import eaveside.kernel.VisitLineId;
import eaveside.visits.JobSheet;
import eaveside.visits.SignedSheet;
import eaveside.visits.SkipReason;
import eaveside.visits.SoapWarning;
import eaveside.visits.Visit;
import eaveside.web.Names;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** A visit's plan and its signed sheet in the words that people know things by; nothing of prices or costs. */
@Dependent
public class SheetFacts {
    @Inject
    Catalog catalog;

    @Inject
    ReadSurfaces readSurfaces;

    @Inject
    ReadStock readStock;

    @Inject
    ReadFindings readFindings;

    @Inject
    ReadPhoto readPhoto;

    @Inject
    ReadUsers readUsers;

    @Inject
    Names names;

    /**
     * Work of a visit.
     *
     * @param  planned null for an extra
     * @param  done    null while there is no sheet
     * @param  acceptedBy of an extra; empty for planned work
     */
    public record Work(
            VisitLineId id,
            ServiceItemId serviceItemId,
            String serviceItem,
            String surface,
            @Nullable Quantity planned,
            @Nullable Quantity done,
            List<Skipped> skips,
            String acceptedBy) {
        /** The service and where, in a phrase. */
        public String what() {
            return surface.isEmpty() ? serviceItem : serviceItem + ", " + surface;
        }
    }

    public record Skipped(
            Quantity quantity,
            SkipReason reason,
            String note,
            @Nullable FindingId finding) {}

    /** @param  removed grains of dissolved solids, an estimate; null where the water came in a tank */
    public record Water(
            JobSheet.Reading reading,
            String canister,
            @Nullable Quantity removed,
            String line) {
        /** An estimate to the nearest grain; zero where nothing was removed here. */
        public Quantity rounded() {
            return removed == null ? Quantity.zero(Unit.GRAIN) : whole(removed);
        }
    }

    /** A canister that worked beyond what the books had estimated, and by how much. */
    public record Exceeded(String what, Quantity quantity) {
        public Quantity rounded() {
            return whole(quantity);
        }
    }

    private static Quantity whole(Quantity quantity) {
        return Quantity.of(quantity.value().setScale(0, RoundingMode.HALF_UP), quantity.unit());
    }

    public record Used(String what, Quantity quantity, String line) {}

    public record Counted(String what, JobSheet.Counted counted) {}

    /** A signed sheet. */
    public record Facts(
            SignedSheet sheet,
            String by,
            String location,
            List<Work> work,
            List<Water> water,
            List<Exceeded> exceeded,
            List<Used> used,
            List<Counted> counted,
            List<String> warnings,
            List<FindingView> findings) {}

    /** The plan alone. */
    public List<Work> plan(Visit visit) {
        return work(visit, null);
    }

    public Facts of(Visit visit, SignedSheet sheet) {
        Map<StockItemId, StockItem> items =
                readStock.items().stream().collect(Collectors.toMap(StockItem::id, Function.identity()));
        JobSheet.Declared count = sheet.count();
        return new Facts(
                sheet,
                readUsers.nameOf(sheet.by()),
                sheet.location() == null
                        ? ""
                        : readStock.location(sheet.location()).name(),
                work(visit, sheet),
                sheet.readings().stream().map(r -> water(r, items)).toList(),
                sheet.overruns().stream()
                        .map(o -> new Exceeded(thing(o.lot(), items), o.quantity()))
                        .toList(),
                sheet.used().stream().map(u -> used(u, items)).toList(),
                count == null
                        ? List.of()
                        : count.counted().stream()
                                .map(c -> new Counted(thing(c.item(), c.lot(), items), c))
                                .toList(),
                sheet.warnings().stream().map(w -> warning(w, items)).toList(),
                readFindings.ofVisit(visit.id()).stream()
                        .filter(f -> f.status() != FindingView.Status.WITHDRAWN)
                        .toList());
    }

    /** The visit's photos that none of the sheet's findings shows: whoever took them had a reason. */
    public List<PhotoId> otherPhotos(VisitId visit, @Nullable Facts facts) {
        Set<PhotoId> shown = facts == null
                ? Set.of()
                : facts.findings().stream()
                        .flatMap(finding -> finding.photos().stream())
                        .map(Photo::id)
                        .collect(Collectors.toSet());
        return readPhoto.ofVisit(visit).stream()
                .map(Photo::id)
                .filter(photo -> !shown.contains(photo))
                .toList();
    }

    /** What the crew should know about the soap of a plan or sheet: item, surface and manufacturer, one sentence's parts each. */
    public List<List<String>> soap(List<SoapWarning> warnings) {
        return warnings.stream()
                .map(w -> List.of(
                        readStock.item(w.soap()).name(),
                        readSurfaces.surface(w.surface()).name(),
                        w.manufacturer().value()))
                .toList();
    }

    private String warning(SoapWarning warning, Map<StockItemId, StockItem> items) {
        return name(items, warning.soap()) + ": "
                + readSurfaces.surface(warning.surface()).name() + " (" + warning.manufacturer() + ")";
    }

    private List<Work> work(Visit visit, @Nullable SignedSheet sheet) {
        Map<ServiceItemId, ServiceItem> serviceItems =
                catalog.serviceItems().stream().collect(Collectors.toMap(ServiceItem::id, Function.identity()));
        Map<SurfaceId, Surface> surfaces =
                readSurfaces.ofSite(visit.site()).stream().collect(Collectors.toMap(Surface::id, Function.identity()));
        Map<VisitLineId, JobSheet.DoneLine> done = sheet == null
                ? Map.of()
                : sheet.lines().stream().collect(Collectors.toMap(JobSheet.DoneLine::line, Function.identity()));
        List<Work> work = new ArrayList<>();
        for (Visit.Line line : visit.lines()) {
            JobSheet.DoneLine did = done.get(line.id());
            work.add(new Work(
                    line.id(),
                    line.serviceItem(),
                    name(serviceItems, line.serviceItem()),
                    name(surfaces, line.surface()),
                    line.planned(),
                    did == null ? null : did.done(),
                    did == null
                            ? List.of()
                            : did.skips().stream()
                                    .map(s -> new Skipped(s.quantity(), s.reason(), s.note(), s.finding()))
                                    .toList(),
                    ""));
        }
        if (sheet != null) {
            for (JobSheet.Extra extra : sheet.extras()) {
                work.add(new Work(
                        extra.id(),
                        extra.serviceItem(),
                        name(serviceItems, extra.serviceItem()),
                        name(surfaces, extra.surface()),
                        null,
                        extra.quantity(),
                        List.of(),
                        extra.acceptedBy()));
            }
        }
        return work;
    }

    private static String name(Map<ServiceItemId, ServiceItem> serviceItems, ServiceItemId id) {
        ServiceItem serviceItem = serviceItems.get(id);
        return serviceItem == null ? "" : serviceItem.name();
    }

    private static String name(Map<SurfaceId, Surface> surfaces, @Nullable SurfaceId id) {
        Surface surface = id == null ? null : surfaces.get(id);
        return surface == null ? "" : surface.name();
    }

    private static String name(Map<StockItemId, StockItem> items, StockItemId id) {
        StockItem item = items.get(id);
        return item == null ? "" : item.name();
    }

    private Water water(JobSheet.Reading reading, Map<StockItemId, StockItem> items) {
        LotId canister = reading.canister();
        if (canister == null) {
            return new Water(reading, "", null, line(reading.serviceLine()));
        }
        return new Water(
                reading, thing(canister, items), Consumption.grains(reading.water()), line(reading.serviceLine()));
    }

    private Used used(JobSheet.Used used, Map<StockItemId, StockItem> items) {
        return switch (used) {
            case JobSheet.Used.OfMix mix ->
                new Used(readStock.mix(mix.mix()).name(), mix.volume(), line(mix.serviceLine()));
            case JobSheet.Used.OfBrush brush ->
                new Used(thing(brush.lot(), items), brush.units(), line(brush.serviceLine()));
            case JobSheet.Used.OfItem item ->
                new Used(name(items, item.item()), item.quantity(), line(item.serviceLine()));
        };
    }

    private String thing(StockItemId item, @Nullable LotId lot, Map<StockItemId, StockItem> items) {
        return lot == null ? name(items, item) : thing(lot, items);
    }

    private String thing(LotId id, Map<StockItemId, StockItem> items) {
        Lot lot = readStock.lot(id);
        String name = name(items, lot.item());
        return lot.label().isEmpty() ? name : name + " " + lot.label();
    }

    private String line(@Nullable ServiceLineId id) {
        return names.line(id);
    }
}
