package eaveside.demo;

import eaveside.costing.Effort;
import eaveside.customers.ReadSurfaces;
import eaveside.customers.Surface;
import eaveside.customers.SurfaceType;
import eaveside.findings.StorePhoto;
import eaveside.kernel.DocumentId;
import eaveside.kernel.FindingId;
import eaveside.kernel.PhotoId;
import eaveside.kernel.Quantity;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.Unit;
import eaveside.kernel.UserId;
import eaveside.ledger.ReverseDocument;
import eaveside.visits.RecordSentSheet;
import eaveside.visits.ReverseJobSheet;
import eaveside.visits.SentSheet;
import eaveside.visits.SheetToRecord;
import eaveside.visits.SignOffVisit;
import eaveside.visits.SkipReason;
import eaveside.visits.Visit;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The technicians' part: does the visit with whatever comes in the way, and signs its sheet. */
@Dependent
class Sheets {
    private final ReadSurfaces readSurfaces;
    private final StorePhoto storePhoto;
    private final Consumables consumables;
    private final SignOffVisit signOffVisit;
    private final ReverseJobSheet reverseJobSheet;
    private final RecordSentSheet recordSentSheet;

    @Inject
    Sheets(
            ReadSurfaces readSurfaces,
            StorePhoto storePhoto,
            Consumables consumables,
            SignOffVisit signOffVisit,
            ReverseJobSheet reverseJobSheet,
            RecordSentSheet recordSentSheet) {
        this.readSurfaces = readSurfaces;
        this.storePhoto = storePhoto;
        this.consumables = consumables;
        this.signOffVisit = signOffVisit;
        this.reverseJobSheet = reverseJobSheet;
        this.recordSentSheet = recordSentSheet;
    }

    /** A signed sheet and what was seen. */
    record Signed(DocumentId sheet, List<Seen> seen) {}

    /** Something seen, in the demo's own terms. */
    record Seen(FindingId id, Sighting what) {}

    Signed sign(Scene scene, Visit visit, DemoSite site, Incident incident, Dice dice) {
        Report report = new Report(visit, scene.range());
        List<Seen> seen = new ArrayList<>();
        happen(report, site, incident, seen, dice);
        boolean shut = incident == Incident.SHUT;
        var taken = shut ? new Consumables.Taken(List.of(), List.of()) : consumables.take(scene, report, dice);
        var count = incident == Incident.MISCOUNTED_VAN ? consumables.declareGloves(scene) : null;
        DocumentId id = DocumentId.next();
        signOffVisit.signOff(report.sheet(id, taken.readings(), taken.used(), count, effort(report, site, dice)));
        return new Signed(id, seen);
    }

    private static Effort effort(Report report, DemoSite site, Dice dice) {
        int people = report.visit().crew().size();
        int onSite = Math.max(10 * people, report.standardMinutes() * dice.between(82, 124) / 100);
        return new Effort(
                onSite,
                people * (site.miles() * 2 + dice.between(0, 8)),
                people * dice.between(6, 12),
                Quantity.of(site.miles(), Unit.MILE));
    }

    private void happen(Report report, DemoSite site, Incident incident, List<Seen> seen, Dice dice) {
        switch (incident) {
            case CRACKED_PANELS ->
                report.planned(SurfaceType.ARRAY).ifPresent(line -> {
                    FindingId finding = see(report, Sighting.CRACKED, Optional.ofNullable(line.surface()), seen, dice);
                    Quantity two = Quantity.of(2, Unit.PIECE).min(line.planned());
                    report.skip(line, two, SkipReason.CRACKED, "Lower row, left of the chimney", finding);
                });
            case MORE_SKYLIGHTS -> {
                int units = dice.between(2, 4);
                SurfaceId surface = report.more(
                        surface(site, SurfaceType.SKYLIGHT), SurfaceType.SKYLIGHT, "Behind the ridge", units);
                report.extra(Work.SKYLIGHT_OUT, surface, units, site.contact() + ", on site");
            }
            case MORE_PANES ->
                surface(site, SurfaceType.WINDOW)
                        .ifPresent(windows -> report.extra(
                                Work.PANE_OUT, windows.id(), dice.between(2, 6), site.contact() + ", on site"));
            case RAIN -> {
                Visit.Line last = report.visit().lines().getLast();
                report.skip(last, report.part(last, 40), SkipReason.WEATHER, "Rain from noon", null);
            }
            case NO_ACCESS -> {
                Visit.Line first = report.visit().lines().getFirst();
                report.skip(first, report.part(first, 15), SkipReason.NO_ACCESS, "Scaffold in front", null);
            }
            case LEFT_OUT -> {
                Visit.Line last = report.visit().lines().getLast();
                report.skip(last, report.part(last, 25), SkipReason.CUSTOMER_WISH, "Baby asleep", null);
            }
            case SHUT -> {
                report.visit()
                        .lines()
                        .forEach(line -> report.skip(
                                line, line.planned(), SkipReason.NO_ACCESS, "Gate locked, no one at home", null));
                report.note("Waited a quarter of an hour and called twice.");
            }
            case SIGHTING -> {
                List<Surface> surfaces = readSurfaces.ofSite(site.site());
                Sighting what = dice.oneOf(
                        Sighting.possible(surfaces.stream().map(Surface::type).toList()));
                see(
                        report,
                        what,
                        surfaces.stream()
                                .filter(s -> s.type() == what.where)
                                .map(Surface::id)
                                .findFirst(),
                        seen,
                        dice);
            }
            case NONE, MISCOUNTED_VAN -> {}
        }
    }

    private Optional<Surface> surface(DemoSite site, SurfaceType type) {
        return readSurfaces.ofSite(site.site()).stream()
                .filter(s -> s.type() == type)
                .findFirst();
    }

    private FindingId see(Report report, Sighting what, Optional<SurfaceId> surface, List<Seen> seen, Dice dice) {
        FindingId id = FindingId.next();
        List<PhotoId> photos = new ArrayList<>();
        Visit visit = report.visit();
        for (int i = what == Sighting.CRACKED ? 2 : 1; i > 0; i--) {
            PhotoId photo = PhotoId.next();
            storePhoto.store(photo, visit.id(), visit.crew().getLast(), Drawing.of(what, dice));
            photos.add(photo);
        }
        report.saw(id, what, surface.orElse(null), dice.percent(70), photos);
        seen.add(new Seen(id, what));
        return id;
    }

    /** The other of the crew had filled the sheet on a phone too, and it comes when the first has gone through. */
    void sendFromSecondPhone(Visit visit) {
        recordSentSheet.record(new SheetToRecord(
                visit.id(),
                DocumentId.next(),
                visit.crew().getLast(),
                List.of(
                        new SentSheet.Field("finding-0-type", "LOOSE_CLAMP"),
                        new SentSheet.Field("finding-0-note", "Turns by hand, second row from the ridge"),
                        new SentSheet.Field("finding-0-severity", "SOON"),
                        new SentSheet.Field("note", "Customer asks whether we clean the shed too")),
                "The visit is done; this needs one that is planned",
                false));
    }

    void reverse(Scene scene, DocumentId sheet, String reason, UserId by) {
        reverseJobSheet.reverse(new ReverseDocument.Reversal(DocumentId.next(), sheet, scene.day(), reason, by));
    }
}
