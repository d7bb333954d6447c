package eaveside.kernel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What the refusals that all modules share say, of which field, under which code. */
class KernelRefusalTest {
    /** Public as every record that is edited. */
    public record Door(String accessNotes, int version) implements Versioned {}

    @Test
    void a_taken_name_has_a_code_of_its_thing_and_field() {
        Refusal taken = new KernelRefusal.Taken("stock item", "code", "SOAP");
        assertEquals("Code 'SOAP' is taken by another stock item. Choose another one", taken.text());
        assertEquals("stock-item.code-taken", taken.code());
        assertEquals(Refusal.Type.CONFLICT, taken.type());
        assertEquals(List.of("code"), taken.fields());
    }

    @Test
    void what_a_field_named_is_an_error_of_the_field_with_advice() {
        KernelRefusal.NotFound missing = new KernelRefusal.NotFound("tax code", "STD");
        assertEquals(Refusal.Type.NOT_FOUND, missing.type());
        assertEquals(List.of(), missing.fields());
        KernelRefusal.NotFound named = missing.namedBy("taxCode", "Set its tax first");
        assertEquals("There is no tax code STD. Set its tax first", named.text());
        assertEquals(Refusal.Type.RULE, named.type());
        assertEquals(List.of("taxCode"), named.fields());
        assertEquals("tax-code.not-found", named.code());
    }

    @Test
    void a_unit_that_does_not_fit_is_told_with_those_that_do() {
        assertEquals(
                "Distance must be in miles (SMI) or kilometers (KMT), not in pieces (H87)",
                new KernelRefusal.WrongUnit("distance", Unit.PIECE, List.of(Unit.MILE, Unit.KILOMETER)).text());
    }

    @Test
    void a_date_too_early_is_told_with_the_first_possible_one() {
        LocalDate day = LocalDate.of(2026, 3, 2);
        assertEquals(
                "Valid until must be 2026-03-02 or later, not 2026-03-01",
                new KernelRefusal.TooEarly("validUntil", day.minusDays(1), day).text());
    }

    @Test
    void a_rival_edit_is_told_in_words_and_marks_the_fields_by_their_names() {
        Refusal stale = new KernelRefusal.Stale("site", new Door("Gate 7", 1), new Door("Gate 8", 2));
        assertEquals("Another user saved this site first. It differs in access notes", stale.text());
        assertEquals(List.of("accessNotes"), stale.fields());
        assertEquals(
                "Another user saved this site first. Load it again",
                new KernelRefusal.Stale("site", new Door("Gate 7", 1), new Door("Gate 7", 2)).text());
    }

    @Test
    void a_text_that_no_encoding_can_store_is_refused() {
        for (String text : new String[] {"a\u0000b", "a\ud800b", "a\udc00"}) {
            assertThrows(KernelRefusal.BadText.class, () -> Texts.required("note", text, 10));
        }
        for (String unseen : new String[] {" ", "\u200b", "\u202e\u00a0\u200b", "\t"}) {
            assertEquals("", Texts.seen(unseen));
        }
        assertEquals("a\u200bb", Texts.seen("a\u200bb"));
        assertEquals("\ud83e\uddfd", Texts.required("note", "\ud83e\uddfd", 10), "a whole pair is one character");
    }
}
