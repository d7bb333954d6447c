package eaveside.ledger;

import static eaveside.ledger.LedgerFixture.OWNER;
import static eaveside.ledger.LedgerFixture.credit;
import static eaveside.ledger.LedgerFixture.debit;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.kernel.DocumentId;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Money;
import eaveside.testing.Bench;
import java.math.BigDecimal;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Savepoint;
import java.sql.Statement;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.joda.money.CurrencyUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

class PostDocumentIT {
    private static final LocalDate DAY = LocalDate.of(2026, 2, 10);

    @RegisterExtension
    static final Bench bench = new Bench();

    @BeforeAll
    static void found() {
        LedgerFixture.found(bench);
    }

    @AfterEach
    void books_are_true() {
        bench.verifyBooks();
    }

    private static PostJournal.Journal journal(DocumentId id, LocalDate date, String amount) {
        return new PostJournal.Journal(
                id,
                PostJournal.Type.EXPENSE,
                date,
                "Fuel",
                List.of(debit("6100", amount), credit("1000", amount)),
                OWNER);
    }

    /** The books keep amounts without their currency, so that 48.20 euros would read as 48.20 dollars. */
    @Test
    void another_currency_than_the_companys_is_refused() {
        Money euros = Money.of(CurrencyUnit.EUR, new BigDecimal("48.20"));
        PostJournal.Journal journal = new PostJournal.Journal(
                DocumentId.next(),
                PostJournal.Type.EXPENSE,
                DAY,
                "Fuel",
                List.of(
                        PostJournal.Line.debit(new AccountCode("6100"), euros),
                        PostJournal.Line.credit(new AccountCode("1000"), euros)),
                OWNER);
        var refusal = assertThrows(
                KernelRefusal.UnlikeCurrencies.class,
                () -> bench.get(PostJournal.class).post(journal));
        assertEquals(List.of("lines[0].debit"), refusal.fields());
    }

    @Test
    void what_is_ten_years_older_than_the_books_posts_with_their_first_day_and_older_is_a_slip() {
        PostJournal post = bench.get(PostJournal.class);
        LocalDate begin =
                bench.inTransaction(() -> bench.get(Books.class).company().booksFrom());
        LocalDate oldest = begin.minusYears(10);
        var slip = assertThrows(
                KernelRefusal.TooEarly.class,
                () -> post.post(journal(DocumentId.next(), oldest.minusDays(1), "41.20")));
        assertEquals(List.of("date"), slip.fields());
        assertFalse(post.post(journal(DocumentId.next(), oldest, "41.20"))
                .postingDate()
                .isBefore(begin));
    }

    @Test
    void the_same_document_sent_again_posts_once() {
        DocumentId id = DocumentId.next();
        PostJournal post = bench.get(PostJournal.class);
        Posted first = post.post(journal(id, DAY, "41.20"));
        assertEquals(first, post.post(journal(id, DAY, "41.20")));
        assertThrows(KernelRefusal.IdTaken.class, () -> post.post(journal(id, DAY, "41.21")));
        assertEquals(1L, bench.value("select count(*) from document where id = ?", id.value()));
    }

    @Test
    void the_same_document_sent_many_times_at_once_posts_once() throws Exception {
        DocumentId id = DocumentId.next();
        PostJournal post = bench.get(PostJournal.class);
        List<Callable<Posted>> rivals = Collections.nCopies(6, () -> post.post(journal(id, DAY, "17.30")));
        Set<Posted> posted = new HashSet<>();
        try (ExecutorService all = Executors.newFixedThreadPool(rivals.size())) {
            for (Future<Posted> one : all.invokeAll(rivals)) {
                posted.add(one.get());
            }
        }
        assertEquals(1, posted.size(), "each is told of the one document");
        assertEquals(1L, bench.value("select count(*) from document where id = ?", id.value()));
    }

    @Test
    void entries_out_of_balance_cannot_even_be_made() {
        assertThrows(
                LedgerRefusal.OutOfBalance.class,
                () -> LedgerFixture.journal(bench, DAY, debit("6100", "10"), credit("1000", "9")));
    }

    @Test
    void the_database_refuses_an_unbalanced_document_at_commit() throws SQLException {
        UUID id = UUID.randomUUID();
        try (Connection connection = bench.database().asApplication().getConnection();
                Statement statement = connection.createStatement()) {
            connection.setAutoCommit(false);
            statement.execute("update number_series set last_number = last_number + 1 where type = 'WRITE_OFF'");
            statement.execute("insert into document (id, type, number, posting_date, service_date, summary, posted_by,"
                    + " posted_at, fingerprint) select '" + id
                    + "', type, last_number, '2026-02-01', '2026-02-01', 'x', '"
                    + id + "', now(), repeat('0', 64) from number_series where type = 'WRITE_OFF'");
            Savepoint document = connection.setSavepoint();
            SQLException tooMuch =
                    assertThrows(SQLException.class, () -> statement.execute(entry(id, "1000000000000")));
            assertTrue(tooMuch.getMessage().contains("money_entry_can_be_added_up"), tooMuch.getMessage());
            connection.rollback(document);
            statement.execute(entry(id, "5"));
            SQLException refused = assertThrows(SQLException.class, connection::commit);
            assertTrue(refused.getMessage().contains("out of balance"), refused.getMessage());
        }
    }

    private static String entry(UUID document, String amount) {
        return "insert into money_entry (document_id, line, posting_date, account_code, needs_line,"
                + " needs_customer, needs_visit, needs_cost, amount) values ('" + document
                + "', 1, '2026-02-01', '1000', false, false, false, false, " + amount + ")";
    }

    @Test
    void the_database_refuses_a_gap_in_the_numbers() {
        SQLException refused = assertThrows(
                SQLException.class,
                () -> bench.executeAsApplication(
                        "insert into document (id, type, number, posting_date, service_date, summary, posted_by,"
                                + " posted_at, fingerprint) values (?, 'WRITE_OFF', 7, '2026-02-01', '2026-02-01', 'x', ?,"
                                + " now(), repeat('0', 64))",
                        UUID.randomUUID(),
                        UUID.randomUUID()));
        assertTrue(refused.getMessage().contains("gap"), refused.getMessage());
    }

    @Test
    void the_application_may_not_change_or_remove_what_is_posted() {
        LedgerFixture.journal(bench, DAY, debit("6100", "5"), credit("1000", "5"));
        for (String sql : List.of(
                "update money_entry set amount = amount + 1",
                "delete from money_entry",
                "truncate money_entry",
                "update document set summary = 'other'",
                "delete from document")) {
            SQLException refused = assertThrows(SQLException.class, () -> bench.executeAsApplication(sql), sql);
            assertTrue(refused.getMessage().contains("permission denied"), sql + ": " + refused.getMessage());
        }
        for (String sql : List.of("update money_entry set amount = amount + 1", "delete from document where true")) {
            AssertionError refused = assertThrows(AssertionError.class, () -> bench.execute(sql), sql);
            assertTrue(String.valueOf(refused.getCause()).contains("append-only"), sql);
        }
    }

    @Test
    void entries_cannot_be_added_to_a_posted_document() {
        Posted posted = LedgerFixture.journal(bench, DAY, debit("6100", "5"), credit("1000", "5"));
        SQLException refused = assertThrows(
                SQLException.class,
                () -> bench.executeAsApplication(
                        "insert into money_entry (document_id, line, posting_date, account_code, needs_line,"
                                + " needs_customer, needs_visit, needs_cost, amount) values (?, 9, ?, '1000', false, false, false, false, 1)",
                        posted.id().value(),
                        java.sql.Date.valueOf(posted.postingDate())));
        assertTrue(refused.getMessage().contains("already posted"), refused.getMessage());
    }

    @Test
    void free_journals_keep_off_accounts_that_documents_explain() {
        assertThrows(
                LedgerRefusal.ControlledAccount.class,
                () -> LedgerFixture.journal(bench, DAY, debit("1100", "5"), credit("1000", "5")));
        assertThrows(
                KernelRefusal.NotFound.class,
                () -> LedgerFixture.journal(bench, DAY, debit("1999", "5"), credit("1000", "5")));
    }

    @Test
    void numbers_stay_gapless_when_many_post_at_once_and_some_fail() throws Exception {
        try (ExecutorService pool = Executors.newFixedThreadPool(8)) {
            List<Callable<Long>> posts = new ArrayList<>();
            for (int i = 0; i < 40; i++) {
                boolean fails = i % 4 == 0;
                posts.add(() -> {
                    try {
                        return bench.inTransaction(() -> {
                            Posted posted = bench.get(PostJournal.class).post(journal(DocumentId.next(), DAY, "1.00"));
                            if (fails) {
                                throw new IllegalStateException("a fault after the number was drawn");
                            }
                            return posted.number();
                        });
                    } catch (IllegalStateException fault) {
                        return -1L;
                    }
                });
            }
            Set<Long> numbers = new TreeSet<>();
            for (Future<Long> result : pool.invokeAll(posts)) {
                numbers.add(result.get());
            }
            numbers.remove(-1L);
            assertEquals(30, numbers.size());
        }
    }

    @Test
    void a_reversal_mirrors_once() {
        Posted posted = LedgerFixture.journal(bench, DAY, debit("6100", "77.10"), credit("1000", "77.10"));
        PostJournal post = bench.get(PostJournal.class);
        var reversal = new ReverseDocument.Reversal(DocumentId.next(), posted.id(), DAY, "Wrong account", OWNER);
        Posted reversed = post.reverse(reversal);
        assertEquals(reversed, post.reverse(reversal));
        assertThrows(
                LedgerRefusal.AlreadyReversed.class,
                () -> post.reverse(new ReverseDocument.Reversal(DocumentId.next(), posted.id(), DAY, "Again", OWNER)));
        assertThrows(
                LedgerRefusal.NotReversible.class,
                () -> post.reverse(new ReverseDocument.Reversal(DocumentId.next(), reversed.id(), DAY, "Undo", OWNER)));
        assertEquals(
                reversed.id(), bench.get(ReadLedger.class).document(posted.id()).reversedBy());
    }
}
