package eaveside.demo;

import eaveside.customers.SurfaceType;
import eaveside.kernel.FindingId;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import eaveside.pricing.Quote;
import eaveside.visits.Visit;
import eaveside.visits.VisitStatus;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Who is quoted, scheduled and visited when: fills the crews' days from the first enquiry to the signed sheet. */
@Dependent
class Plot implements AfterSignOff.Schedules {
    private static final int DAYS_AHEAD = 14;
    private static final List<Integer> RAINY_WORKDAYS = List.of(17, 41);
    private static final List<Integer> FIELD_WORKDAYS = List.of(9, 30, 52);
    private static final int WRONG_SHEET = 12;
    private static final int SHUT_GATE = 27;
    private static final int MISCOUNTED_VAN = 39;

    private static final List<String> REASONS_AGAINST =
            List.of("Chose another company.", "Too dear this year.", "Will do it themselves.", "Selling the house.");

    private final Quoting quoting;
    private final Visiting visiting;
    private final Sheets sheets;
    private final AfterSignOff afterSignOff;
    private final Map<LocalDate, List<VisitId>> diary = new HashMap<>();
    private final List<DemoSite> rotation = new ArrayList<>();
    private int turn;
    private int signed;
    private int lately;
    private boolean secondPhone;

    @Inject
    Plot(Quoting quoting, Visiting visiting, Sheets sheets, AfterSignOff afterSignOff) {
        this.quoting = quoting;
        this.visiting = visiting;
        this.sheets = sheets;
        this.afterSignOff = afterSignOff;
    }

    void note(Scene scene) {
        fillRotation(scene);
        Agenda agenda = scene.agenda();
        LocalDate last = agenda.today().plusDays(DAYS_AHEAD);
        LocalDate day = scene.from().plusDays(4);
        for (int count = 0; !day.isAfter(last); day = day.plusDays(1)) {
            if (agenda.isWorkday(day)) {
                noteDay(scene, day, count++);
            }
        }
        afterSignOff.noteFreeInvoices(scene);
        note(
                scene,
                new Slot(
                        agenda.workdayBefore(agenda.today(), 24),
                        scene.staff().crews().getFirst(),
                        cottage(scene)),
                true);
        // Quotes come and go as the dice fall; this one always waits to be looked over and sent.
        DemoSite asking = rotation.getLast();
        Dice own = new Dice(scene.from().toEpochDay());
        agenda.note(
                agenda.workdayBefore(agenda.today(), 1),
                LocalTime.of(16, 50),
                () -> quoting.make(scene, asking, Wish.some(quoting.surfaces(asking), own), null));
    }

    /** Everybody in turn, businesses twice; the first two sites are Ms. Fennimore's, the third is the field. */
    private void fillRotation(Scene scene) {
        List<DemoSite> others =
                new ArrayList<>(scene.sites().subList(3, scene.sites().size()));
        others.addAll(others.stream().filter(DemoSite::business).toList());
        while (!others.isEmpty()) {
            rotation.add(others.remove(scene.dice().between(0, others.size() - 1)));
        }
    }

    private static DemoSite cottage(Scene scene) {
        return scene.sites().get(1);
    }

    private static DemoSite field(Scene scene) {
        return scene.sites().get(2);
    }

    private void noteDay(Scene scene, LocalDate day, int count) {
        if (RAINY_WORKDAYS.contains(count)) {
            scene.agenda().note(day, LocalTime.of(6, 20), () -> rain(scene));
        }
        if (FIELD_WORKDAYS.contains(count)) {
            List<UserId> everybody =
                    scene.staff().crews().stream().flatMap(List::stream).toList();
            note(scene, new Slot(day, everybody, field(scene)), false);
            return;
        }
        Dice dice = scene.dice();
        boolean today = day.equals(scene.agenda().today());
        for (List<UserId> crew : scene.staff().crews()) {
            int visits = today ? 2 : dice.percent(13) ? 0 : dice.percent(24) ? 2 : 1;
            for (int i = 0; i < visits; i++) {
                DemoSite site = rotation.get(turn++ % rotation.size());
                note(scene, new Slot(day, crew, site), dice.percent(52));
            }
        }
    }

    private void note(Scene scene, Slot slot, boolean quoted) {
        Agenda agenda = scene.agenda();
        Dice dice = scene.dice();
        LocalDate enquiry = agenda.workdayBefore(slot.day(), dice.between(6, 13));
        LocalTime time = LocalTime.of(dice.between(8, 11), dice.between(0, 59));
        if (quoted && enquiry.isAfter(scene.from())) {
            agenda.note(
                    enquiry, time, () -> enquire(scene, slot, Wish.some(quoting.surfaces(slot.site()), dice), null));
        } else {
            LocalDate call = agenda.workdayBefore(slot.day(), dice.between(2, 6));
            agenda.note(call.isAfter(scene.from()) ? call : scene.from().plusDays(1), time, () -> book(scene, slot));
        }
    }

    private void book(Scene scene, Slot slot) {
        List<Wish> wishes = Wish.some(quoting.surfaces(slot.site()), scene.dice());
        expect(scene, slot, visiting.book(scene, slot.site(), wishes, slot.day(), slot.crew()));
    }

    private void enquire(Scene scene, Slot slot, List<Wish> wishes, @Nullable FindingId cameFrom) {
        Dice dice = scene.dice();
        Quote quote = quoting.make(scene, slot.site(), wishes, cameFrom);
        scene.agenda().noteAfter(dice.between(1, 2), 14, () -> offer(scene, slot, quote, cameFrom));
    }

    /** Some want more once they have seen the price of the one thing. */
    private void offer(Scene scene, Slot slot, Quote draft, @Nullable FindingId cameFrom) {
        Dice dice = scene.dice();
        Quote quote = dice.percent(10)
                ? quoting.revise(scene, draft, slot.site(), Wish.all(quoting.surfaces(slot.site()), dice))
                : draft;
        Quote sent = quoting.send(scene, quote);
        scene.agenda().noteAfter(dice.between(1, 4), 9, () -> answer(scene, slot, sent, cameFrom));
    }

    private void answer(Scene scene, Slot slot, Quote quote, @Nullable FindingId cameFrom) {
        int answer = scene.dice().between(1, 100);
        if (answer <= 12) {
            quoting.decline(scene, quote, scene.dice().oneOf(REASONS_AGAINST));
        } else if (answer > 92) {
            noAnswer(scene, quote);
        } else {
            quoting.accept(scene, quote, slot.site().contact() + (answer % 2 == 0 ? ", by phone" : ", by email"));
            LocalDate next = scene.agenda().workdayAfter(scene.day(), 1);
            Slot kept = slot.on(slot.day().isBefore(next) ? next : slot.day());
            VisitId visit = visiting.book(scene, quote.id(), kept.day(), kept.crew());
            expect(scene, kept, visit);
            if (cameFrom != null) {
                afterSignOff.workScheduled(scene, cameFrom, kept.day());
            }
        }
    }

    private void noAnswer(Scene scene, Quote quote) {
        LocalDate late = quote.validUntil().plusDays(3);
        scene.agenda().note(late, LocalTime.of(17, 20), () -> quoting.decline(scene, quote, "No answer; withdrawn."));
    }

    private void expect(Scene scene, Slot slot, VisitId visit) {
        Agenda agenda = scene.agenda();
        diary.computeIfAbsent(slot.day(), day -> new ArrayList<>()).add(visit);
        if (scene.dice().percent(3)) {
            agenda.note(agenda.workdayBefore(slot.day(), 1), LocalTime.of(15, 30), () -> cancel(scene, visit));
        }
        agenda.note(slot.day(), endOfWork(scene), () -> work(scene, slot, visit));
    }

    private static LocalTime endOfWork(Scene scene) {
        return LocalTime.of(scene.dice().between(12, 16), scene.dice().between(0, 59));
    }

    private void cancel(Scene scene, VisitId id) {
        Visit visit = visiting.visit(id);
        if (visit.status() == VisitStatus.SCHEDULED) {
            visiting.cancel(scene, visit, "Customer is away; will call again.");
        }
    }

    private void rain(Scene scene) {
        LocalDate next = scene.agenda().workdayAfter(scene.day(), 1);
        for (VisitId id : diary.getOrDefault(scene.day(), List.of())) {
            Visit visit = visiting.visit(id);
            if (visit.status() == VisitStatus.SCHEDULED) {
                visiting.move(scene, visit, next, "Rain all day");
            }
        }
    }

    /** Ends with the signed sheet; today's are left for whoever tries the demo, and one of the last day was forgotten. */
    private void work(Scene scene, Slot slot, VisitId id) {
        Visit visit = visiting.visit(id);
        LocalDate today = scene.agenda().today();
        if (visit.status() != VisitStatus.SCHEDULED || scene.day().equals(today)) {
            return;
        }
        if (visit.date().isAfter(scene.day())) {
            scene.agenda().note(visit.date(), endOfWork(scene), () -> work(scene, slot, id));
            return;
        }
        boolean lastDay = scene.day().equals(scene.agenda().workdayBefore(today, 1));
        if (lastDay && diary.getOrDefault(scene.day(), List.of()).getLast().equals(id)) {
            return;
        }
        Incident incident = incident(scene, visit);
        Sheets.Signed sheet = sheets.sign(scene, visit, slot.site(), incident, scene.dice());
        if (scene.isLately() && !secondPhone && visit.crew().size() > 1) {
            secondPhone = true;
            sheets.sendFromSecondPhone(visit);
        }
        if (signed == WRONG_SHEET) {
            scene.agenda().noteAfter(1, 8, () -> signAnew(scene, slot, id, sheet));
        } else {
            afterSignOff.note(scene, slot, id, sheet, this);
        }
    }

    private void signAnew(Scene scene, Slot slot, VisitId id, Sheets.Signed wrong) {
        sheets.reverse(
                scene, wrong.sheet(), "Minutes of another visit", slot.crew().getFirst());
        Sheets.Signed right = sheets.sign(scene, visiting.visit(id), slot.site(), Incident.NONE, scene.dice());
        afterSignOff.note(scene, slot, id, right, this);
    }

    private Incident incident(Scene scene, Visit visit) {
        signed++;
        if (signed == WRONG_SHEET || visit.returnsTo() != null) {
            return Incident.NONE;
        }
        if (signed == SHUT_GATE) {
            return Incident.SHUT;
        }
        if (signed == MISCOUNTED_VAN) {
            return Incident.MISCOUNTED_VAN;
        }
        boolean hasArray = visit.lines().stream()
                .anyMatch(line -> scene.range().work(line.serviceItem()).type == SurfaceType.ARRAY);
        Incident incident = scene.isLately() ? Incident.lately(lately++) : Incident.usually(scene.dice());
        return incident == Incident.CRACKED_PANELS && !hasArray ? Incident.SIGHTING : incident;
    }

    @Override
    public void returnVisit(Scene scene, Slot slot, VisitId first) {
        LocalDate day = scene.agenda().workdayAfter(scene.day(), scene.dice().between(3, 6));
        Slot again = slot.on(day);
        expect(scene, again, visiting.bookReturn(scene, first, day, slot.crew()));
    }

    @Override
    public void offerWork(Scene scene, Slot slot, Sheets.Seen seen) {
        LocalDate day = scene.agenda().workdayAfter(scene.day(), scene.dice().between(8, 12));
        Wish wish = seen.what() == Sighting.GUTTER
                ? Wish.gutters(scene.dice().between(8, 22) * 10)
                : Wish.moss(quoting.surfaces(slot.site()));
        enquire(scene, slot.on(day), List.of(wish), seen.id());
    }
}
