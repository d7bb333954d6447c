package eaveside.kernel;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SpreadsheetCellTest {
    /** The beginnings that OWASP, "CSV Injection", names, the wide forms among them, and with what hides them. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "=1+1",
                "+1+1",
                "-1+1",
                "@SUM(A1)",
                "|cmd",
                "\t=1",
                "\r=1",
                "\n=1",
                "\ufeff=1",
                "\u200b=1",
                " =1",
                "\u00a0=1",
                "\uff1d1+1",
                "\uff0b1+1",
                "\uff0d1+1",
                "\uff20SUM(A1)",
                "\u22121+1",
                "\u0000=1",
                "-",
            })
    void what_a_spreadsheet_could_run_is_a_text(String text) {
        assertEquals("'" + text, SpreadsheetCell.guarded(text));
        assertEquals(text, SpreadsheetCell.plain("'" + text), "and comes back as it was");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "12",
                "-12.50",
                "0.3",
                "Marlowe",
                "'quoted'",
                "'tis",
                "a=b",
                "5-7",
                "Zoë",
                "\ud83e\ude9f window"
            })
    void everything_else_stays_as_it_is(String text) {
        assertEquals(text, SpreadsheetCell.guarded(text));
        assertEquals(text, SpreadsheetCell.plain(text));
    }
}
