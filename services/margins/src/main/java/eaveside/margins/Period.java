package eaveside.margins;

import eaveside.ledger.LedgerRefusal;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.temporal.ChronoUnit;

/** From the first to the last day, both included, by posting date; refuses a last day before the first. */
public record Period(LocalDate from, LocalDate to) {
    public Period {
        if (to.isBefore(from)) {
            throw new LedgerRefusal.BadSpan(from, to);
        }
    }

    public static Period of(YearMonth month) {
        return new Period(month.atDay(1), month.atEndOfMonth());
    }

    /** As many whole months before whole months, otherwise as many days before. */
    public Period previous() {
        YearMonth first = YearMonth.from(from);
        YearMonth last = YearMonth.from(to);
        if (from.equals(first.atDay(1)) && to.equals(last.atEndOfMonth())) {
            long months = ChronoUnit.MONTHS.between(first, last) + 1;
            return new Period(
                    first.minusMonths(months).atDay(1), last.minusMonths(months).atEndOfMonth());
        }
        long days = ChronoUnit.DAYS.between(from, to) + 1;
        return new Period(from.minusDays(days), to.minusDays(days));
    }
}
