package eaveside.demo;

import eaveside.kernel.QuoteId;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import eaveside.kernel.VisitLineId;
import eaveside.visits.BookVisit;
import eaveside.visits.CancelVisit;
import eaveside.visits.MoveVisit;
import eaveside.visits.ReadVisits;
import eaveside.visits.Visit;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.List;

/** The office's bookings. */
@Dependent
class Visiting {
    private final BookVisit bookVisit;
    private final MoveVisit moveVisit;
    private final CancelVisit cancelVisit;
    private final ReadVisits readVisits;

    @Inject
    Visiting(BookVisit bookVisit, MoveVisit moveVisit, CancelVisit cancelVisit, ReadVisits readVisits) {
        this.bookVisit = bookVisit;
        this.moveVisit = moveVisit;
        this.cancelVisit = cancelVisit;
        this.readVisits = readVisits;
    }

    Visit visit(VisitId id) {
        return readVisits.visit(id);
    }

    VisitId book(Scene scene, QuoteId quote, LocalDate day, List<UserId> crew) {
        VisitId id = VisitId.next();
        bookVisit.book(
                new BookVisit.FromQuote(id, quote, day, crew, "", scene.staff().booker()));
        return id;
    }

    VisitId book(Scene scene, DemoSite site, List<Wish> wishes, LocalDate day, List<UserId> crew) {
        VisitId id = VisitId.next();
        bookVisit.book(new BookVisit.Booking(
                id,
                site.customer(),
                site.site(),
                day,
                crew,
                wishes.stream()
                        .map(wish -> new BookVisit.Line(
                                VisitLineId.next(), scene.range().id(wish.work()), wish.surface(), wish.quantity()))
                        .toList(),
                "Booked by phone",
                scene.staff().booker()));
        return id;
    }

    VisitId bookReturn(Scene scene, VisitId to, LocalDate day, List<UserId> crew) {
        VisitId id = VisitId.next();
        bookVisit.book(new BookVisit.Return(
                id, to, day, crew, "What the rain left undone", scene.staff().booker()));
        return id;
    }

    void move(Scene scene, Visit visit, LocalDate to, String reason) {
        moveVisit.move(new MoveVisit.Move(
                visit.id(),
                visit.version(),
                to,
                visit.crew(),
                reason,
                scene.staff().booker()));
    }

    void cancel(Scene scene, Visit visit, String reason) {
        cancelVisit.cancel(new CancelVisit.Cancellation(
                visit.id(), visit.version(), reason, scene.staff().booker()));
    }
}
