package eaveside.web.forms;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;

import eaveside.kernel.Refusal;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.postgresql.util.PSQLException;
import org.postgresql.util.PSQLState;
import org.postgresql.util.ServerErrorMessage;

/** Codes and parts of an error as PostgreSQL sends them (its documentation, Appendix A, class 23, and chapter 55.8). */
class BrokenConstraintTest {
    @ParameterizedTest
    @CsvSource({
        "23505, vehicle, vehicle_name_key, , name, CONFLICT",
        "23505, vehicle, vehicle_pkey, , id, CONFLICT",
        "23505, finding_type, finding_type_by_name, , name, CONFLICT",
        "23505, invoice, invoice_once_per_visit, , visit, CONFLICT",
        "23514, app_user, app_user_display_name_check, , displayName, RULE",
        "23514, surface, surface_extent_check1, , extent, RULE",
        "23503, site, site_customer_id_fkey, , customer, CONFLICT",
        "23502, vehicle, , license_plate, licensePlate, RULE"
    })
    void the_column_is_the_field(
            String state, String table, String constraint, String column, String field, Refusal.Type type) {
        BrokenConstraint broken = BrokenConstraint.in(new IllegalStateException(
                new RuntimeException(error(state, "nicht in dieser Sprache", table, constraint, column))));

        assertNotNull(broken);
        assertEquals(type, broken.type());
        assertEquals(List.of(field), broken.fields());
    }

    private static PSQLException error(
            String state,
            String message,
            @Nullable String table,
            @Nullable String constraint,
            @Nullable String column) {
        return new PSQLException(new ServerErrorMessage("SERROR\0C" + state + "\0M" + message + part('t', table)
                + part('n', constraint) + part('c', column) + "\0"));
    }

    private static String part(char name, @Nullable String value) {
        return value == null ? "" : "\0" + name + value;
    }

    @Test
    void a_trigger_says_itself_what_it_refuses() {
        BrokenConstraint broken =
                BrokenConstraint.in(error("23000", "the period of 2026-01-31 is not open", null, null, null));

        assertNotNull(broken);
        assertEquals("The books refuse this: the period of 2026-01-31 is not open", broken.text());
    }

    /** PostgreSQL documentation, Appendix A: 22003 is numeric_value_out_of_range. */
    @Test
    void a_number_that_no_column_takes_is_refused_and_no_fault() {
        BrokenConstraint broken = BrokenConstraint.in(error("22003", "numeric field overflow", null, null, null));
        assertEquals("A number is too large. Check every quantity and amount", broken.text());
        assertEquals(Refusal.Type.RULE, broken.type());
    }

    @Test
    void a_database_that_is_gone_refused_nothing() {
        assertNull(BrokenConstraint.in(error("57P01", "terminating connection", null, null, null)));
        assertNull(BrokenConstraint.in(new PSQLException("no connection", PSQLState.CONNECTION_FAILURE)));
        assertNull(BrokenConstraint.in(new IllegalStateException("a fault")));
    }
}
