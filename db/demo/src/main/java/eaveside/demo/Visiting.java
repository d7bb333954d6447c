package eaveside.demo;

import eaveside.kernel.QuoteId;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import eaveside.kernel.VisitLineId;
import eaveside.visits.CancelVisit;
import eaveside.visits.Cancellation;
import eaveside.visits.ReadVisits;
import eaveside.visits.RescheduleVisit;
import eaveside.visits.Rescheduling;
import eaveside.visits.ScheduleVisit;
import eaveside.visits.ScheduledLine;
import eaveside.visits.Scheduling;
import eaveside.visits.Visit;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.List;

/** The office's bookings. */
@Dependent
class Visiting {
    private final ScheduleVisit scheduleVisit;
    private final RescheduleVisit rescheduleVisit;
    private final CancelVisit cancelVisit;
    private final ReadVisits readVisits;

    @Inject
    Visiting(
            ScheduleVisit scheduleVisit,
            RescheduleVisit rescheduleVisit,
            CancelVisit cancelVisit,
            ReadVisits readVisits) {
        this.scheduleVisit = scheduleVisit;
        this.rescheduleVisit = rescheduleVisit;
        this.cancelVisit = cancelVisit;
        this.readVisits = readVisits;
    }

    Visit visit(VisitId id) {
        return readVisits.visit(id);
    }

    VisitId book(Scene scene, QuoteId quote, LocalDate day, List<UserId> crew) {
        VisitId id = VisitId.next();
        scheduleVisit.schedule(
                Scheduling.fromQuote(id, quote, day, crew, "", scene.staff().scheduler()));
        return id;
    }

    VisitId book(Scene scene, DemoSite site, List<Wish> wishes, LocalDate day, List<UserId> crew) {
        VisitId id = VisitId.next();
        scheduleVisit.schedule(Scheduling.of(
                id,
                site.customer(),
                site.site(),
                day,
                crew,
                wishes.stream()
                        .map(wish -> new ScheduledLine(
                                VisitLineId.next(), scene.range().id(wish.work()), wish.surface(), wish.quantity()))
                        .toList(),
                "Scheduled by phone",
                scene.staff().scheduler()));
        return id;
    }

    VisitId bookReturn(Scene scene, VisitId to, LocalDate day, List<UserId> crew) {
        VisitId id = VisitId.next();
        scheduleVisit.schedule(Scheduling.returning(
                id, to, day, crew, "What the rain left undone", scene.staff().scheduler()));
        return id;
    }

    void move(Scene scene, Visit visit, LocalDate to, String reason) {
        rescheduleVisit.reschedule(new Rescheduling(
                visit.id(),
                visit.version(),
                to,
                visit.crew(),
                reason,
                scene.staff().scheduler()));
    }

    void cancel(Scene scene, Visit visit, String reason) {
        cancelVisit.cancel(new Cancellation(
                visit.id(), visit.version(), reason, scene.staff().scheduler()));
    }
}
