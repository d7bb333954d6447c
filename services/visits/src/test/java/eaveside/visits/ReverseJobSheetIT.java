package eaveside.visits;

import static eaveside.visits.VisitsFixture.TODAY;
import static eaveside.visits.VisitsFixture.pieces;
import static eaveside.visits.VisitsFixture.usd;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.customers.ReadSurfaces;
import eaveside.findings.FindingTypeCode;
import eaveside.findings.FindingView;
import eaveside.findings.ReadFindings;
import eaveside.findings.SeverityCode;
import eaveside.inventory.LotLevel;
import eaveside.inventory.ReadStock;
import eaveside.kernel.DocumentId;
import eaveside.kernel.FindingId;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Quantity;
import eaveside.ledger.AccountRole;
import eaveside.ledger.Posted;
import eaveside.ledger.ReverseDocument.Reversal;
import eaveside.testing.Bench;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

class ReverseJobSheetIT {
    @RegisterExtension
    static final Bench bench = new Bench();

    static VisitsFixture company;

    @BeforeAll
    static void found() {
        company = new VisitsFixture(bench);
    }

    @AfterEach
    void books_are_true() {
        bench.verifyBooks();
    }

    private static List<Map<String, Object>> stock() {
        return bench.rows("select lot_id, location_id, quantity, value from lot_stock order by 1, 2");
    }

    private static Reversal reversal(JobSheet sheet) {
        return new Reversal(DocumentId.next(), sheet.id(), TODAY, "Minutes of another visit", company.office);
    }

    private static SheetBuilder full(Visit visit, FindingId finding) {
        return company.sheet(visit)
                .skipped(0, 2, SkipReason.CRACKED, finding)
                .extraSkylights(4)
                .mixed("4", null)
                .water("171.1806", "0", "10")
                .saw(new JobSheet.Seen(
                        finding,
                        new FindingTypeCode("CRACKED_GLASS"),
                        new SeverityCode("SOON"),
                        company.array,
                        "",
                        true,
                        List.of()));
    }

    @Test
    void a_wrong_sheet_is_mirrored_in_full_once_and_entered_again() {
        Visit visit = company.scheduled();
        List<Map<String, Object>> stockBefore = stock();
        FindingId finding = FindingId.next();
        JobSheet wrong = full(visit, finding).build();
        bench.get(SignOffVisit.class).signOff(wrong);
        ReverseJobSheet reverse = bench.get(ReverseJobSheet.class);
        Reversal reversal = reversal(wrong);

        Posted posted = reverse.reverse(reversal);
        assertEquals(posted, reverse.reverse(reversal));
        assertEquals(usd("0"), company.balance(AccountRole.WORK_IN_PROGRESS, visit.id()));
        assertEquals(stockBefore, stock());
        assertEquals(
                FindingView.Status.WITHDRAWN,
                bench.get(ReadFindings.class).finding(finding).status());
        Visit reopened = bench.get(ReadVisits.class).visit(visit.id());
        assertEquals(VisitStatus.SCHEDULED, reopened.status());
        assertNull(reopened.sheet());
        assertThrows(VisitRefusal.WrongStatus.class, () -> reverse.reverse(reversal(wrong)));

        assertEquals(posted.id(), bench.get(ReadSheets.class).sheet(wrong.id()).reversedBy());
        assertTrue(bench.get(ReadSheets.class).undecided(null, 100).rows().stream()
                .noneMatch(d -> d.sheet().equals(wrong.id())));
        JobSheet right = full(visit, FindingId.next()).build();
        bench.get(SignOffVisit.class).signOff(right);
        assertEquals(2, bench.get(ReadSheets.class).ofVisit(visit.id()).size());
        assertThrows(VisitRefusal.NotInForce.class, () -> reverse.reverse(reversal(wrong)));
        assertNotNull(bench.get(ReadVisits.class).visit(visit.id()).sheet());
    }

    @Test
    void the_same_sheet_sent_after_its_reversal_does_not_come_into_force_again() {
        Visit visit = company.scheduled();
        JobSheet sheet = company.sheet(visit).mixed("1", null).build();
        SignOffVisit.SignedOff signed = bench.get(SignOffVisit.class).signOff(sheet);
        bench.get(ReverseJobSheet.class).reverse(reversal(sheet));
        assertEquals(signed, bench.get(SignOffVisit.class).signOff(sheet));
        assertEquals(
                VisitStatus.SCHEDULED,
                bench.get(ReadVisits.class).visit(visit.id()).status());
    }

    @Test
    void a_declared_count_and_a_recount_stay_since_they_say_what_is_there() {
        Visit visit = company.scheduled();
        JobSheet sheet = company.sheet(visit)
                .parts(12)
                .countedParts(12)
                .fact(new JobSheet.SurfaceFact.Recounted(company.skylights, pieces(10)))
                .build();
        bench.get(SignOffVisit.class).signOff(sheet);
        bench.get(ReverseJobSheet.class).reverse(reversal(sheet));
        assertEquals(
                pieces(12),
                bench.get(ReadStock.class).lots(company.van.van, company.van.parts).stream()
                        .map(LotLevel::quantity)
                        .reduce(pieces(0), Quantity::plus));
        assertEquals(
                pieces(10),
                bench.get(ReadSurfaces.class).surface(company.skylights).extent());
    }

    @Test
    void a_billed_visit_keeps_its_sheet() {
        Visit visit = company.scheduled();
        JobSheet sheet = company.sheet(visit).build();
        bench.get(SignOffVisit.class).signOff(sheet);
        assertThrows(
                VisitRefusal.WrongStatus.class,
                () -> bench.inTransaction(() -> {
                    bench.get(MarkBilled.class).mark(visit.id(), InvoiceId.next());
                    return bench.get(ReverseJobSheet.class).reverse(reversal(sheet));
                }));
        assertThrows(
                KernelRefusal.NotFound.class,
                () -> bench.get(ReverseJobSheet.class)
                        .reverse(new Reversal(
                                DocumentId.next(), DocumentId.next(), TODAY, "No such sheet", company.office)));
    }

    @Test
    void the_database_keeps_a_sheet_as_it_was_signed() {
        Visit visit = company.scheduled();
        JobSheet sheet = company.sheet(visit).mixed("1", null).build();
        bench.get(SignOffVisit.class).signOff(sheet);
        for (String sql : List.of(
                "update job_sheet set on_site_minutes = 1",
                "delete from job_sheet_line",
                "update job_sheet_cost set amount = amount + 1",
                "update scope_change set quantity = quantity + 1",
                "delete from visit_line")) {
            SQLException refused = assertThrows(SQLException.class, () -> bench.executeAsApplication(sql), sql);
            assertTrue(refused.getMessage().contains("permission denied"), sql + ": " + refused.getMessage());
        }
        SQLException late = assertThrows(
                SQLException.class,
                () -> bench.executeAsApplication(
                        "insert into job_sheet_cost (sheet_id, position, service_line_id, cost_type, amount)"
                                + " values (?, 90, ?, 'LABOR', 5)",
                        sheet.id().value(),
                        company.arrayLine.value()));
        assertTrue(late.getMessage().contains("already posted"), late.getMessage());
        AssertionError owner =
                assertThrows(AssertionError.class, () -> bench.execute("update job_sheet set note = 'other'"));
        assertTrue(String.valueOf(owner.getCause()).contains("append-only"));
    }
}
