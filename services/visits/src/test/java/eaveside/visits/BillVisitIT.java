package eaveside.visits;

import static eaveside.visits.VisitsFixture.TODAY;
import static eaveside.visits.VisitsFixture.pieces;
import static eaveside.visits.VisitsFixture.usd;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.kernel.DocumentId;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.ScopeChangeId;
import eaveside.kernel.VisitId;
import eaveside.ledger.AccountRole;
import eaveside.ledger.Posted;
import eaveside.schema.BooksProof;
import eaveside.testing.Bench;
import eaveside.visits.BillableVisit.Billable;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** From the signed sheet to the point where invoicing takes over. */
class BillVisitIT {
    @RegisterExtension
    static final Bench bench = new Bench();

    static VisitsFixture company;

    @BeforeAll
    static void found() {
        company = new VisitsFixture(bench);
    }

    /** Done but for 2 cracked panels; 4 skylights beyond the plan. */
    private static SignedSheet done(Visit visit) {
        JobSheet sheet = company.sheet(visit)
                .skipped(0, 2, SkipReason.CRACKED, null)
                .extraSkylights(4)
                .build();
        bench.get(SignOffVisit.class).signOff(sheet);
        return bench.get(ReadSheets.class).sheet(sheet.id());
    }

    private static ScopeChange decide(ScopeChange scopeChange, ScopeDecision decision) {
        return bench.get(DecideScopeChange.class)
                .decide(new ScopeChangeDecision(
                        scopeChange.visit(),
                        scopeChange.id(),
                        scopeChange.version(),
                        decision,
                        "As agreed",
                        company.office));
    }

    private static Billable billable(VisitId visit) {
        return bench.get(BillableVisit.class).of(visit);
    }

    private static Visit visit(VisitId id) {
        return bench.get(ReadVisits.class).visit(id);
    }

    private static void mark(VisitId visit, InvoiceId invoice) {
        bench.inTransaction(() -> {
            bench.get(MarkBilled.class).mark(visit, invoice);
            return visit;
        });
    }

    private static void unmark(VisitId visit, InvoiceId invoice) {
        bench.inTransaction(() -> {
            bench.get(MarkBilled.class).unmark(visit, invoice);
            return visit;
        });
    }

    @Test
    void nothing_is_billed_before_every_scope_change_is_settled() {
        Visit visit = company.scheduledFromQuote();
        assertThrows(VisitRefusal.WrongStatus.class, () -> billable(visit.id()));
        SignedSheet sheet = done(visit);
        ScopeChange skipped = sheet.scopeChanges().getFirst();
        ScopeChange extra = sheet.scopeChanges().getLast();
        assertThrows(VisitRefusal.Undecided.class, () -> billable(visit.id()));
        assertThrows(VisitRefusal.DecisionNotPossible.class, () -> decide(skipped, ScopeDecision.BILL));
        assertThrows(VisitRefusal.DecisionNotPossible.class, () -> decide(extra, ScopeDecision.RETURN_VISIT));
        assertThrows(VisitRefusal.DecisionNotPossible.class, () -> decide(extra, ScopeDecision.OPEN));
        decide(skipped, ScopeDecision.CANCEL);
        ScopeChange asked = decide(extra, ScopeDecision.ASK);
        assertThrows(VisitRefusal.Undecided.class, () -> billable(visit.id()), "the customer has not answered");
        assertTrue(bench.get(ReadSheets.class).undecided(null, 100).rows().contains(asked));
        ScopeChange billed = decide(asked, ScopeDecision.BILL);
        assertEquals(billed, decide(asked, ScopeDecision.BILL), "a retry");
        assertThrows(KernelRefusal.Stale.class, () -> decide(asked, ScopeDecision.NO_CHARGE));

        Billable bill = billable(visit.id());
        assertEquals(visit.quote(), bill.quote());
        assertEquals(visit.priceBook(), bill.priceBook());
        assertEquals(
                List.of(pieces(46), pieces(6), pieces(4)),
                bill.lines().stream().map(BillableLine::quantity).toList());
        assertEquals(
                visit.lines().getFirst().quoteLine(), bill.lines().getFirst().quoteLine());
        assertNull(bill.lines().getLast().quoteLine());
        assertTrue(bill.lines().stream().noneMatch(BillableLine::noCharge));

        decide(billed, ScopeDecision.NO_CHARGE);
        Billable noCharge = billable(visit.id());
        assertTrue(noCharge.lines().getLast().noCharge());
        assertNotEquals(bill.version(), noCharge.version(), "a draft made before notices");
        bench.verifyBooks();
    }

    @Test
    void a_visit_is_billed_by_one_invoice_at_a_time() {
        Visit visit = company.scheduled();
        SignedSheet sheet = done(visit);
        ScopeChange skipped = decide(sheet.scopeChanges().getFirst(), ScopeDecision.CANCEL);
        decide(sheet.scopeChanges().getLast(), ScopeDecision.BILL);
        InvoiceId invoice = InvoiceId.next();
        assertTrue(bench.get(ReadVisits.class).list(VisitQuery.of(VisitsShown.COMPLETED), null, 100).rows().stream()
                .anyMatch(v -> v.id().equals(visit.id())));
        // Rolled back, since no invoice moved the cost out of work in progress here.
        assertThrows(
                IllegalStateException.class,
                () -> bench.inTransaction(() -> {
                    MarkBilled mark = bench.get(MarkBilled.class);
                    mark.mark(visit.id(), invoice);
                    mark.mark(visit.id(), invoice);
                    assertEquals(VisitStatus.BILLED, visit(visit.id()).status());
                    assertEquals(invoice, visit(visit.id()).invoice());
                    assertThrows(VisitRefusal.WrongStatus.class, () -> mark.mark(visit.id(), InvoiceId.next()));
                    assertThrows(VisitRefusal.WrongStatus.class, () -> billable(visit.id()));
                    assertThrows(VisitRefusal.WrongStatus.class, () -> decide(skipped, ScopeDecision.RETURN_VISIT));
                    assertThrows(VisitRefusal.NotInForce.class, () -> mark.unmark(visit.id(), InvoiceId.next()));
                    mark.unmark(visit.id(), invoice);
                    assertEquals(VisitStatus.COMPLETED, visit(visit.id()).status());
                    throw new IllegalStateException("done looking");
                }));
        bench.verifyBooks();
    }

    @Test
    void the_proof_of_work_in_progress_finds_a_visit_billed_without_its_cost() throws SQLException {
        Visit visit = company.scheduled();
        done(visit);
        InvoiceId invoice = InvoiceId.next();
        mark(visit.id(), invoice);
        assertTrue(offender("work in progress = ").contains(visit.id().toString()));
        unmark(visit.id(), invoice);
        bench.verifyBooks();
    }

    @Test
    void the_proof_of_sheets_finds_a_visit_that_lost_its_sheet() throws SQLException {
        Visit visit = company.scheduled();
        SignedSheet sheet = done(visit);
        bench.execute(
                "update visit set status = 'SCHEDULED', sheet_id = null, completed_on = null, value_to_bill = null where id = ?",
                visit.id().value());
        assertTrue(offender("every job sheet posted").contains(visit.id().toString()));
        bench.execute(
                "update visit set status = 'COMPLETED', sheet_id = ?, completed_on = ? where id = ?",
                sheet.posted().id().value(),
                java.sql.Date.valueOf(TODAY),
                visit.id().value());
        bench.verifyBooks();
    }

    @Test
    void the_proof_of_what_is_to_be_scheduled_finds_a_quote_that_a_visit_carries_out() throws SQLException {
        Visit visit = company.scheduledFromQuote();
        bench.execute(
                "insert into quote_to_schedule select q.id, q.decided_at from quote q join visit v on v.quote_id = q.id where v.id = ?",
                visit.id().value());
        assertTrue(offender("an accepted quote is to be scheduled").startsWith("quote "));
        bench.execute(
                "delete from quote_to_schedule where quote_id = (select quote_id from visit where id = ?)",
                visit.id().value());
        bench.verifyBooks();
    }

    private static String offender(String statement) throws SQLException {
        try (Connection connection = bench.database().asOwner().getConnection()) {
            return String.valueOf(BooksProof.run(connection).stream()
                    .filter(r -> r.statement().startsWith(statement))
                    .findFirst()
                    .orElseThrow()
                    .offender());
        }
    }

    @Test
    void skipped_work_is_billed_by_its_return_visit_at_its_quoted_price() {
        Visit visit = company.scheduledFromQuote();
        SignedSheet sheet = done(visit);
        ScheduleVisit schedule = bench.get(ScheduleVisit.class);
        Scheduling asked = Scheduling.returning(
                VisitId.next(), visit.id(), TODAY.plusDays(7), List.of(company.other), "", company.office);
        assertThrows(VisitRefusal.NothingToReturnFor.class, () -> schedule.schedule(asked));
        ScopeChange skipped = decide(sheet.scopeChanges().getFirst(), ScopeDecision.RETURN_VISIT);
        assertTrue(waiting(skipped.id()));
        Visit back = schedule.schedule(asked);
        assertEquals(back, schedule.schedule(asked));
        assertEquals(visit.id(), back.returnsTo());
        assertEquals(pieces(2), back.lines().getFirst().planned());
        assertEquals(
                visit.lines().getFirst().quoteLine(), back.lines().getFirst().quoteLine());
        assertEquals(skipped.id(), back.lines().getFirst().returnsFor());
        assertTrue(!waiting(skipped.id()));
        assertThrows(VisitRefusal.ReturnScheduled.class, () -> decide(skipped, ScopeDecision.CANCEL));
        bench.get(CancelVisit.class).cancel(new Cancellation(back.id(), back.version(), "Rain", company.office));
        assertTrue(waiting(skipped.id()), "a canceled return waits again");
        assertEquals(ScopeDecision.CANCEL, decide(skipped, ScopeDecision.CANCEL).decision());
        bench.verifyBooks();
    }

    private static boolean waiting(ScopeChangeId scopeChange) {
        return bench.get(ReadSheets.class).awaitingReturnVisit(null, 100).rows().stream()
                .anyMatch(d -> d.id().equals(scopeChange));
    }

    @Test
    void a_visit_closed_without_billing_leaves_work_in_progress_and_records_what_was_given() {
        Visit visit = company.scheduled();
        SignedSheet sheet = done(visit);
        CloseWithoutBilling close = bench.get(CloseWithoutBilling.class);
        var closing = new CloseWithoutBilling.Closing(
                DocumentId.next(), visit.id(), TODAY, "Redone after a complaint", company.office);
        assertThrows(VisitRefusal.Undecided.class, () -> close.close(closing));
        decide(sheet.scopeChanges().getFirst(), ScopeDecision.CANCEL);
        decide(sheet.scopeChanges().getLast(), ScopeDecision.NO_CHARGE);
        Posted posted = close.close(closing);
        assertEquals(posted, close.close(closing));
        assertThrows(
                KernelRefusal.IdTaken.class,
                () -> close.close(new CloseWithoutBilling.Closing(
                        closing.id(), visit.id(), TODAY, "Other words", company.office)));
        assertEquals(VisitStatus.CLOSED_NOT_BILLED, visit(visit.id()).status());
        assertEquals(usd("0"), company.balance(AccountRole.WORK_IN_PROGRESS, visit.id()));
        assertEquals(usd("187.60"), company.balance(AccountRole.COST_OF_SERVICES, visit.id()));
        // 46 panels × 7.50 + 10 skylights × 12.00
        assertEquals(usd("465.00"), company.balance(AccountRole.NO_CHARGE_GIVEN, visit.id()));
        bench.verifyBooks();

        CloseWithoutBilling.Reopening other = new CloseWithoutBilling.Reopening(
                DocumentId.next(), visit.id(), DocumentId.next(), null, "It will be billed", company.office);
        assertThrows(VisitRefusal.NotInForce.class, () -> close.reverse(other));
        CloseWithoutBilling.Reopening reopening = new CloseWithoutBilling.Reopening(
                DocumentId.next(), visit.id(), null, null, "It will be billed after all", company.office);
        Posted reversed = close.reverse(reopening);
        bench.clock().to(TODAY.plusDays(1));
        assertEquals(reversed, close.reverse(reopening), "a retry after midnight");
        bench.clock().to(TODAY);
        assertEquals(VisitStatus.COMPLETED, visit(visit.id()).status());
        assertEquals(usd("187.60"), company.balance(AccountRole.WORK_IN_PROGRESS, visit.id()));
        assertEquals(usd("0"), company.balance(AccountRole.NO_CHARGE_GIVEN, visit.id()));
        bench.verifyBooks();
    }
}
