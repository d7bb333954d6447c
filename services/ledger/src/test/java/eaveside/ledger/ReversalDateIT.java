package eaveside.ledger;

import static eaveside.ledger.LedgerFixture.OWNER;
import static eaveside.ledger.LedgerFixture.credit;
import static eaveside.ledger.LedgerFixture.debit;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.kernel.DocumentId;
import eaveside.testing.Bench;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class ReversalDateIT {
    private static final LocalDate POSTED = LocalDate.of(2026, 2, 20);

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

    private static Posted fuel() {
        return LedgerFixture.journal(bench, POSTED, debit("6100", "12.00"), credit("1000", "12.00"));
    }

    private static ReverseDocument.Reversal reversal(Posted of, LocalDate date) {
        return new ReverseDocument.Reversal(DocumentId.next(), of.id(), date, "Entered wrongly", OWNER);
    }

    @ParameterizedTest
    @EnumSource(names = {"REVERSAL", "CREDIT_MEMO"})
    void a_reversal_and_a_credit_memo_are_refused_before_the_day_of_what_they_take_back(DocumentType type) {
        Posted posted = fuel();
        ReverseDocument.Reversal early = reversal(posted, POSTED.minusDays(1));
        LedgerRefusal.BeforeBasis refused = assertThrows(
                LedgerRefusal.BeforeBasis.class,
                () -> bench.inTransaction(() -> bench.get(Posting.class)
                        .post(
                                "test.reverse",
                                early,
                                List.of(),
                                day -> bench.get(ReverseDocument.class).reversed(type, early))));
        assertEquals(List.of("date"), refused.fields());
        assertTrue(refused.text().contains("2026-02-19") && refused.text().contains("2026-02-20"), refused.text());
        assertEquals(
                0L,
                bench.value(
                        "select count(*) from document where reverses = ?",
                        posted.id().value()));
    }

    @Test
    void the_same_day_is_early_enough() {
        Posted posted = fuel();
        Posted reversed = bench.get(PostJournal.class).reverse(reversal(posted, POSTED));
        assertEquals(POSTED, reversed.postingDate());
    }

    /** By hand, the posting date first, then the day that the reversal is about. */
    @Test
    void the_database_refuses_it_too() throws SQLException {
        Posted posted = fuel();
        for (String dates : List.of("'2026-02-19', '2026-02-19'", "'2026-02-21', '2026-02-19'")) {
            try (Connection connection = bench.database().asApplication().getConnection();
                    Statement statement = connection.createStatement()) {
                connection.setAutoCommit(false);
                statement.execute("update number_series set last_number = last_number + 1 where type = 'CREDIT_MEMO'");
                SQLException refused = assertThrows(
                        SQLException.class,
                        () -> statement.execute(
                                "insert into document (id, type, number, posting_date, service_date, reverses, summary,"
                                        + " posted_by, posted_at, fingerprint) select '" + UUID.randomUUID()
                                        + "', type, last_number, " + dates + ", '"
                                        + posted.id() + "', 'By hand', '" + UUID.randomUUID()
                                        + "', now(), repeat('0', 64) from number_series where type = 'CREDIT_MEMO'"));
                assertTrue(refused.getMessage().contains("before the document that it reverses"), refused.getMessage());
                connection.rollback();
            }
        }
    }
}
