package eaveside.web.margins;

import eaveside.kernel.Money;
import eaveside.margins.MarginComparison;
import eaveside.margins.MarginRow;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The margin of each service line, this period above the last, as bars from a common zero. In units of the picture, so
 * that the template only draws.
 *
 * @param  zero where the bars begin
 */
public record MarginChart(int width, int height, int zero, List<Bar> bars) {
    private static final int WIDTH = 760;
    private static final int LEFT = 170;
    private static final int RIGHT = 110;
    private static final int GROUP = 58;

    /**
     * @param  label of the line at its first bar, otherwise empty
     * @param  style of the bar: {@code bar} for this period, {@code bar-3} for the last
     */
    public record Bar(
            String label, String style, int x, int y, int length, int labelX, boolean labelLeft, Money amount) {}

    public static MarginChart of(MarginComparison comparison, Money none) {
        List<MarginComparison.Line> lines = comparison.lines();
        BigDecimal most = BigDecimal.ONE;
        BigDecimal least = BigDecimal.ZERO;
        for (MarginComparison.Line line : lines) {
            for (Money amount : List.of(margin(line.current(), none), margin(line.previous(), none))) {
                most = most.max(amount.amount());
                least = least.min(amount.amount());
            }
        }
        BigDecimal scale =
                BigDecimal.valueOf(WIDTH - LEFT - RIGHT).divide(most.subtract(least), 10, RoundingMode.HALF_UP);
        int zero = LEFT + pixels(least.negate(), scale);
        List<Bar> bars = new ArrayList<>();
        int y = 8;
        for (MarginComparison.Line line : lines) {
            bars.add(bar(line.name(), "bar", zero, y, margin(line.current(), none), scale));
            bars.add(bar("", "bar-3", zero, y + 21, margin(line.previous(), none), scale));
            y += GROUP;
        }
        return new MarginChart(WIDTH, Math.max(y, GROUP), zero, bars);
    }

    private static Bar bar(String label, String style, int zero, int y, Money amount, BigDecimal scale) {
        int length = pixels(amount.amount().abs(), scale);
        boolean left = amount.isNegative();
        int x = left ? zero - length : zero;
        // The figure stands beyond the bar's end, where nothing else is drawn.
        return new Bar(label, style, x, y, Math.max(length, 1), left ? zero + 6 : x + length + 6, left, amount);
    }

    private static int pixels(BigDecimal amount, BigDecimal scale) {
        return amount.multiply(scale).setScale(0, RoundingMode.HALF_UP).intValue();
    }

    private static Money margin(Optional<MarginRow> row, Money none) {
        return row.map(r -> r.margin().amount()).orElse(none);
    }
}
