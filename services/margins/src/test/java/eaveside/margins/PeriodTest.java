package eaveside.margins;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import eaveside.ledger.LedgerRefusal;
import java.time.LocalDate;
import java.time.YearMonth;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PeriodTest {
    @ParameterizedTest
    @CsvSource({
        "2026-03-01, 2026-03-31, 2026-02-01, 2026-02-28",
        "2026-01-01, 2026-03-31, 2025-10-01, 2025-12-31",
        "2026-01-01, 2026-12-31, 2025-01-01, 2025-12-31",
        "2026-03-02, 2026-03-31, 2026-01-31, 2026-03-01",
        "2026-03-05, 2026-03-05, 2026-03-04, 2026-03-04"
    })
    void the_previous_period_is_as_long(LocalDate from, LocalDate to, LocalDate earlier, LocalDate before) {
        assertEquals(new Period(earlier, before), new Period(from, to).previous());
    }

    @Test
    void a_period_does_not_end_before_it_begins() {
        assertThrows(LedgerRefusal.BadSpan.class, () -> new Period(LocalDate.of(2026, 3, 2), LocalDate.of(2026, 3, 1)));
        assertEquals(LocalDate.of(2028, 2, 29), Period.of(YearMonth.of(2028, 2)).to());
    }
}
