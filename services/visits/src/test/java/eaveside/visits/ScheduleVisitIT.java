package eaveside.visits;

import static eaveside.visits.VisitsFixture.TODAY;
import static eaveside.visits.VisitsFixture.pieces;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.catalog.CatalogRefusal;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Quantity;
import eaveside.kernel.Refusal;
import eaveside.kernel.Slice;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.Unit;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import eaveside.kernel.VisitLineId;
import eaveside.pricing.Quote;
import eaveside.testing.Bench;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

class ScheduleVisitIT {
    @RegisterExtension
    static final Bench bench = new Bench();

    private static final VisitQuery SCHEDULED = VisitQuery.of(VisitsShown.SCHEDULED);

    static VisitsFixture company;

    @BeforeAll
    static void found() {
        company = new VisitsFixture(bench);
    }

    private static ScheduleVisit schedule() {
        return bench.get(ScheduleVisit.class);
    }

    private static ReadVisits read() {
        return bench.get(ReadVisits.class);
    }

    @Test
    void a_free_visit_is_scheduled_once() {
        Scheduling scheduling = company.scheduling();
        Visit visit = schedule().schedule(scheduling);
        assertEquals(VisitStatus.SCHEDULED, visit.status());
        assertEquals(List.of(company.technician), visit.crew());
        assertEquals(company.arrayLine, visit.lines().getFirst().serviceLine());
        assertEquals(pieces(48), visit.lines().getFirst().planned());
        assertEquals(visit, schedule().schedule(scheduling));
        assertEquals(visit, read().visit(visit.id()));
        Scheduling other = Scheduling.of(
                scheduling.id(),
                scheduling.customer(),
                scheduling.site(),
                TODAY.plusDays(1),
                scheduling.crew(),
                scheduling.lines(),
                "",
                scheduling.by());
        assertThrows(KernelRefusal.IdTaken.class, () -> schedule().schedule(other));
    }

    @Test
    void the_plan_warns_of_alkaline_soap_on_modules_whose_manufacturer_forbids_it() {
        Visit visit = company.scheduled();
        assertEquals(1, visit.warnings().size());
        assertEquals(company.array, visit.warnings().getFirst().surface());
        assertEquals(company.van.soap, visit.warnings().getFirst().soap());
        assertEquals("Brightfield", visit.warnings().getFirst().manufacturer().value());
    }

    @Test
    void what_does_not_fit_is_refused_and_leaves_nothing() {
        Scheduling good = company.scheduling();
        long before = (Long) bench.value("select count(*) from visit");
        refused(KernelRefusal.NoRows.class, good, List.of(company.technician), List.of());
        refused(VisitRefusal.NoCrew.class, good, List.of(), good.lines());
        refused(VisitRefusal.NoCrew.class, good, List.of(company.other, company.other), good.lines());
        refused(KernelRefusal.NotFound.class, good, List.of(UserId.next()), good.lines());
        refused(
                CatalogRefusal.ServiceItemDoesNotFit.class,
                good,
                good.crew(),
                List.of(new ScheduledLine(VisitLineId.next(), company.panelWash, company.skylights, pieces(6))));
        refused(
                KernelRefusal.NotFound.class,
                good,
                good.crew(),
                List.of(new ScheduledLine(VisitLineId.next(), company.panelWash, SurfaceId.next(), pieces(6))));
        refused(
                eaveside.kernel.KernelRefusal.UnlikeUnits.class,
                good,
                good.crew(),
                List.of(new ScheduledLine(
                        VisitLineId.next(), company.panelWash, company.array, Quantity.of(6, Unit.SQUARE_FOOT))));
        assertThrows(
                KernelRefusal.NotPositive.class,
                () -> new ScheduledLine(VisitLineId.next(), company.panelWash, company.array, pieces(0)));
        assertEquals(before, bench.value("select count(*) from visit"));
    }

    /** 50,000 panels take 2 minutes each, which is all that one visit takes. */
    @Test
    void slips_of_the_keyboard_are_refused_by_their_field() {
        Scheduling good = company.scheduling();
        List<ScheduledLine> slip = List.of(
                new ScheduledLine(VisitLineId.next(), company.panelWash, company.array, pieces(48)),
                new ScheduledLine(VisitLineId.next(), company.panelWash, company.array, pieces(49_953)));
        assertEquals(List.of("lines[1].quantity"), refusedOn(good.date(), slip).fields());
        assertEquals(
                List.of("date"),
                refusedOn(LocalDate.of(1950, 1, 1), good.lines()).fields());
        assertEquals(
                List.of("date"), refusedOn(TODAY.plusYears(11), good.lines()).fields());
        Visit visit = company.scheduled();
        Refusal moved = assertThrows(
                KernelRefusal.TooLate.class,
                () -> bench.get(RescheduleVisit.class)
                        .reschedule(new Rescheduling(
                                visit.id(),
                                visit.version(),
                                TODAY.plusYears(11),
                                visit.crew(),
                                "Rain",
                                company.office)));
        assertEquals(List.of("date"), moved.fields());
    }

    private static Refusal refusedOn(LocalDate date, List<ScheduledLine> lines) {
        Scheduling good = company.scheduling();
        return assertThrows(
                Refusal.class,
                () -> schedule()
                        .schedule(Scheduling.of(
                                VisitId.next(),
                                good.customer(),
                                good.site(),
                                date,
                                good.crew(),
                                lines,
                                "",
                                good.by())));
    }

    private static void refused(
            Class<? extends Throwable> refusal, Scheduling good, List<UserId> crew, List<ScheduledLine> lines) {
        assertThrows(
                refusal,
                () -> schedule()
                        .schedule(Scheduling.of(
                                VisitId.next(),
                                good.customer(),
                                good.site(),
                                good.date(),
                                crew,
                                lines,
                                "",
                                good.by())));
    }

    @Test
    void an_accepted_quote_is_scheduled_by_one_visit_at_a_time() {
        Quote draft = company.quote(false);
        assertThrows(VisitRefusal.QuoteNotAccepted.class, () -> schedule().schedule(from(draft)));
        Quote quote = company.quote(true);
        Scheduling scheduling = from(quote);
        Visit visit = schedule().schedule(scheduling);
        assertEquals(quote.book(), visit.priceBook());
        assertEquals(quote.id(), visit.quote());
        assertEquals(
                quote.lines().stream().map(Quote.Line::id).toList(),
                visit.lines().stream().map(Visit.Line::quoteLine).toList());
        assertEquals(visit, schedule().schedule(scheduling));
        assertThrows(VisitRefusal.QuoteAlreadyScheduled.class, () -> schedule().schedule(from(quote)));
        bench.get(CancelVisit.class)
                .cancel(new Cancellation(visit.id(), visit.version(), "Sold the house", company.office));
        assertEquals(VisitStatus.SCHEDULED, schedule().schedule(from(quote)).status());
    }

    private static Scheduling from(Quote quote) {
        return Scheduling.fromQuote(VisitId.next(), quote.id(), TODAY, List.of(company.technician), "", company.office);
    }

    @Test
    void a_move_keeps_its_reason_and_tells_a_retry_from_a_rival() {
        Visit visit = company.scheduled();
        RescheduleVisit move = bench.get(RescheduleVisit.class);
        var rain = new Rescheduling(
                visit.id(),
                visit.version(),
                TODAY.plusDays(1),
                List.of(company.technician, company.other),
                "Rain",
                company.office);
        Visit moved = move.reschedule(rain);
        assertEquals(TODAY.plusDays(1), moved.date());
        assertEquals(2, moved.crew().size());
        assertEquals("Rain", moved.changes().getFirst().reason());
        assertEquals(TODAY, moved.changes().getFirst().from());
        assertEquals(moved, move.reschedule(rain));
        assertThrows(
                KernelRefusal.Stale.class,
                () -> move.reschedule(new Rescheduling(
                        visit.id(),
                        visit.version(),
                        TODAY.plusDays(2),
                        List.of(company.technician),
                        "Wind",
                        company.office)));
        Visit again = move.reschedule(new Rescheduling(
                visit.id(), moved.version(), TODAY.plusDays(3), List.of(company.other), "Ill", company.office));
        assertEquals(List.of(company.other), again.crew());
        assertEquals(2, again.changes().size());
        assertEquals(again, read().visit(visit.id()));
    }

    @Test
    void a_canceled_visit_stays_so() {
        Visit visit = company.scheduled();
        CancelVisit cancel = bench.get(CancelVisit.class);
        var wish = new Cancellation(visit.id(), visit.version(), "The customer moved", company.office);
        Visit canceled = cancel.cancel(wish);
        assertEquals(VisitStatus.CANCELED, canceled.status());
        assertEquals(canceled, cancel.cancel(wish));
        assertThrows(
                VisitRefusal.WrongStatus.class,
                () -> bench.get(RescheduleVisit.class)
                        .reschedule(new Rescheduling(
                                visit.id(),
                                canceled.version(),
                                TODAY.plusDays(1),
                                visit.crew(),
                                "Rain",
                                company.office)));
        assertThrows(
                VisitRefusal.WrongStatus.class,
                () -> bench.get(SignOffVisit.class).signOff(company.sheet(visit).build()));
    }

    @Test
    void what_was_changed_about_a_visit_cannot_be_changed_itself() {
        Visit visit = company.scheduled();
        bench.get(CancelVisit.class).cancel(new Cancellation(visit.id(), visit.version(), "Sold", company.office));
        SQLException refused = assertThrows(
                SQLException.class, () -> bench.executeAsApplication("update visit_change set reason = 'other'"));
        assertTrue(refused.getMessage().contains("permission denied"), refused.getMessage());
    }

    @Test
    void technicians_see_their_own_visits_of_the_day_only() {
        Visit mine = company.scheduled();
        Visit tomorrow = company.scheduled();
        bench.get(RescheduleVisit.class)
                .reschedule(new Rescheduling(
                        tomorrow.id(), tomorrow.version(), TODAY.plusDays(1), tomorrow.crew(), "Rain", company.office));
        List<VisitId> ids = read().sheetsOf(company.technician, TODAY).stream()
                .map(Visit.Summary::id)
                .toList();
        assertTrue(ids.contains(mine.id()));
        assertTrue(!ids.contains(tomorrow.id()));
        assertTrue(read().sheetsOf(company.other, TODAY).stream().noneMatch(v -> v.id().equals(mine.id())));
        assertNotNull(read().visitFor(company.technician, mine.id()));
        assertNotNull(read().visitFor(company.office, mine.id()));
        assertThrows(VisitRefusal.NotYours.class, () -> read().visitFor(company.other, mine.id()));
        assertThrows(KernelRefusal.NotFound.class, () -> read().visit(VisitId.next()));
    }

    @Test
    void lists_page_by_key_without_loss() {
        for (int i = 0; i < 4; i++) {
            company.scheduled();
        }
        List<VisitId> paged = new ArrayList<>();
        String after = null;
        do {
            Slice<Visit.Summary> page = read().list(SCHEDULED, after, 3);
            page.rows().forEach(v -> paged.add(v.id()));
            after = page.next();
        } while (after != null);
        assertEquals(paged.stream().distinct().toList(), paged);
        assertEquals(bench.value("select count(*) from visit where status = 'SCHEDULED'"), (long) paged.size());
        VisitQuery ofCustomer = new VisitQuery(VisitsShown.ALL, company.customer, "");
        assertEquals(3, read().list(ofCustomer, null, 3).rows().size());
        assertThrows(KernelRefusal.BadPageKey.class, () -> read().list(SCHEDULED, "x", 3));
    }
}
