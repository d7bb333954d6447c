package eaveside.inventory;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.schema.BooksProof;
import eaveside.schema.Schema;
import eaveside.testing.TestDatabase;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A company's books from before stock was kept by the day: its lots get their order, and what it broke stays and is named. */
class StockByDateMigrationIT {
    /** One lot of free goods is used two days before it came; two deliveries of one day have ids that fall. */
    private static final String BOOKS = """
            insert into company (name, country, currency, zone, measures, books_from)
              values ('Gutterby Exterior Care', 'US', 'USD', 'America/Los_Angeles', 'US', '2026-01-01');
            insert into period (first_day) values ('2026-01-01'), ('2026-02-01');
            insert into stock_item (id, code, name, kind, base_unit, alkaline, active, version)
              values ('00000000-0000-7000-8000-000000000001', 'G', 'Gloves', 'PLAIN', 'H87', false, true, 0);
            insert into place (id, name, kind, active, version)
              values ('00000000-0000-7000-8000-000000000002', 'Store room', 'STORE', true, 1);
            insert into document (id, kind, number, posting_date, service_date, summary, posted_by, posted_at, fingerprint)
              select id::uuid, kind, number, day::date, day::date, 'Old', '00000000-0000-7000-8000-000000000009',
                     at::timestamptz, repeat('0', 64)
              from (values
                ('00000000-0000-7000-8000-0000000000a3', 'RECEIPT', 1, '2026-02-10', '2026-02-10 09:00Z'),
                ('00000000-0000-7000-8000-0000000000a2', 'RECEIPT', 2, '2026-02-10', '2026-02-10 08:00Z'),
                ('00000000-0000-7000-8000-0000000000a1', 'COUNT', 1, '2026-02-10', '2026-02-10 10:00Z'),
                ('00000000-0000-7000-8000-0000000000b1', 'SCRAP', 1, '2026-02-08', '2026-02-11 10:00Z'))
                as d (id, kind, number, day, at);
            update number_series s set last_number = d.number, last_date = d.day
              from (select kind, max(number) as number, max(posting_date) as day from document group by kind) d
              where d.kind = s.kind;
            insert into lot (id, item_id, item_kind, unit, document_id, label, received_on, quantity, value)
              select id::uuid, '00000000-0000-7000-8000-000000000001', 'PLAIN', 'H87', document::uuid, label, '2026-02-10',
                     quantity, 0
              from (values
                ('00000000-0000-7000-8000-0000000000c4', '00000000-0000-7000-8000-0000000000a3', 'first', 2),
                ('00000000-0000-7000-8000-0000000000c3', '00000000-0000-7000-8000-0000000000a3', 'second', 3),
                ('00000000-0000-7000-8000-0000000000c2', '00000000-0000-7000-8000-0000000000a2', 'third', 5),
                ('00000000-0000-7000-8000-0000000000c1', '00000000-0000-7000-8000-0000000000a1', 'fourth', 7))
                as l (id, document, label, quantity);
            insert into stock_entry (document_id, line, posting_date, item_id, lot_id, place_id, quantity, value)
              select document::uuid, line, day::date, '00000000-0000-7000-8000-000000000001', lot::uuid,
                     '00000000-0000-7000-8000-000000000002', quantity, 0
              from (values
                ('00000000-0000-7000-8000-0000000000a3', 1, '2026-02-10', '00000000-0000-7000-8000-0000000000c4', 2),
                ('00000000-0000-7000-8000-0000000000a3', 2, '2026-02-10', '00000000-0000-7000-8000-0000000000c3', 3),
                ('00000000-0000-7000-8000-0000000000a2', 1, '2026-02-10', '00000000-0000-7000-8000-0000000000c2', 5),
                ('00000000-0000-7000-8000-0000000000a1', 1, '2026-02-10', '00000000-0000-7000-8000-0000000000c1', 7),
                ('00000000-0000-7000-8000-0000000000b1', 1, '2026-02-08', '00000000-0000-7000-8000-0000000000c4', -1))
                as e (document, line, day, lot, quantity);
            """;

    private static final String FIRST = "00000000-0000-7000-8000-0000000000c4";
    private static final String THIRD = "00000000-0000-7000-8000-0000000000c2";
    private static final String NEXT = "00000000-0000-7000-8000-0000000000b2";

    private final TestDatabase database = TestDatabase.create();

    @BeforeEach
    void books_of_the_old_schema() throws SQLException {
        execute("drop schema public cascade; create schema public");
        Flyway.configure(Schema.class.getClassLoader())
                .dataSource(owner())
                .locations("classpath:db/migration")
                .target("121")
                .load()
                .migrate();
        execute(BOOKS);
        assertTrue(Schema.migrate(owner()) > 0);
    }

    @AfterEach
    void drop() {
        database.drop();
    }

    private DataSource owner() {
        return database.asOwner();
    }

    private void execute(String sql) throws SQLException {
        try (Connection connection = owner().getConnection();
                Statement statement = connection.createStatement()) {
            connection.setAutoCommit(false);
            statement.execute(sql);
            connection.commit();
        }
    }

    private List<String> column(String sql) throws SQLException {
        try (Connection connection = owner().getConnection();
                Statement statement = connection.createStatement();
                ResultSet result = statement.executeQuery(sql)) {
            List<String> values = new ArrayList<>();
            while (result.next()) {
                values.add(result.getString(1));
            }
            return values;
        }
    }

    /** A document of one entry. */
    private static String moves(String document, String type, int number, String day, String lot, int pieces) {
        return """
                insert into document (id, type, number, posting_date, service_date, summary, posted_by, posted_at, fingerprint)
                  values ('%1$s', '%6$s', %2$d, '%3$s', '%3$s', 'New', '00000000-0000-7000-8000-000000000009', now(),
                          repeat('0', 64));
                insert into stock_entry (document_id, line, posting_date, item_id, lot_id, location_id, quantity, value)
                  values ('%1$s', 1, '%3$s', '00000000-0000-7000-8000-000000000001', '%4$s',
                          '00000000-0000-7000-8000-000000000002', %5$d, 0);
                update number_series set last_number = %2$d, last_date = '%3$s' where type = '%6$s';
                """.formatted(document, number, day, lot, pieces, type);
    }

    private List<String> offenders() throws SQLException {
        try (Connection connection = owner().getConnection()) {
            return BooksProof.run(connection).stream()
                    .filter(proof -> !proof.holds())
                    .map(BooksProof.Result::toString)
                    .toList();
        }
    }

    @Test
    void old_lots_are_ordered_by_their_receipts_and_old_breaches_are_named() throws SQLException {
        assertEquals(
                List.of("first", "second", "third", "fourth"),
                column("select label from lot order by arrival"),
                "by number and line, whatever the ids and a clock that was set back");
        assertEquals(
                List.of("first until 2026-02-08, -1.000000"),
                column("select l.label || ' until ' || x.until || ', ' || x.low from stock_date_exception x"
                        + " join lot l on l.id = x.lot_id"));
        assertEquals(List.of(), offenders(), "the proofs hold the rest of the books to the rule");

        execute(moves(NEXT, "WRITE_OFF", 2, "2026-02-10", FIRST, -1));
        assertEquals(List.of(), offenders(), "what is there now may be used now");
    }

    @Test
    void versions_begin_at_1_and_an_edit_made_from_the_old_one_is_behind() throws SQLException {
        assertEquals(List.of("1"), column("select version from stock_item"), "it was 0, which now means new");
        assertEquals(List.of("2"), column("select version from location"));
        SQLException refused = assertThrows(SQLException.class, () -> execute("update stock_item set version = 0"));
        assertTrue(refused.getMessage().contains("stock_item_version_check"), refused.getMessage());
    }

    @Test
    void from_now_on_the_database_refuses_what_breaks_the_rule() throws SQLException {
        SQLException early =
                assertThrows(SQLException.class, () -> execute(moves(NEXT, "WRITE_OFF", 2, "2026-02-09", THIRD, -1)));
        assertTrue(early.getMessage().contains("is dated before lot"), early.getMessage());
        SQLException foundEarly =
                assertThrows(SQLException.class, () -> execute(moves(NEXT, "WRITE_OFF", 2, "2026-02-09", THIRD, 1)));
        assertTrue(foundEarly.getMessage().contains("is dated before lot"), foundEarly.getMessage());

        execute(moves(NEXT, "WRITE_OFF", 2, "2026-02-12", THIRD, -5));
        execute(moves("00000000-0000-7000-8000-0000000000b3", "COUNT", 2, "2026-02-13", THIRD, 5));
        String last = "00000000-0000-7000-8000-0000000000b4";
        SQLException below =
                assertThrows(SQLException.class, () -> execute(moves(last, "WRITE_OFF", 3, "2026-02-12", THIRD, -1)));
        assertTrue(below.getMessage().contains("would hold -1.000000"), below.getMessage());
        assertEquals(List.of(), offenders());
        execute("alter table stock_entry disable trigger stock_entry_by_date");
        execute(moves(last, "WRITE_OFF", 3, "2026-02-12", THIRD, -1));
        List<String> offenders = offenders();
        assertEquals(1, offenders.size(), offenders.toString());
        assertTrue(
                offenders.getFirst().contains("no location held less than nothing")
                        && offenders.getFirst().contains("2026-02-12: -1.000000"),
                offenders.toString());
    }
}
