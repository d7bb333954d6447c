package eaveside.reports;

import eaveside.kernel.Money;
import java.time.LocalDate;
import java.util.List;
import java.util.function.Function;

/**
 * Every account's balance before a first day, its change, and its balance after a last day.
 *
 * @param  opening what the accounts had before the first day, in all
 * @param  closing what they have after the last day, in all
 */
public record TrialBalancePaper(
        Letterhead from,
        LocalDate first,
        LocalDate last,
        List<Line> lines,
        Sides opening,
        Sides change,
        Sides closing,
        String note) {
    /**
     * An account's line; debit above zero, credit below.
     *
     * @param  type what the account is, in words
     */
    public record Line(String code, String name, String type, Money opening, Money change, Money closing) {
        public Line {
            Agreement.require("closing balance of " + name, closing, List.of(opening, change));
        }
    }

    /** The sums of a column's debits and credits, both above zero; they are equal. */
    public record Sides(Money debit, Money credit) {
        public Sides {
            Agreement.require("debits and credits", debit, List.of(credit));
        }
    }

    public TrialBalancePaper {
        lines = List.copyOf(lines);
        require("opening", opening, lines, Line::opening);
        require("change", change, lines, Line::change);
        require("closing", closing, lines, Line::closing);
    }

    private static void require(String column, Sides sides, List<Line> lines, Function<Line, Money> amount) {
        List<Money> amounts = lines.stream().map(amount).toList();
        Agreement.require(
                column + " debits",
                sides.debit(),
                amounts.stream().filter(Money::isPositive).toList());
        Agreement.require(
                column + " credits",
                sides.credit().negated(),
                amounts.stream().filter(Money::isNegative).toList());
    }
}
