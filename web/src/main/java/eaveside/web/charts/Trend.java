package eaveside.web.charts;

import eaveside.margins.LineTrend;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;

/**
 * Small multiples: a strip for each service line, a column for each month, all on one scale. The outline is the revenue, what is
 * filled of it the margin; the last two columns say their rate.
 */
public record Trend(int width, int height, List<Strip> strips, List<Label> months) {
    private static final int WIDTH = 760;
    private static final int LEFT = 130;
    private static final int COLUMN = 52;
    private static final int BAR = 30;
    private static final int TALLEST = 62;
    private static final int ABOVE = 18;
    private static final int BELOW = 22;
    private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);

    public Trend {
        strips = List.copyOf(strips);
        months = List.copyOf(months);
    }

    /**
     * A service line.
     *
     * @param  hue  its color among the lines, from 1
     * @param  base where its columns stand
     */
    public record Strip(String name, int hue, int base, List<Column> columns) {
        public Strip {
            columns = List.copyOf(columns);
        }
    }

    /**
     * A month.
     *
     * @param  revenue how tall the outline is
     * @param  margin  how tall the filled part is; below the base where it is below zero
     * @param  rate    of margin in percent, where it is said; otherwise empty
     */
    public record Column(int x, int revenue, int margin, String rate) {}

    /** A word at a place. */
    public record Label(int x, String text) {}

    /** What is drawn of the lines' months; a line is as high as its own tallest column, so that small ones stay small. */
    public static Trend of(List<LineTrend> lines, List<String> initials) {
        BigDecimal most = BigDecimal.ONE;
        for (LineTrend line : lines) {
            for (LineTrend.Month month : line.months()) {
                most = most.max(month.revenue().amount())
                        .max(month.margin().amount().abs());
            }
        }
        BigDecimal scale = BigDecimal.valueOf(TALLEST).divide(most, 10, RoundingMode.HALF_UP);
        List<Strip> strips = new ArrayList<>();
        int y = 0;
        for (LineTrend line : lines) {
            int tallest = 14;
            int deepest = 0;
            for (LineTrend.Month month : line.months()) {
                tallest = Math.max(tallest, pixels(month.revenue().amount(), scale));
                tallest = Math.max(tallest, pixels(month.margin().amount(), scale));
                deepest = Math.max(deepest, -pixels(month.margin().amount(), scale));
            }
            y += ABOVE + tallest;
            strips.add(new Strip(line.name(), strips.size() % 6 + 1, y, columns(line, scale)));
            y += deepest;
        }
        List<Label> months = new ArrayList<>();
        for (int i = 0; i < initials.size(); i++) {
            months.add(new Label(LEFT + i * COLUMN + BAR / 2, initials.get(i)));
        }
        return new Trend(WIDTH, y + BELOW, strips, months);
    }

    private static List<Column> columns(LineTrend line, BigDecimal scale) {
        List<Column> columns = new ArrayList<>();
        for (int i = 0; i < line.months().size(); i++) {
            LineTrend.Month month = line.months().get(i);
            columns.add(new Column(
                    LEFT + i * COLUMN,
                    Math.max(0, pixels(month.revenue().amount(), scale)),
                    pixels(month.margin().amount(), scale),
                    i < line.months().size() - 2 || month.revenue().isZero()
                            ? ""
                            : month.margin()
                                            .amount()
                                            .multiply(HUNDRED)
                                            .divide(month.revenue().amount(), 0, RoundingMode.HALF_UP)
                                            .toPlainString()
                                    + "%"));
        }
        return columns;
    }

    private static int pixels(BigDecimal amount, BigDecimal scale) {
        return amount.multiply(scale).setScale(0, RoundingMode.HALF_UP).intValue();
    }

    /** The months in which something is drawn, the earliest first. */
    public static List<YearMonth> months(List<LineTrend> lines) {
        return lines.isEmpty()
                ? List.of()
                : lines.getFirst().months().stream().map(LineTrend.Month::month).toList();
    }
}
