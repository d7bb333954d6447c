package eaveside.web.forms;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import eaveside.web.testing.Visitor;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The constraints that are named in the program are those of the schema: a renamed one would tell no field any more. */
class ConstraintNamesIT {
    @Test
    void every_constraint_that_the_program_knows_by_name_is_in_the_schema() {
        assertFalse(BrokenConstraint.FIELDS.isEmpty());
        List<String> unknown = BrokenConstraint.FIELDS.keySet().stream()
                .filter(name -> Visitor.value("""
                        select count(*) from (
                          select conname from pg_constraint where connamespace = 'public'::regnamespace
                          union select indexrelid::regclass::text from pg_index where indisunique
                        ) named(name) where name = ?
                        """, name).equals("0"))
                .sorted()
                .toList();
        assertEquals(List.of(), unknown);
    }
}
