package eaveside.web.invoices;

import eaveside.invoicing.Ageing;
import eaveside.kernel.Money;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;

/** What customers owe by how long it has been due, as bars on one scale; in units of the picture. */
public record AgeingChart(int width, int height, int left, List<Bar> bars, Money total) {
    private static final int WIDTH = 460;
    private static final int LEFT = 155;
    private static final int RIGHT = 100;
    private static final int STEP = 28;

    /** @param key of the text that names the class */
    public record Bar(String key, String style, int y, int length, Money amount) {}

    static AgeingChart of(Ageing ageing) {
        BigDecimal most = ageing.upTo30()
                .amount()
                .max(ageing.upTo90().amount())
                .max(ageing.over90().amount())
                .max(BigDecimal.ONE);
        return new AgeingChart(
                WIDTH,
                3 * STEP,
                LEFT,
                List.of(
                        bar("invoices.age.30", "bar", 0, ageing.upTo30(), most),
                        bar("invoices.age.90", "bar-2", 1, ageing.upTo90(), most),
                        bar("invoices.age.over", "bar-5", 2, ageing.over90(), most)),
                ageing.total());
    }

    private static Bar bar(String key, String style, int row, Money amount, BigDecimal most) {
        int length = amount.amount()
                .multiply(BigDecimal.valueOf(WIDTH - LEFT - RIGHT))
                .divide(most, 0, RoundingMode.HALF_UP)
                .intValue();
        return new Bar(key, style, row * STEP + 4, Math.max(length, 1), amount);
    }
}
