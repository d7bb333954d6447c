package eaveside.margins;

import eaveside.kernel.Money;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** A period's report beside that of the period before. */
public record MarginComparison(MarginReport current, MarginReport previous) {
    /**
     * A service line in both periods; a row is missing where the line had no figure.
     *
     * @param  marginChange current less previous
     */
    public record Line(
            String code,
            String name,
            Optional<MarginRow> current,
            Optional<MarginRow> previous,
            Money revenueChange,
            Money marginChange) {}

    /** By code, those with any figure in either period. */
    public List<Line> lines() {
        List<MarginReport.LineMargin> named = new ArrayList<>(current.lines());
        previous.lines().stream().filter(p -> current.rowOf(p.line()).isEmpty()).forEach(named::add);
        return named.stream()
                .sorted((a, b) -> a.code().compareTo(b.code()))
                .map(this::compared)
                .toList();
    }

    private Line compared(MarginReport.LineMargin named) {
        Optional<MarginRow> now = current.rowOf(named.line());
        Optional<MarginRow> before = previous.rowOf(named.line());
        Money none = Money.zero(current.result().amount().currency());
        return new Line(
                named.code(),
                named.name(),
                now,
                before,
                amount(now, none, MarginRow::revenue).minus(amount(before, none, MarginRow::revenue)),
                amount(now, none, MarginRow::margin).minus(amount(before, none, MarginRow::margin)));
    }

    private static Money amount(Optional<MarginRow> row, Money none, Function<MarginRow, Figure> figure) {
        return row.map(figure).map(Figure::amount).orElse(none);
    }
}
