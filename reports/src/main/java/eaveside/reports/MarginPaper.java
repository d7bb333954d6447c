package eaveside.reports;

import eaveside.kernel.Money;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What each service line earned in a period.
 *
 * @param  total      of the lines
 * @param  unassigned what no service line is charged with; absent where there is none
 * @param  result     the margin of both: the profit by the ledger
 */
public record MarginPaper(
        Letterhead from,
        LocalDate first,
        LocalDate last,
        List<Line> lines,
        Line total,
        @Nullable Line unassigned,
        Money result,
        String note) {
    /**
     * A service line's figures, net of tax: revenue − labor − consumables − travel − overhead = margin.
     *
     * @param  noCharge     the value of what was given; outside the margin
     * @param  fromFindings how much of the revenue came from quotes that a finding led to
     */
    public record Line(
            String name,
            Money revenue,
            Money labor,
            Money consumables,
            Money travel,
            Money overhead,
            Money margin,
            Money noCharge,
            Money fromFindings) {
        public Line {
            Agreement.require(
                    "margin of " + name,
                    margin,
                    List.of(revenue, labor.negated(), consumables.negated(), travel.negated(), overhead.negated()));
        }

        /** The margin in per cent of the revenue, one decimal, HALF_UP; absent without revenue. */
        public @Nullable BigDecimal marginPercent() {
            return revenue.isZero()
                    ? null
                    : margin.amount().movePointRight(2).divide(revenue.amount(), 1, RoundingMode.HALF_UP);
        }
    }

    public MarginPaper {
        lines = List.copyOf(lines);
        Agreement.require(
                "revenue", total.revenue, lines.stream().map(Line::revenue).toList());
        Agreement.require("labor", total.labor, lines.stream().map(Line::labor).toList());
        Agreement.require(
                "consumables",
                total.consumables,
                lines.stream().map(Line::consumables).toList());
        Agreement.require(
                "travel", total.travel, lines.stream().map(Line::travel).toList());
        Agreement.require(
                "overhead", total.overhead, lines.stream().map(Line::overhead).toList());
        Agreement.require(
                "margin", total.margin, lines.stream().map(Line::margin).toList());
        Agreement.require(
                "noCharge", total.noCharge, lines.stream().map(Line::noCharge).toList());
        Agreement.require(
                "revenue from findings",
                total.fromFindings,
                lines.stream().map(Line::fromFindings).toList());
        Agreement.require(
                "result",
                result,
                unassigned == null ? List.of(total.margin) : List.of(total.margin, unassigned.margin));
    }
}
