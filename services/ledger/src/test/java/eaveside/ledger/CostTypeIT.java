package eaveside.ledger;

import static eaveside.ledger.LedgerFixture.OWNER;
import static eaveside.ledger.LedgerFixture.usd;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.kernel.CustomerId;
import eaveside.kernel.DocumentId;
import eaveside.kernel.FindingId;
import eaveside.kernel.Fingerprint;
import eaveside.kernel.Money;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.VisitId;
import eaveside.testing.Bench;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

class CostTypeIT {
    private static final LocalDate DAY = LocalDate.of(2026, 2, 10);

    @RegisterExtension
    static final Bench bench = new Bench();

    private final ServiceLineId line = ServiceLineId.next();
    private final VisitId visit = VisitId.next();
    private final CustomerId customer = CustomerId.next();

    @BeforeAll
    static void found() {
        LedgerFixture.found(bench);
    }

    private static Posted post(DocumentType type, List<Entry> entries) {
        Fingerprint fingerprint = new Fingerprint("0".repeat(64));
        return bench.inTransaction(() -> bench.get(PostDocument.class)
                .post(NewDocument.of(DocumentId.next(), type, DAY, "Of a test", OWNER, fingerprint, entries)));
    }

    private static void reverse(Posted posted) {
        ReverseDocument.Reversal reversal =
                new ReverseDocument.Reversal(DocumentId.next(), posted.id(), DAY, "Of a test", OWNER);
        bench.inTransaction(() -> bench.get(Posting.class)
                .post(
                        "test.reverse",
                        reversal,
                        List.of(),
                        day -> bench.get(ReverseDocument.class).reversed(DocumentType.REVERSAL, reversal)));
    }

    private Entry work(CostType type, String amount) {
        return Entry.debit(AccountRole.WORK_IN_PROGRESS, usd(amount))
                .on(line, visit, customer)
                .as(type);
    }

    @Test
    void work_in_progress_is_known_by_type_of_cost() {
        // A cost document: a job sheet has to stand on a visit, and stock on the stock ledger.
        Posted sheet = post(
                DocumentType.EXPENSE,
                List.of(
                        work(CostType.LABOR, "60.00"),
                        work(CostType.CONSUMABLES, "12.50"),
                        Entry.credit(AccountRole.LABOR_APPLIED, usd("60.00")),
                        Entry.credit(AccountRole.PAYABLES, usd("12.50"))));
        List<ReadBalances.VisitBalance> balances =
                bench.get(ReadBalances.class).ofVisit(AccountRole.WORK_IN_PROGRESS, visit);
        assertEquals(
                List.of(
                        new ReadBalances.VisitBalance(line, CostType.CONSUMABLES, usd("12.50")),
                        new ReadBalances.VisitBalance(line, CostType.LABOR, usd("60.00"))),
                balances);
        var labor =
                EntryFilter.of(AccountRole.WORK_IN_PROGRESS, DAY, DAY).on(line).as(CostType.LABOR);
        assertEquals(usd("60.00"), bench.get(ReadLedger.class).total(labor));
        assertEquals(
                List.of(CostType.LABOR),
                bench.get(ReadLedger.class).entries(labor, null, 10).rows().stream()
                        .map(EntryLine::costType)
                        .toList());
        reverse(sheet);
        assertEquals(List.of(), bench.get(ReadBalances.class).ofVisit(AccountRole.WORK_IN_PROGRESS, visit));
        bench.verifyBooks();
    }

    @Test
    void revenue_of_findings_is_a_sum_of_its_own() {
        FindingId finding = FindingId.next();
        Entry revenue = Entry.credit(AccountRole.REVENUE, usd("100.00")).on(line, visit, customer);
        Posted posted = post(
                DocumentType.JOURNAL,
                List.of(
                        revenue.cameFrom(finding),
                        Entry.credit(AccountRole.REVENUE, usd("40.00")).on(line, visit, customer),
                        Entry.debit(AccountRole.RECEIVABLES, usd("140.00")).of(customer)));
        var sums = bench.get(ReadBalances.class).byServiceLine(List.of(AccountRole.REVENUE), DAY, DAY).stream()
                .filter(b -> line.equals(b.serviceLine()))
                .collect(Collectors.toMap(
                        ReadBalances.LineBalance::fromFinding, ReadBalances.LineBalance::amount, Money::plus));
        assertEquals(usd("-100.00"), sums.get(true));
        assertEquals(usd("-40.00"), sums.get(false));
        assertEquals(
                usd("-100.00"),
                bench.get(ReadLedger.class)
                        .total(EntryFilter.of(AccountRole.REVENUE, DAY, DAY)
                                .on(line)
                                .whichCameFromFindings()));
        reverse(posted);
        bench.verifyBooks();
    }

    @Test
    void the_type_is_required_there_and_refused_elsewhere() {
        Entry without = Entry.debit(AccountRole.WORK_IN_PROGRESS, usd("5.00")).on(line, visit, customer);
        Entry travel = Entry.credit(AccountRole.TRAVEL_APPLIED, usd("5.00"));
        assertThrows(
                LedgerRefusal.MissingDimension.class, () -> post(DocumentType.JOB_SHEET, List.of(without, travel)));
        assertThrows(
                LedgerRefusal.MissingDimension.class,
                () -> post(DocumentType.JOB_SHEET, List.of(without.as(CostType.TRAVEL), travel.as(CostType.TRAVEL))));
    }

    @Test
    void the_database_requires_the_type_too() throws SQLException {
        UUID id = UUID.randomUUID();
        try (Connection connection = bench.database().asApplication().getConnection();
                Statement statement = connection.createStatement()) {
            connection.setAutoCommit(false);
            statement.execute("update number_series set last_number = last_number + 1 where type = 'WRITE_OFF'");
            statement.execute("insert into document (id, type, number, posting_date, service_date, summary, posted_by,"
                    + " posted_at, fingerprint) select '" + id + "', type, last_number, '2026-02-01', '2026-02-01',"
                    + " 'x', '" + id + "', now(), repeat('0', 64) from number_series where type = 'WRITE_OFF'");
            SQLException refused = assertThrows(
                    SQLException.class,
                    () -> statement.execute("insert into money_entry (document_id, line, posting_date, account_code,"
                            + " needs_line, needs_customer, needs_visit, needs_cost, amount, service_line_id,"
                            + " visit_id, customer_id) values ('" + id + "', 1, '2026-02-01', '5000', true, true, true,"
                            + " true, 5, '" + id + "', '" + id + "', '" + id + "')"));
            assertTrue(refused.getMessage().contains("check constraint"), refused.getMessage());
            connection.rollback();
        }
    }
}
