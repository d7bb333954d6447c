package eaveside.ledger;

import static eaveside.ledger.LedgerFixture.OWNER;
import static eaveside.ledger.LedgerFixture.credit;
import static eaveside.ledger.LedgerFixture.debit;
import static eaveside.ledger.LedgerFixture.usd;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.kernel.DocumentId;
import eaveside.kernel.Money;
import eaveside.testing.Bench;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.joda.money.CurrencyUnit;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.api.extension.RegisterExtension;

/**
 * A company whose January was closed when closes still emptied the expense accounts, migrated: 250.00 of wages and 30.00
 * of fuel against 212.49 of labor applied, and 60.00 of wages in February, which is open.
 */
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class OldClosesIT {
    private static final LocalDate JANUARY = LocalDate.of(2026, 1, 1);
    private static final LocalDate JANUARY_ENDS = LocalDate.of(2026, 1, 31);
    private static final UUID CLOSE = UUID.randomUUID();

    @RegisterExtension
    static final Bench bench = Bench.migratedFrom("121", OldClosesIT::fill);

    private static void fill(Connection connection) throws SQLException {
        execute(connection, """
                insert into company (name, country, currency, zone, measures, books_from)
                values ('Gutterby Exterior Care', 'US', 'USD', 'America/Los_Angeles', 'US', '2026-01-01')""");
        execute(connection, "insert into period (first_day) values ('2026-01-01'), ('2026-02-01')");
        document(connection, UUID.randomUUID(), "COST", 1, "2026-01-09", "6000", "250.00", "1000", "-250.00");
        document(connection, UUID.randomUUID(), "COST", 2, "2026-01-20", "6100", "30.00", "1000", "-30.00");
        document(connection, UUID.randomUUID(), "UNBILLED", 1, "2026-01-20", "5000", "212.49", "6010", "-212.49");
        document(
                connection,
                CLOSE,
                "PERIOD_CLOSE",
                1,
                "2026-01-31",
                "6000",
                "-250.00",
                "6010",
                "212.49",
                "6090",
                "37.51",
                "6100",
                "-30.00",
                "6190",
                "30.00");
        execute(
                connection,
                "update period set closed_at = '2026-02-03 12:00Z', closed_by = gen_random_uuid()"
                        + " where first_day = '2026-01-01'");
        document(connection, UUID.randomUUID(), "COST", 3, "2026-02-06", "6000", "60.00", "1000", "-60.00");
    }

    private static void document(Connection connection, UUID id, String type, int number, String day, String... entries)
            throws SQLException {
        execute(
                connection,
                "update number_series set last_number = " + number + ", last_date = '" + day + "' where kind = '" + type
                        + "'");
        execute(
                connection,
                "insert into document (id, kind, number, posting_date, service_date, summary, posted_by, posted_at,"
                        + " fingerprint) values ('" + id + "', '" + type + "', " + number + ", '" + day + "', '" + day
                        + "', 'Of old', gen_random_uuid(), '" + day + " 18:00Z', repeat('0', 64))");
        for (int i = 0; i < entries.length; i += 2) {
            try (PreparedStatement insert = connection.prepareStatement("""
                    insert into money_entry (document_id, line, posting_date, account_code, needs_line, needs_customer,
                      needs_visit, needs_cost, amount, service_line_id, visit_id, customer_id, cost_kind)
                    select ?, ?, cast(? as date), code, needs_line, needs_customer, needs_visit, needs_cost,
                      cast(? as numeric), gen_random_uuid(), gen_random_uuid(), gen_random_uuid(),
                      case when needs_cost then 'LABOUR' end from account where code = ?""")) {
                insert.setObject(1, id);
                insert.setInt(2, i / 2 + 1);
                insert.setString(3, day);
                insert.setString(4, entries[i + 1]);
                insert.setString(5, entries[i]);
                insert.executeUpdate();
            }
        }
    }

    private static void execute(Connection connection, String sql) throws SQLException {
        try (var statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    private static Map<String, Money> closings(LocalDate from, LocalDate to) {
        return bench.get(ReadLedger.class).trialBalance(from, to).accounts().stream()
                .collect(Collectors.toMap(row -> row.code().value(), TrialBalance.Row::closing));
    }

    @Test
    @Order(1)
    void what_a_closed_month_spent_is_readable_by_nature_again() {
        assertEquals(
                Map.of(
                        "1000", usd("-280.00"),
                        "5000", usd("212.49"),
                        "6000", usd("250.00"),
                        "6010", usd("-212.49"),
                        "6100", usd("30.00")),
                closings(JANUARY, JANUARY_ENDS));
        assertEquals(usd("310.00"), closings(JANUARY, LocalDate.of(2026, 2, 28)).get("6000"));
        ReadLedger ledger = bench.get(ReadLedger.class);
        var wages = EntryFilter.of(new AccountCode("6000"), JANUARY, JANUARY_ENDS);
        assertEquals(usd("250.00"), ledger.total(wages));
        assertEquals(1, ledger.entries(wages, null, 10).rows().size(), "the close's entry is in no list");
        assertEquals(
                usd("250.00"),
                Money.sum(
                        CurrencyUnit.USD,
                        bench
                                .get(ReadBalances.class)
                                .byServiceLine(List.of(new AccountCode("6000")), JANUARY, JANUARY_ENDS)
                                .stream()
                                .map(ReadBalances.LineBalance::amount)
                                .toList()));
        bench.verifyBooks();
    }

    @Test
    @Order(2)
    void its_variances_are_kept_and_its_close_stands_as_it_was_posted() {
        assertEquals(
                List.of("6090 250.000 212.490", "6190 30.000 0.000", "6290 0.000 0.000"),
                bench
                        .rows("select account_code || ' ' || actual || ' ' || applied as kept from period_variance"
                                + " where first_day = '2026-01-01' order by 1")
                        .stream()
                        .map(row -> row.get("kept"))
                        .toList());
        ReadVariances.Variance labor =
                bench.get(ReadVariances.class).between(JANUARY, JANUARY_ENDS).getFirst();
        assertEquals("Labor variance", labor.name());
        assertEquals(usd("37.51"), labor.amount());
        assertEquals(
                5,
                bench.get(ReadLedger.class)
                        .document(new DocumentId(CLOSE))
                        .entries()
                        .size());
    }

    @Test
    @Order(3)
    void the_next_month_closes_the_new_way_and_nothing_is_ever_superseded_again() {
        bench.employ(OWNER.value());
        LedgerFixture.journal(bench, LocalDate.of(2026, 2, 10), debit("6200", "9.00"), credit("1000", "9.00"));
        bench.get(ClosePeriod.class).close(new ClosePeriod.Close(DocumentId.next(), YearMonth.of(2026, 2), OWNER));
        Map<String, Money> february = closings(LocalDate.of(2026, 2, 1), LocalDate.of(2026, 2, 28));
        assertEquals(usd("310.00"), february.get("6000"));
        assertEquals(usd("-212.49"), february.get("6010"));
        assertNull(february.get("6090"));
        SQLException refused = assertThrows(
                SQLException.class,
                () -> bench.executeAsApplication(
                        "insert into superseded_close select id from document where type = 'EXPENSE'"));
        assertTrue(refused.getMessage().contains("permission denied"), refused.getMessage());
        AssertionError fixed = assertThrows(
                AssertionError.class,
                () -> bench.execute("insert into superseded_close select id from document where type = 'EXPENSE'"));
        assertTrue(String.valueOf(fixed.getCause()).contains("append-only"), String.valueOf(fixed.getCause()));
        bench.verifyBooks();
    }
}
