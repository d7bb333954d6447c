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
import eaveside.kernel.KernelRefusal;
import eaveside.testing.Bench;
import java.sql.Connection;
import java.sql.Statement;
import java.time.Duration;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** A posting and the close of its month at the same time, in either order; each test closes the oldest open month. */
class CloseAndPostingIT {
    private static final long PATIENCE = Duration.ofSeconds(20).toNanos();

    @RegisterExtension
    static final Bench bench = new Bench();

    private final ExecutorService rivals = Executors.newSingleThreadExecutor();

    @BeforeAll
    static void found() {
        bench.clock().to(LocalDate.of(2026, 9, 1));
        LedgerFixture.found(bench);
        for (int month = 1; month <= 9; month++) {
            LedgerFixture.journal(bench, LocalDate.of(2026, month, 1), debit("6200", "1.00"), credit("1000", "1.00"));
        }
    }

    @AfterEach
    void books_are_true() {
        rivals.close();
        bench.verifyBooks();
    }

    private static YearMonth oldestOpen() {
        return bench.get(ReadLedger.class).periods().stream()
                .filter(p -> p.closedAt() == null)
                .map(AccountingPeriod::month)
                .min(YearMonth::compareTo)
                .orElseThrow();
    }

    private static Posted close(YearMonth month) {
        return bench.get(ClosePeriod.class).close(new ClosePeriod.Close(DocumentId.next(), month, OWNER));
    }

    private static Posted fuel(LocalDate date, String amount) {
        return bench.get(PostJournal.class)
                .post(new PostJournal.Journal(
                        DocumentId.next(),
                        PostJournal.Type.EXPENSE,
                        date,
                        "Fuel",
                        List.of(debit("6100", amount), credit("1000", amount)),
                        OWNER));
    }

    /** Starts the rival and comes back once it waits for a lock; fails where it goes through instead. */
    private <T> Future<T> startedAndWaiting(Callable<T> work) {
        Future<T> rival = rivals.submit(work);
        long deadline = System.nanoTime() + PATIENCE;
        while (!rival.isDone() && System.nanoTime() < deadline) {
            if (!bench.rows("select 1 from pg_locks where not granted and pid in"
                            + " (select pid from pg_stat_activity where datname = current_database())")
                    .isEmpty()) {
                return rival;
            }
            LockSupport.parkNanos(Duration.ofMillis(20).toNanos());
        }
        throw new AssertionError(rival.isDone() ? "the rival did not wait" : "the rival waits for no lock");
    }

    @Test
    void a_posting_in_flight_holds_up_the_close() throws Exception {
        YearMonth month = oldestOpen();
        Future<Posted> closing = bench.inTransaction(() -> {
            Posted posted = fuel(month.atDay(20), "120.00");
            assertEquals(month.atDay(20), posted.postingDate());
            return startedAndWaiting(() -> close(month));
        });
        Posted closed = closing.get();
        assertTrue(oldestOpen().isAfter(month));
        assertEquals(
                1L,
                bench.value(
                        "select count(*) from document f, document c where c.id = ? and f.type = 'EXPENSE'"
                                + " and f.posting_date = ? and f.posting_order < c.posting_order",
                        closed.id().value(),
                        java.sql.Date.valueOf(month.atDay(20))),
                "the close comes after the posting that it waited for");
    }

    @Test
    void a_close_in_flight_holds_up_a_posting_which_then_lands_on_the_next_open_day() throws Exception {
        YearMonth month = oldestOpen();
        Future<Posted> posting = bench.inTransaction(() -> {
            close(month);
            return startedAndWaiting(() -> fuel(month.atDay(20), "8.00"));
        });
        Posted late = posting.get();
        assertEquals(month.plusMonths(1).atDay(1), late.postingDate());
        assertEquals(
                month.atDay(20), bench.get(ReadLedger.class).document(late.id()).serviceDate());
    }

    @Test
    void a_document_that_bears_its_date_is_refused_by_name_after_the_close_that_it_waited_for() {
        YearMonth month = oldestOpen();
        NewDocument dated = NewDocument.of(
                DocumentId.next(),
                DocumentType.JOURNAL,
                month.atDay(20),
                "Bears its date",
                OWNER,
                new Fingerprint("0".repeat(64)),
                List.of(debit("6100", "5.00").entry(), credit("1000", "5.00").entry()));
        Future<Posted> posting = bench.inTransaction(() -> {
            close(month);
            return startedAndWaiting(() ->
                    bench.inTransaction(() -> bench.get(PostDocument.class).postOn(dated)));
        });
        ExecutionException refused = assertThrows(ExecutionException.class, posting::get);
        assertEquals(KernelRefusal.TooEarly.class, refused.getCause().getClass(), String.valueOf(refused.getCause()));
        assertEquals(
                0L,
                bench.value(
                        "select count(*) from document where id = ?", dated.id().value()));
    }

    @Test
    void a_posting_by_hand_in_flight_holds_up_the_close_too() throws Exception {
        YearMonth month = oldestOpen();
        Future<Posted> closing;
        try (Connection connection = bench.database().asApplication().getConnection();
                Statement statement = connection.createStatement()) {
            connection.setAutoCommit(false);
            statement.execute("update number_series set last_number = last_number + 1 where type = 'WRITE_OFF'");
            statement.execute("insert into document (id, type, number, posting_date, service_date, summary, posted_by,"
                    + " posted_at, fingerprint) select '" + UUID.randomUUID() + "', type, last_number, '"
                    + month.atDay(3) + "', '" + month.atDay(3) + "', 'By hand', '" + UUID.randomUUID()
                    + "', now(), repeat('0', 64) from number_series where type = 'WRITE_OFF'");
            closing = startedAndWaiting(() -> close(month));
            connection.rollback();
        }
        assertEquals(month.atEndOfMonth(), closing.get().postingDate());
    }

    @Test
    void a_closed_month_stays_closed_and_months_close_in_turn() {
        YearMonth month = oldestOpen();
        close(month);
        java.sql.Date first = java.sql.Date.valueOf(month.atDay(1));
        refusesByHand(
                "closed for good", "update period set closed_at = null, closed_by = null where first_day = ?", first);
        refusesByHand(
                "before it is open",
                "update period set closed_at = now(), closed_by = gen_random_uuid() where first_day = ?",
                java.sql.Date.valueOf(month.plusMonths(2).atDay(1)));
        refusesByHand(
                "begins open",
                "insert into period (first_day, closed_at, closed_by) values (date '2030-01-01', now(),"
                        + " gen_random_uuid())");
        assertFalse(oldestOpen().equals(month));
    }

    private static void refusesByHand(String why, String sql, Object... parameters) {
        var refused = assertThrows(java.sql.SQLException.class, () -> bench.executeAsApplication(sql, parameters), sql);
        assertTrue(refused.getMessage().contains(why), refused.getMessage());
    }
}
