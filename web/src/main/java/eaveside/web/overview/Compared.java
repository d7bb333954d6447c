package eaveside.web.overview;

import eaveside.kernel.Money;
import eaveside.margins.Period;
import eaveside.web.View;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.time.YearMonth;
import org.jspecify.annotations.Nullable;

/**
 * A span of time with the two that it is compared with. Where it has not ended, all three end on the same day of theirs, so that
 * half a month is not held against a whole one.
 *
 * @param  quarter whether it is a quarter rather than a month
 * @param  whole   the span to its last day
 */
public record Compared(boolean quarter, Period whole, Period now, Period before, Period lastYear) {
    private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);

    static Compared of(boolean quarter, YearMonth month, LocalDate today) {
        int months = quarter ? 3 : 1;
        YearMonth first = quarter ? month.withMonth((month.getMonthValue() - 1) / 3 * 3 + 1) : month;
        Period whole = span(first, months);
        boolean running = !whole.to().isBefore(today) && !whole.from().isAfter(today);
        Period now = running ? new Period(whole.from(), today) : whole;
        return new Compared(
                quarter,
                whole,
                now,
                cut(span(first.minusMonths(months), months), now, running),
                cut(span(first.minusYears(1), months), now, running));
    }

    private static Period span(YearMonth first, int months) {
        return new Period(first.atDay(1), first.plusMonths(months - 1L).atEndOfMonth());
    }

    private static Period cut(Period span, Period now, boolean running) {
        if (!running) {
            return span;
        }
        LocalDate same = span.from().plusMonths(monthsIn(now)).plusDays(now.to().getDayOfMonth() - 1L);
        YearMonth month = YearMonth.from(span.from().plusMonths(monthsIn(now)));
        LocalDate last = same.isAfter(month.atEndOfMonth()) ? month.atEndOfMonth() : same;
        return new Period(span.from(), last);
    }

    private static long monthsIn(Period now) {
        return YearMonth.from(now.from()).until(YearMonth.from(now.to()), java.time.temporal.ChronoUnit.MONTHS);
    }

    /** The month or quarter before, for the link. */
    public String earlier() {
        return YearMonth.from(whole.from()).minusMonths(quarter ? 3 : 1).toString();
    }

    public String later() {
        return YearMonth.from(whole.from()).plusMonths(quarter ? 3 : 1).toString();
    }

    /** Whether it has begun to be later than the span. */
    public boolean isOver(LocalDate today) {
        return whole.to().isBefore(today);
    }

    /** Such as "November 2026" or "Q4 2026". */
    public String name(View view) {
        return name(view, whole);
    }

    public String nameBefore(View view) {
        return name(view, before);
    }

    public String nameLastYear(View view) {
        return name(view, lastYear);
    }

    private String name(View view, Period period) {
        YearMonth month = YearMonth.from(period.from());
        return quarter
                ? view.t("overview.quarter", (month.getMonthValue() - 1) / 3 + 1, String.valueOf(month.getYear()))
                : view.month(month);
    }

    /** By how much per cent the amount is above or below the other; null where the other is nothing. */
    static @Nullable BigDecimal change(Money amount, Money other) {
        return other.isZero()
                ? null
                : amount.minus(other)
                        .amount()
                        .multiply(HUNDRED)
                        .divide(other.amount().abs(), 1, RoundingMode.HALF_UP);
    }
}
