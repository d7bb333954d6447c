package eaveside.margins;

import eaveside.kernel.ServiceLineId;
import eaveside.ledger.CostType;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Margin by service line for a period.
 *
 * @param  lines      by code, those with any figure
 * @param  total      of the lines
 * @param  unassigned what no service line is charged with, by account: variances between what visits were charged and what
 *                   was really spent, count differences, write off, and accounts of the company's own
 * @param  uncharged  what is unassigned, in the columns of the lines
 * @param  result     the total margin less what is unassigned: the profit by the ledger
 */
public record MarginReport(
        Period period,
        List<LineMargin> lines,
        MarginRow total,
        List<Unassigned> unassigned,
        MarginRow uncharged,
        Figure result) {
    public MarginReport {
        lines = List.copyOf(lines);
        unassigned = List.copyOf(unassigned);
    }

    /** A service line's row. */
    public record LineMargin(ServiceLineId line, String code, String name, MarginRow row) {}

    /**
     * A cost, or below zero an income, without a service line.
     *
     * @param  variance what it is the difference of; null where it is no variance
     * @param  type     what it counts as; null for an income
     */
    public record Unassigned(
            String code,
            String name,
            @Nullable Variance variance,
            @Nullable CostType type,
            Figure cost) {}

    /** What was really spent, less what was applied to visits; closing the month changes neither. */
    public record Variance(Figure actual, Figure applied) {}

    public Optional<MarginRow> rowOf(ServiceLineId line) {
        return lines.stream()
                .filter(l -> l.line().equals(line))
                .map(LineMargin::row)
                .findFirst();
    }
}
