package eaveside.visits;

import static eaveside.visits.VisitsFixture.TODAY;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import eaveside.kernel.KernelRefusal;
import eaveside.kernel.QuoteId;
import eaveside.kernel.VisitId;
import eaveside.testing.Bench;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** What every command about a visit keeps to: its line of the audit log, retries, and edits that another has overtaken. */
class VisitCommandsIT {
    @RegisterExtension
    static final Bench bench = new Bench();

    static VisitsFixture company;

    @BeforeAll
    static void found() {
        company = new VisitsFixture(bench);
    }

    private static long told(String action, VisitId visit) {
        return (Long) bench.value(
                "select count(*) from audit_event where action = ? and subject = ? and outcome = 'DONE'",
                action,
                visit.toString());
    }

    @Test
    void every_command_is_on_the_audit_log_once_however_often_it_is_sent() {
        Scheduling scheduling = company.scheduling();
        Visit visit = bench.get(ScheduleVisit.class).schedule(scheduling);
        bench.get(ScheduleVisit.class).schedule(scheduling);
        assertEquals(1, told("visit.schedule", visit.id()));

        Rescheduling rain = new Rescheduling(
                visit.id(), visit.version(), TODAY.plusDays(1), List.of(company.other), "Rain", company.office);
        Visit moved = bench.get(RescheduleVisit.class).reschedule(rain);
        assertEquals(moved, bench.get(RescheduleVisit.class).reschedule(rain));
        assertEquals(1, told("visit.reschedule", visit.id()));

        Cancellation wish = new Cancellation(visit.id(), moved.version(), "Sold the house", company.office);
        Visit canceled = bench.get(CancelVisit.class).cancel(wish);
        assertEquals(canceled, bench.get(CancelVisit.class).cancel(wish));
        assertEquals(1, told("visit.cancel", visit.id()));
    }

    @Test
    void whoever_is_second_is_told_both_versions() {
        Visit visit = company.scheduled();
        Rescheduling rain =
                new Rescheduling(visit.id(), visit.version(), TODAY.plusDays(1), visit.crew(), "Rain", company.office);
        Visit moved = bench.get(RescheduleVisit.class).reschedule(rain);

        Rescheduling wind =
                new Rescheduling(visit.id(), visit.version(), TODAY.plusDays(2), visit.crew(), "Wind", company.office);
        KernelRefusal.Stale late = assertThrows(
                KernelRefusal.Stale.class,
                () -> bench.get(RescheduleVisit.class).reschedule(wind));
        assertEquals(List.of("date"), late.fields());
        assertEquals(wind, late.yours());
        assertEquals(
                new VisitState(visit.id(), moved.version(), VisitStatus.SCHEDULED, moved.date(), moved.crew()),
                late.theirs());

        Cancellation sold = new Cancellation(visit.id(), visit.version(), "Sold the house", company.office);
        KernelRefusal.Stale canceled = assertThrows(
                KernelRefusal.Stale.class, () -> bench.get(CancelVisit.class).cancel(sold));
        assertEquals(late.theirs(), canceled.theirs());
        assertEquals(moved, bench.get(ReadVisits.class).visit(visit.id()));
    }

    @Test
    void a_scope_change_is_decided_once_and_only_for_its_own_visit() {
        Visit visit = company.scheduled();
        bench.get(SignOffVisit.class)
                .signOff(company.sheet(visit)
                        .skipped(0, 2, SkipReason.NO_ACCESS, null)
                        .build());
        ScopeChange skipped =
                bench.get(ReadVisits.class).visit(visit.id()).scopeChanges().getFirst();
        DecideScopeChange decide = bench.get(DecideScopeChange.class);
        ScopeChangeDecision back = new ScopeChangeDecision(
                visit.id(), skipped.id(), skipped.version(), ScopeDecision.RETURN_VISIT, "", company.office);
        ScopeChange decided = decide.decide(back);
        assertEquals(1, skipped.version());
        assertEquals(decided, decide.decide(back));
        assertEquals(1, told("visit.decide", visit.id()));

        ScopeChangeDecision leave = new ScopeChangeDecision(
                visit.id(), skipped.id(), skipped.version(), ScopeDecision.CANCEL, "", company.office);
        KernelRefusal.Stale late = assertThrows(KernelRefusal.Stale.class, () -> decide.decide(leave));
        assertEquals(decided, late.theirs());
        assertEquals(leave, late.yours());

        ScopeChangeDecision astray = new ScopeChangeDecision(
                company.scheduled().id(), skipped.id(), decided.version(), ScopeDecision.CANCEL, "", company.office);
        assertThrows(KernelRefusal.NotFound.class, () -> decide.decide(astray));
        assertEquals(1, told("visit.decide", visit.id()));
    }

    @Test
    void a_scheduling_says_its_work_in_one_way() {
        Scheduling free = company.scheduling();
        assertThrows(
                KernelRefusal.Unfit.class,
                () -> new Scheduling(
                        free.id(), null, null, null, null, TODAY, free.crew(), free.lines(), "", company.office));
        assertThrows(
                KernelRefusal.Unfit.class,
                () -> new Scheduling(
                        free.id(),
                        QuoteId.next(),
                        null,
                        null,
                        null,
                        TODAY,
                        free.crew(),
                        free.lines(),
                        "",
                        company.office));
        assertThrows(
                KernelRefusal.Unfit.class,
                () -> new Scheduling(
                        free.id(),
                        QuoteId.next(),
                        VisitId.next(),
                        null,
                        null,
                        TODAY,
                        free.crew(),
                        List.of(),
                        "",
                        company.office));
    }

    @Test
    void the_same_command_twice_at_once_is_answered_alike_and_done_once() throws Exception {
        Scheduling scheduling = company.scheduling();
        Visit visit = alike(() -> bench.get(ScheduleVisit.class).schedule(scheduling));
        assertEquals(1, told("visit.schedule", visit.id()));

        Rescheduling rain = new Rescheduling(
                visit.id(), visit.version(), TODAY.plusDays(1), List.of(company.other), "Rain", company.office);
        Visit moved = alike(() -> bench.get(RescheduleVisit.class).reschedule(rain));
        assertEquals(1, told("visit.reschedule", visit.id()));

        Cancellation sold = new Cancellation(visit.id(), moved.version(), "Sold the house", company.office);
        alike(() -> bench.get(CancelVisit.class).cancel(sold));
        assertEquals(1, told("visit.cancel", visit.id()));
    }

    private static <T> T alike(Callable<T> command) throws Exception {
        CyclicBarrier start = new CyclicBarrier(2);
        Callable<T> together = () -> {
            start.await();
            return command.call();
        };
        try (ExecutorService pool = Executors.newFixedThreadPool(2)) {
            List<Future<T>> answers = pool.invokeAll(List.of(together, together));
            assertEquals(answers.getFirst().get(), answers.getLast().get());
            return answers.getFirst().get();
        }
    }
}
