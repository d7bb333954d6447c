package eaveside.web.overview;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import eaveside.kernel.Money;
import eaveside.margins.Period;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.YearMonth;
import org.joda.money.CurrencyUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ComparedTest {
    private static Period days(String from, String to) {
        return new Period(LocalDate.parse(from), LocalDate.parse(to));
    }

    @ParameterizedTest
    @CsvSource({
        // today, whether a quarter, a month of the span; now, before, a year ago
        "2026-11-29, false, 2026-11, 2026-11-01, 2026-11-29, 2026-10-01, 2026-10-29, 2025-11-01, 2025-11-29",
        "2026-11-01, false, 2026-11, 2026-11-01, 2026-11-01, 2026-10-01, 2026-10-01, 2025-11-01, 2025-11-01",
        "2026-03-31, false, 2026-03, 2026-03-01, 2026-03-31, 2026-02-01, 2026-02-28, 2025-03-01, 2025-03-31",
        "2028-02-29, false, 2028-02, 2028-02-01, 2028-02-29, 2028-01-01, 2028-01-29, 2027-02-01, 2027-02-28",
        "2026-11-29, false, 2026-09, 2026-09-01, 2026-09-30, 2026-08-01, 2026-08-31, 2025-09-01, 2025-09-30",
        "2026-11-29, true, 2026-11, 2026-10-01, 2026-11-29, 2026-07-01, 2026-08-29, 2025-10-01, 2025-11-29",
        "2026-12-31, true, 2026-10, 2026-10-01, 2026-12-31, 2026-07-01, 2026-09-30, 2025-10-01, 2025-12-31",
        "2026-05-31, true, 2026-05, 2026-04-01, 2026-05-31, 2026-01-01, 2026-02-28, 2025-04-01, 2025-05-31",
        "2026-11-29, true, 2026-02, 2026-01-01, 2026-03-31, 2025-10-01, 2025-12-31, 2025-01-01, 2025-03-31"
    })
    void a_span_that_runs_is_held_against_as_many_days(
            String today,
            boolean quarter,
            String month,
            String f1,
            String t1,
            String f2,
            String t2,
            String f3,
            String t3) {
        Compared compared = Compared.of(quarter, YearMonth.parse(month), LocalDate.parse(today));
        assertEquals(days(f1, t1), compared.now());
        assertEquals(days(f2, t2), compared.before());
        assertEquals(days(f3, t3), compared.lastYear());
    }

    @Test
    void a_change_is_in_percent_of_what_was_before_and_of_nothing_there_is_none() {
        assertEquals(new BigDecimal("-25.0"), Compared.change(usd("75"), usd("100")));
        assertEquals(new BigDecimal("150.0"), Compared.change(usd("50"), usd("-100")));
        assertEquals(new BigDecimal("33.3"), Compared.change(usd("4"), usd("3")));
        assertNull(Compared.change(usd("4"), usd("0")));
    }

    private static Money usd(String amount) {
        return Money.of(CurrencyUnit.USD, new BigDecimal(amount));
    }
}
