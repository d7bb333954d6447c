package eaveside.invoicing;

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
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Books that were kept before dates had to be in order: they migrate as they are, and what comes after keeps to the order. */
class BackdatedBooksIT {
    private static final String BEFORE = "121";

    private final TestDatabase database = TestDatabase.create();
    private boolean renamed;

    @BeforeEach
    void books_of_before() throws SQLException {
        execute("drop schema public cascade", "create schema public");
        Flyway.configure(Schema.class.getClassLoader())
                .dataSource(database.asOwner())
                .locations("classpath:db/migration")
                .target(BEFORE)
                .load()
                .migrate();
        execute("""
                insert into company (name, country, currency, zone, measures, books_from)
                  values ('Gutterby Exterior Care', 'US', 'USD', 'America/Los_Angeles', 'US', '2026-03-01')
                """, "insert into period (first_day) values ('2026-03-01')", """
                insert into customer (id, name, kind, street, city, region, postal_code, country, email, phone,
                    payment_term_days, note, active, version, changed_by, changed_at)
                  values (%s, 'Dormer Bakery', 'BUSINESS', '', '', '', '', 'US', '', '', 14, '', true, 1, %s, now())
                """.formatted(id(1), id(9)), """
                insert into service_line (id, code, name, active, version, changed_by, changed_at)
                  values (%s, 'WINDOWS', 'Windows', true, 1, %s, now())
                """.formatted(
                        id(2), id(9)));
        // A payment on the 5th pays an invoice of the 10th; credit is used on the 15th that comes on the 20th.
        inOne(payment(0x10, 1, "2026-03-05", "100"), invoice(0x20, 1, "2026-03-10", "100"), settles(0x10, 0x20, "100"));
        inOne(invoice(0x21, 2, "2026-03-12", "50"));
        inOne(
                "set constraints all deferred",
                document(0x30, "CREDIT_MATCH", 1, "2026-03-15"),
                entry(0x30, 1, "2026-03-15", "CUSTOMER_CREDIT", "50"),
                entry(0x30, 2, "2026-03-15", "RECEIVABLES", "-50"),
                settles(0x30, 0x21, "50"));
        inOne(
                document(0x11, "PAYMENT", 2, "2026-03-20"),
                "insert into payment (id, number, customer_id, amount, method) values (%s, 2, %s, 50, 'CHECK')"
                        .formatted(id(0x11), id(1)),
                entry(0x11, 1, "2026-03-20", "BANK", "50"),
                entry(0x11, 2, "2026-03-20", "CUSTOMER_CREDIT", "-50"),
                "insert into customer_account (customer_id, credit) values (%s, 0)".formatted(id(1)),
                "update number_series s set last_number = d.n, last_date = d.day from (select kind, max(number) as n,"
                        + " max(posting_date) as day from document group by kind) d where d.kind = s.kind");
    }

    @AfterEach
    void drop() {
        database.drop();
    }

    private static String id(int last) {
        return "'01900000-0000-7000-8000-%012x'".formatted(last);
    }

    private static String document(int id, String kind, int number, String day) {
        return """
                insert into document (id, kind, number, posting_date, service_date, summary, posted_by, posted_at, fingerprint)
                  values (%s, '%s', %d, '%s', '%s', 'Of before', %s, now(), repeat('0', 64))
                """.formatted(id(id), kind, number, day, day, id(9));
    }

    private static String entry(int id, int line, String day, String role, String amount) {
        return """
                insert into money_entry (document_id, line, posting_date, account_code, needs_line, needs_customer, needs_visit,
                    needs_cost, amount, service_line_id, customer_id)
                  select %s, %d, '%s', code, needs_line, needs_customer, needs_visit, needs_cost, %s,
                    case when needs_line then %s::uuid end, case when needs_customer then %s::uuid end
                  from account where role = '%s'
                """.formatted(id(id), line, day, amount, id(2), id(1), role);
    }

    private static String payment(int id, int number, String day, String amount) {
        return String.join(
                ";",
                document(id, "PAYMENT", number, day),
                "insert into payment (id, number, customer_id, amount, method) values (%s, %d, %s, %s, 'CHECK')"
                        .formatted(id(id), number, id(1), amount),
                entry(id, 1, day, "BANK", amount),
                entry(id, 2, day, "RECEIVABLES", "-" + amount));
    }

    private static String invoice(int id, int number, String day, String amount) {
        return String.join(
                ";",
                document(id, "INVOICE", number, day),
                """
                insert into invoice (id, number, invoice_date, due_date, service_date, customer_id, customer_name, street, city,
                    region, postal_code, country, reference, note, line_sum, allowances, charges, net, tax, gross, prepaid, open)
                  values (%s, %d, '%s', '%s', '%s', %s, 'Dormer Bakery', '', '', '', '', 'US', '', '',
                    %s, 0, 0, %s, 0, %s, 0, 0)
                """.formatted(id(id), number, day, day, day, id(1), amount, amount, amount),
                """
                insert into invoice_line (invoice_id, position, id, service_line_id, description, quantity, unit, gross_price,
                    discount, base_quantity, base_unit, tax_code, goodwill, price_reason, tax_category, tax_rate, net)
                  values (%s, 1, %s, %s, 'Work', 1, 'C62', %s, 0, 1, 'C62', 'EXEMPT', false, '', 'E', 0, %s)
                """.formatted(id(id), id(id), id(2), amount, amount),
                "insert into invoice_tax (invoice_id, position, tax_category, tax_rate, taxable, tax) values (%s, 1, 'E', 0, %s, 0)"
                        .formatted(id(id), amount),
                entry(id, 1, day, "RECEIVABLES", amount),
                entry(id, 2, day, "REVENUE", "-" + amount));
    }

    private static String settles(int document, int invoice, String amount) {
        return "insert into settlement (document_id, invoice_id, amount) values (%s, %s, %s)"
                .formatted(id(document), id(invoice), amount);
    }

    /** Columns and codes have other names since. */
    private static String inFieldWords(String sql) {
        return sql.replace("kind", "type")
                .replace("postal_code", "zip_code")
                .replace("goodwill", "no_charge")
                .replace("CREDIT_MATCH", "CREDIT_APPLICATION");
    }

    private void inOne(String... statements) throws SQLException {
        execute("begin; " + String.join(";", statements) + "; commit");
    }

    private void execute(String... statements) throws SQLException {
        try (Connection connection = database.asOwner().getConnection();
                Statement statement = connection.createStatement()) {
            for (String sql : statements) {
                statement.execute(renamed ? inFieldWords(sql) : sql);
            }
        }
    }

    private String value(String sql) throws SQLException {
        try (Connection connection = database.asOwner().getConnection();
                Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery(sql)) {
            row.next();
            return row.getString(1);
        }
    }

    private void requireProved() throws SQLException {
        try (Connection connection = database.asOwner().getConnection()) {
            BooksProof.run(connection).forEach(result -> assertTrue(result.holds(), result.toString()));
        }
    }

    @Test
    void they_migrate_and_only_what_comes_after_keeps_to_the_order() throws SQLException {
        Schema.migrate(database.asOwner());
        renamed = true;
        requireProved();
        assertEquals("1", value("select count(*) from backdated_document"));
        assertEquals("2026-03-19", value("select last_day from backdated_credit where customer_id = " + id(1)));
        assertEquals("0.000", value("select max(rounding) from invoice"));

        // Later invoices may not be paid earlier, nor credit be used that is not there.
        SQLException early = assertThrows(
                SQLException.class,
                () -> inOne(
                        payment(0x12, 3, "2026-03-21", "10"),
                        invoice(0x22, 3, "2026-03-22", "10"),
                        settles(0x12, 0x22, "10")));
        assertTrue(early.getMessage().contains("counts before invoice"), early.getMessage());
        SQLException unpaid = assertThrows(
                SQLException.class,
                () -> inOne(
                        document(0x31, "CREDIT_MATCH", 2, "2026-03-25"),
                        entry(0x31, 1, "2026-03-25", "CUSTOMER_CREDIT", "10"),
                        entry(0x31, 2, "2026-03-25", "RECEIVABLES", "-10")));
        assertTrue(unpaid.getMessage().contains("uses credit"), unpaid.getMessage());
        requireProved();
    }
}
