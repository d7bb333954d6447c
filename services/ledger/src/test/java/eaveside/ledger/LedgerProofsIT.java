package eaveside.ledger;

import static eaveside.ledger.LedgerFixture.OWNER;
import static eaveside.ledger.LedgerFixture.credit;
import static eaveside.ledger.LedgerFixture.debit;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.kernel.DocumentId;
import eaveside.kernel.Fingerprint;
import eaveside.schema.BooksProof;
import eaveside.testing.Bench;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** The proofs find what got past every guard: each fault is planted with the triggers off and rolled back again. */
class LedgerProofsIT {
    @RegisterExtension
    static final Bench bench = new Bench();

    private static Posted january;

    @BeforeAll
    static void a_closed_january() {
        LedgerFixture.found(bench);
        january = LedgerFixture.journal(
                bench, LocalDate.of(2026, 1, 20), debit("6000", "250.00"), credit("1000", "250.00"));
        bench.get(ClosePeriod.class).close(new ClosePeriod.Close(DocumentId.next(), YearMonth.of(2026, 1), OWNER));
        bench.verifyBooks();
    }

    /** What the proof says once the statements have run; empty where it holds. */
    private static String said(String proof, String... statements) throws SQLException, IOException {
        try (InputStream in = BooksProof.class.getResourceAsStream("/db/proofs/" + proof);
                Connection connection = bench.database().asOwner().getConnection();
                Statement statement = connection.createStatement()) {
            connection.setAutoCommit(false);
            for (String table : List.of("document", "money_entry", "period", "superseded_close", "period_variance")) {
                statement.execute("alter table " + table + " disable trigger user");
            }
            for (String sql : statements) {
                statement.execute(sql);
            }
            String sql = new String(Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8);
            try (ResultSet offender = statement.executeQuery(sql)) {
                return offender.next() ? offender.getString(1) + ": " + offender.getString(2) : "";
            } finally {
                connection.rollback();
            }
        }
    }

    private static String document(String type, long number, String day, String order, String reverses) {
        return "insert into document (id, type, number, posting_date, service_date, reverses, summary, posted_by,"
                + " posted_at, fingerprint, posting_order) values ('" + UUID.randomUUID() + "', '" + type + "', "
                + number
                + ", '" + day + "', '" + day + "', " + reverses + ", 'Planted', gen_random_uuid(),"
                + " '2020-01-01', repeat('0', 64), " + order + ")";
    }

    @Test
    void a_document_posted_after_the_close_of_its_month_is_found_whatever_its_clock_said() throws Exception {
        assertEquals("", said("045-closed-months.sql"));
        assertEquals(
                "WRITE_OFF 1: posted after the close of 2026-01",
                said(
                        "045-closed-months.sql",
                        document("WRITE_OFF", 1, "2026-01-25", "nextval('posting_order')", "null")));
    }

    /** As data from before the order was kept has it. */
    @Test
    void without_an_order_the_clock_times_decide() throws Exception {
        List<String> old = List.of(
                "alter table document drop constraint document_has_order",
                "update document set posting_order = null",
                "update period set close_order = null");
        assertEquals("", said("045-closed-months.sql", old.toArray(String[]::new)));
        assertEquals(
                "JOURNAL 1: posted after the close of 2026-01",
                said(
                        "045-closed-months.sql",
                        old.get(0),
                        old.get(1),
                        old.get(2),
                        "update document set posted_at = posted_at + interval '1 second' where type = 'JOURNAL'"));
        assertEquals(
                "WRITE_OFF 1: posted after the close of 2026-01",
                said(
                        "045-closed-months.sql",
                        old.get(0),
                        old.get(1),
                        old.get(2),
                        document("WRITE_OFF", 1, "2026-01-25", "nextval('posting_order')", "null")));
    }

    @Test
    void a_reversal_before_its_document_is_found() throws Exception {
        assertEquals("", said("055-reversals-after.sql"));
        assertEquals(
                "REVERSAL 1: dated 2026-01-19, before JOURNAL 1 of 2026-01-20",
                said(
                        "055-reversals-after.sql",
                        document("REVERSAL", 1, "2026-01-19", "nextval('posting_order')", "'" + january.id() + "'")));
    }

    @Test
    void a_close_that_moves_money_and_a_superseded_one_that_counts_are_found() throws Exception {
        assertEquals("", said("060-closes-move-nothing.sql"));
        String wages = "insert into money_entry (document_id, line, posting_date, account_code, needs_line,"
                + " needs_customer, needs_visit, needs_cost, amount) select id, 1, posting_date, '6000', false, false,"
                + " false, false, -250 from document where type = 'PERIOD_CLOSE'";
        assertEquals("PERIOD_CLOSE 1: moves money between accounts", said("060-closes-move-nothing.sql", wages));
        assertEquals(
                "PERIOD_CLOSE 1: is left out of every figure, though it is worth -250.000 on 6090",
                said(
                        "060-closes-move-nothing.sql",
                        wages,
                        "insert into superseded_close select id from document where type = 'PERIOD_CLOSE'"));
    }

    @Test
    void entries_that_differ_from_what_the_closed_month_kept_are_found() throws Exception {
        assertEquals("", said("065-variances-kept.sql"));
        assertEquals(
                "month 2026-01: 6090: kept 250.000 spent and 0.000 applied, entered 249.000 and 0.000",
                said("065-variances-kept.sql", "update money_entry set amount = 249 where account_code = '6000'"));
        assertEquals(
                "month 2026-01: 6090: kept 0.000 spent and 0.000 applied, entered 250.000 and 0.000",
                said("065-variances-kept.sql", "delete from period_variance"));
    }

    @Test
    void a_close_with_entries_cannot_be_made_nor_inserted() throws SQLException {
        assertThrows(
                LedgerRefusal.CloseMovesMoney.class,
                () -> NewDocument.of(
                        DocumentId.next(),
                        DocumentType.PERIOD_CLOSE,
                        LocalDate.of(2026, 2, 28),
                        "Close",
                        OWNER,
                        new Fingerprint("0".repeat(64)),
                        List.of(
                                Entry.debit(new AccountCode("6090"), LedgerFixture.usd("5")),
                                Entry.credit(new AccountCode("6000"), LedgerFixture.usd("5")))));
        UUID id = UUID.randomUUID();
        try (Connection connection = bench.database().asApplication().getConnection();
                Statement statement = connection.createStatement()) {
            connection.setAutoCommit(false);
            statement.execute("insert into period (first_day) values ('2026-02-01') on conflict do nothing");
            statement.execute("insert into document (id, type, number, posting_date, service_date, summary, posted_by,"
                    + " posted_at, fingerprint) values ('" + id + "', 'PERIOD_CLOSE', 2, '2026-02-28', '2026-02-28',"
                    + " 'By hand', gen_random_uuid(), now(), repeat('0', 64))");
            SQLException refused = assertThrows(
                    SQLException.class,
                    () -> statement.execute("insert into money_entry (document_id, line, posting_date, account_code,"
                            + " needs_line, needs_customer, needs_visit, needs_cost, amount) values ('" + id
                            + "', 1, '2026-02-28', '6000', false, false, false, false, -5)"));
            assertTrue(refused.getMessage().contains("moves no money"), refused.getMessage());
            connection.rollback();
        }
    }

    @Test
    void what_a_closed_month_kept_cannot_be_added_to() {
        SQLException refused = assertThrows(
                SQLException.class,
                () -> bench.executeAsApplication("insert into period_variance values ('2026-01-01', '6090', 1, 1)"));
        assertTrue(refused.getMessage().contains("is not open"), refused.getMessage());
        assertFalse(bench.rows("select 1 from period_variance where account_code = '6090'")
                .isEmpty());
    }
}
