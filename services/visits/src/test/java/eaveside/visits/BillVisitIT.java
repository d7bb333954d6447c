package eaveside.visits;

import static eaveside.visits.VisitsFixture.TODAY;
import static eaveside.visits.VisitsFixture.pieces;
import static eaveside.visits.VisitsFixture.usd;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.kernel.DifferenceId;
import eaveside.kernel.DocumentId;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.VisitId;
import eaveside.ledger.AccountRole;
import eaveside.ledger.LedgerRefusal;
import eaveside.ledger.Posted;
import eaveside.ledger.ReverseDocument.Reversal;
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
        VisitSheet sheet = company.sheet(visit)
                .skipped(0, 2, SkipReason.CRACKED, null)
                .extraSkylights(4)
                .build();
        bench.get(SignOffVisit.class).signOff(sheet);
        return bench.get(ReadSheets.class).sheet(sheet.id());
    }

    private static Difference decide(Difference difference, DifferenceDecision decision) {
        return bench.get(DecideDifference.class)
                .decide(new DecideDifference.Decision(
                        difference.id(), difference.version(), decision, "As agreed", company.office));
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
    void nothing_is_billed_before_every_difference_is_settled() {
        Visit visit = company.bookedFromQuote();
        assertThrows(VisitRefusal.WrongStatus.class, () -> billable(visit.id()));
        SignedSheet sheet = done(visit);
        Difference skipped = sheet.differences().getFirst();
        Difference extra = sheet.differences().getLast();
        assertThrows(VisitRefusal.Undecided.class, () -> billable(visit.id()));
        assertThrows(VisitRefusal.DecisionNotPossible.class, () -> decide(skipped, DifferenceDecision.BILL));
        assertThrows(VisitRefusal.DecisionNotPossible.class, () -> decide(extra, DifferenceDecision.COME_BACK));
        assertThrows(VisitRefusal.DecisionNotPossible.class, () -> decide(extra, DifferenceDecision.OPEN));
        decide(skipped, DifferenceDecision.LEAVE);
        Difference asked = decide(extra, DifferenceDecision.ASK);
        assertThrows(VisitRefusal.Undecided.class, () -> billable(visit.id()), "the customer has not answered");
        assertTrue(bench.get(ReadSheets.class).undecided(null, 100).rows().contains(asked));
        Difference billed = decide(asked, DifferenceDecision.BILL);
        assertEquals(billed, decide(asked, DifferenceDecision.BILL), "a retry");
        assertThrows(VisitRefusal.Changed.class, () -> decide(asked, DifferenceDecision.GIVE));

        Billable bill = billable(visit.id());
        assertEquals(visit.quote(), bill.quote());
        assertEquals(visit.priceBook(), bill.priceBook());
        assertEquals(
                List.of(pieces(46), pieces(6), pieces(4)),
                bill.lines().stream().map(BillableVisit.BillableLine::quantity).toList());
        assertEquals(
                visit.lines().getFirst().quoteLine(), bill.lines().getFirst().quoteLine());
        assertNull(bill.lines().getLast().quoteLine());
        assertTrue(bill.lines().stream().noneMatch(BillableVisit.BillableLine::goodwill));

        decide(billed, DifferenceDecision.GIVE);
        Billable given = billable(visit.id());
        assertTrue(given.lines().getLast().goodwill());
        assertNotEquals(bill.version(), given.version(), "a draft made before notices");
        bench.verifyBooks();
    }

    @Test
    void a_visit_is_billed_by_one_invoice_at_a_time() {
        Visit visit = company.booked();
        SignedSheet sheet = done(visit);
        Difference skipped = decide(sheet.differences().getFirst(), DifferenceDecision.LEAVE);
        decide(sheet.differences().getLast(), DifferenceDecision.BILL);
        InvoiceId invoice = InvoiceId.next();
        assertTrue(bench.get(ReadVisits.class).doneUnbilled(null, 100).rows().stream()
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
                    assertThrows(VisitRefusal.WrongStatus.class, () -> decide(skipped, DifferenceDecision.COME_BACK));
                    assertThrows(VisitRefusal.NotInForce.class, () -> mark.unmark(visit.id(), InvoiceId.next()));
                    mark.unmark(visit.id(), invoice);
                    assertEquals(VisitStatus.DONE, visit(visit.id()).status());
                    throw new IllegalStateException("done looking");
                }));
        bench.verifyBooks();
    }

    @Test
    void the_proof_of_work_in_progress_finds_a_visit_billed_without_its_cost() throws SQLException {
        Visit visit = company.booked();
        done(visit);
        InvoiceId invoice = InvoiceId.next();
        mark(visit.id(), invoice);
        assertTrue(offender("work in progress = ").contains(visit.id().toString()));
        unmark(visit.id(), invoice);
        bench.verifyBooks();
    }

    @Test
    void the_proof_of_sheets_finds_a_visit_that_lost_its_sheet() throws SQLException {
        Visit visit = company.booked();
        SignedSheet sheet = done(visit);
        bench.execute(
                "update visit set status = 'PLANNED', sheet_id = null, done_on = null where id = ?",
                visit.id().value());
        assertTrue(offender("every visit sheet posted").contains(visit.id().toString()));
        bench.execute(
                "update visit set status = 'DONE', sheet_id = ?, done_on = ? where id = ?",
                sheet.posted().id().value(),
                java.sql.Date.valueOf(TODAY),
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
    void skipped_work_is_come_back_for_at_its_quoted_price() {
        Visit visit = company.bookedFromQuote();
        SignedSheet sheet = done(visit);
        BookVisit book = bench.get(BookVisit.class);
        BookVisit.Return asked = new BookVisit.Return(
                VisitId.next(), visit.id(), TODAY.plusDays(7), List.of(company.other), "", company.office);
        assertThrows(VisitRefusal.NothingToComeBackFor.class, () -> book.book(asked));
        Difference skipped = decide(sheet.differences().getFirst(), DifferenceDecision.COME_BACK);
        assertTrue(waiting(skipped.id()));
        Visit back = book.book(asked);
        assertEquals(back, book.book(asked));
        assertEquals(visit.id(), back.returnsTo());
        assertEquals(pieces(2), back.lines().getFirst().planned());
        assertEquals(
                visit.lines().getFirst().quoteLine(), back.lines().getFirst().quoteLine());
        assertEquals(skipped.id(), back.lines().getFirst().comesBackFor());
        assertTrue(!waiting(skipped.id()));
        assertThrows(VisitRefusal.ReturnBooked.class, () -> decide(skipped, DifferenceDecision.LEAVE));
        bench.get(CancelVisit.class)
                .cancel(new CancelVisit.Cancellation(back.id(), back.version(), "Rain", company.office));
        assertTrue(waiting(skipped.id()), "a cancelled return waits again");
        assertEquals(
                DifferenceDecision.LEAVE,
                decide(skipped, DifferenceDecision.LEAVE).decision());
        bench.verifyBooks();
    }

    private static boolean waiting(DifferenceId difference) {
        return bench.get(ReadSheets.class).toComeBackFor(null, 100).rows().stream()
                .anyMatch(d -> d.id().equals(difference));
    }

    @Test
    void a_visit_closed_unbilled_leaves_work_in_progress_and_records_what_was_given() {
        Visit visit = company.booked();
        SignedSheet sheet = done(visit);
        CloseUnbilled close = bench.get(CloseUnbilled.class);
        var closing = new CloseUnbilled.Closing(
                DocumentId.next(), visit.id(), TODAY, "Redone after a complaint", company.office);
        assertThrows(VisitRefusal.Undecided.class, () -> close.close(closing));
        decide(sheet.differences().getFirst(), DifferenceDecision.LEAVE);
        decide(sheet.differences().getLast(), DifferenceDecision.GIVE);
        Posted posted = close.close(closing);
        assertEquals(posted, close.close(closing));
        assertThrows(
                LedgerRefusal.IdTaken.class,
                () -> close.close(
                        new CloseUnbilled.Closing(closing.id(), visit.id(), TODAY, "Other words", company.office)));
        assertEquals(VisitStatus.CLOSED_UNBILLED, visit(visit.id()).status());
        assertEquals(usd("0"), company.balance(AccountRole.WORK_IN_PROGRESS, visit.id()));
        assertEquals(usd("187.60"), company.balance(AccountRole.COST_OF_SERVICES, visit.id()));
        // 46 panels × 7.50 + 10 skylights × 12.00
        assertEquals(usd("465.00"), company.balance(AccountRole.GOODWILL_GIVEN, visit.id()));
        bench.verifyBooks();

        Reversal reversal =
                new Reversal(DocumentId.next(), closing.id(), TODAY, "It will be billed after all", company.office);
        Posted reversed = close.reverse(visit.id(), reversal);
        assertEquals(reversed, close.reverse(visit.id(), reversal));
        assertEquals(VisitStatus.DONE, visit(visit.id()).status());
        assertEquals(usd("187.60"), company.balance(AccountRole.WORK_IN_PROGRESS, visit.id()));
        assertEquals(usd("0"), company.balance(AccountRole.GOODWILL_GIVEN, visit.id()));
        bench.verifyBooks();
    }
}
