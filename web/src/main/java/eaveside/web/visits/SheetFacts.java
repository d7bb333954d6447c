package eaveside.web.visits;

import eaveside.findings.FindingView;
import eaveside.findings.Photo;
import eaveside.findings.ReadFindings;
import eaveside.findings.ReadPhoto;
import eaveside.inventory.Consumption;
import eaveside.kernel.PhotoId;
import eaveside.kernel.Quantity;
import eaveside.kernel.Shared;
import eaveside.kernel.VisitId;
import eaveside.kernel.VisitLineId;
import eaveside.visits.JobSheet;
import eaveside.visits.SignedSheet;
import eaveside.visits.Visit;
import eaveside.web.Names;
import jakarta.inject.Inject;
import java.math.RoundingMode;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** A visit's plan and its signed sheet in the words that people know things by; nothing of prices or costs. */
@Shared
public class SheetFacts {
    @Inject
    ReadFindings readFindings;

    @Inject
    ReadPhoto readPhoto;

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
            String serviceItem,
            String surface,
            @Nullable Quantity planned,
            @Nullable Quantity done,
            List<JobSheet.Skip> skips,
            String acceptedBy) {
        /** The service and where, in a phrase. */
        public String what() {
            return surface.isEmpty() ? serviceItem : serviceItem + ", " + surface;
        }
    }

    /** A consumable used. */
    public record Used(String what, Quantity quantity, String line) {}

    /** A signed sheet. */
    public record Facts(SignedSheet sheet, List<Work> work, List<FindingView> findings, Names names) {
        public List<Used> used() {
            return sheet.used().stream().map(this::used).toList();
        }

        private Used used(JobSheet.Used used) {
            String line = names.line(used.serviceLine());
            return switch (used) {
                case JobSheet.Used.OfMix mix -> new Used(names.mix(mix.mix()), mix.volume(), line);
                case JobSheet.Used.OfBrush brush -> new Used(names.lot(brush.lot()), brush.units(), line);
                case JobSheet.Used.OfItem item -> new Used(names.item(item.item()), item.quantity(), line);
            };
        }

        /** The dissolved solids that a canister took out of the water: an estimate to the nearest grain. */
        public Quantity removed(JobSheet.Reading reading) {
            return whole(Consumption.grains(reading.water()));
        }

        /** To the nearest whole unit, for an estimate. */
        public Quantity whole(Quantity quantity) {
            return Quantity.of(quantity.value().setScale(0, RoundingMode.HALF_UP), quantity.unit());
        }
    }

    /** The plan alone. */
    public List<Work> plan(Visit visit) {
        names.lookUpWork(visit.site());
        return visit.lines().stream().map(line -> planned(line, null)).toList();
    }

    /** Of a sheet that was reversed with the findings that were withdrawn, whose sheet they do not say. */
    public Facts of(Visit visit, SignedSheet sheet) {
        names.lookUpWork(visit.site());
        names.lookUpItems();
        Map<VisitLineId, JobSheet.DoneLine> done =
                sheet.lines().stream().collect(Collectors.toMap(JobSheet.DoneLine::line, Function.identity()));
        Stream<Work> planned = visit.lines().stream().map(line -> planned(line, done.get(line.id())));
        return new Facts(
                sheet,
                Stream.concat(planned, sheet.extras().stream().map(this::extra)).toList(),
                readFindings.ofVisit(visit.id()).stream()
                        .filter(finding ->
                                (finding.status() == FindingView.Status.WITHDRAWN) == (sheet.reversedBy() != null))
                        .toList(),
                names);
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

    private Work planned(Visit.Line line, JobSheet.@Nullable DoneLine done) {
        return new Work(
                line.id(),
                names.serviceItem(line.serviceItem()),
                names.surface(line.surface()),
                line.planned(),
                done == null ? null : done.done(),
                done == null ? List.of() : done.skips(),
                "");
    }

    private Work extra(JobSheet.Extra extra) {
        return new Work(
                extra.id(),
                names.serviceItem(extra.serviceItem()),
                names.surface(extra.surface()),
                null,
                extra.quantity(),
                List.of(),
                extra.acceptedBy());
    }
}
