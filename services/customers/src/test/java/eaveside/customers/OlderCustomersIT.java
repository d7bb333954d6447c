package eaveside.customers;

import static org.junit.jupiter.api.Assertions.assertEquals;

import eaveside.schema.Schema;
import eaveside.testing.TestDatabase;
import java.sql.Connection;
import java.sql.SQLException;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.Test;

/** Customers and manufacturers' limits that were entered before customers could be told alike, and limits had decimals. */
class OlderCustomersIT {
    private static final String BEFORE = "121";

    @Test
    void a_company_that_runs_already_keeps_its_customers_and_limits() throws SQLException {
        TestDatabase database = TestDatabase.create();
        DataSource owner = database.asOwner();
        run(owner, "drop schema public cascade");
        run(owner, "create schema public");
        Flyway.configure(Schema.class.getClassLoader())
                .dataSource(owner)
                .locations("classpath:db/migration")
                .target(BEFORE)
                .load()
                .migrate();
        run(owner, """
                insert into customer (id, name, kind, street, city, region, postal_code, country, email, phone,
                  payment_term_days, note, active, version, changed_by, changed_at)
                select gen_random_uuid(), 'Twin ' || n, 'HOUSEHOLD', '1 Eaves Road', 'Gutterby', '', '', 'US', 'Twin@example.com',
                  case n when 1 then '(312) 555-0142' else '+1 312 555 0142' end, 14, '', true, 1, gen_random_uuid(), now()
                from generate_series(1, 2) n
                """);
        run(owner, """
                insert into module_maker (name, max_hardness_mg_per_litre, max_pressure_kpa, max_difference_celsius,
                  alkali_forbidden, source, version, changed_by, changed_at)
                values ('First Light', 75, 690, null, false, '', 1, gen_random_uuid(), now())
                """);

        Schema.migrate(owner);

        assertEquals("2 1 1 0", value(owner, """
                select count(*) || ' ' || count(distinct phone_key) || ' ' || count(distinct email_key) || ' ' || count(merged_into)
                from customer where phone_key = '3125550142'
                """));
        assertEquals("75.000000 690.000000", value(owner, """
                select max_hardness_mg_per_liter || ' ' || max_pressure_kpa from panel_manufacturer
                """));
        assertEquals("false", value(owner, "select reads_books::text from office_rights"));
        database.drop();
    }

    private static void run(DataSource database, String sql) throws SQLException {
        try (Connection connection = database.getConnection();
                var statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    private static String value(DataSource database, String sql) throws SQLException {
        try (Connection connection = database.getConnection();
                var statement = connection.createStatement();
                var result = statement.executeQuery(sql)) {
            result.next();
            return result.getString(1);
        }
    }
}
