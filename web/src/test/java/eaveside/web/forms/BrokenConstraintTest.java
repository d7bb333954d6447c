package eaveside.web.forms;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;

import eaveside.kernel.Refusal;
import java.sql.SQLException;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Messages and codes as PostgreSQL writes them (its documentation, Appendix A, class 23). */
class BrokenConstraintTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "23505|duplicate key value violates unique constraint \"vehicle_name_key\" Detail: Key (name)=(Twin van) already exists.|name|CONFLICT",
                "23505|duplicate key value violates unique constraint \"vehicle_pkey\" Detail: Key (id)=(7) already exists.|id|CONFLICT",
                "23505|duplicate key value violates unique constraint \"finding_type_by_name\" Detail: Key (lower(name))=(moss) already exists.|name|CONFLICT",
                "23505|duplicate key value violates unique constraint \"invoice_once_per_visit\"|visit|CONFLICT",
                "23514|new row for relation \"app_user\" violates check constraint \"app_user_display_name_check\"|displayName|RULE",
                "23514|new row for relation \"surface\" violates check constraint \"surface_extent_check1\"|extent|RULE",
                "23503|insert or update on table \"site\" violates foreign key constraint \"site_customer_id_fkey\"|customer|CONFLICT",
                "23502|null value in column \"licensePlate\" of relation \"vehicle\" violates not-null constraint|licensePlate|RULE",
                "23502|null value in column \"license_plate\" of relation \"vehicle\" violates not-null constraint|licensePlate|RULE"
            })
    void the_column_is_the_field(String state, String message, String field, Refusal.Type type) {
        BrokenConstraint broken = BrokenConstraint.in(
                new IllegalStateException(new RuntimeException(new SQLException("ERROR: " + message, state))));

        assertNotNull(broken);
        assertEquals(type, broken.type());
        assertEquals(List.of(field), broken.fields());
    }

    @Test
    void a_trigger_says_itself_what_it_refuses() {
        BrokenConstraint broken = BrokenConstraint.in(
                new SQLException("ERROR: the period of 2026-01-31 is not open\n  Where: PL/pgSQL function", "23000"));

        assertNotNull(broken);
        assertEquals("The books refuse this: the period of 2026-01-31 is not open", broken.text());
    }

    @Test
    void a_database_that_is_gone_refused_nothing() {
        assertNull(BrokenConstraint.in(new SQLException("terminating connection", "57P01")));
        assertNull(BrokenConstraint.in(new IllegalStateException("a fault")));
    }
}
