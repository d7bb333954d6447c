package eaveside.web.invoices;

import eaveside.invoicing.Aging;
import eaveside.invoicing.Aging.Bucket;
import eaveside.kernel.Money;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.stream.Stream;

/** What customers owe by how long it is past due, as bars on one scale; in units of the picture. */
public record AgingChart(int width, int height, int left, List<Bar> bars, Money total) {
    private static final int WIDTH = 460;
    private static final int LEFT = 155;
    private static final int RIGHT = 100;
    private static final int STEP = 24;
    private static final List<String> STYLES = List.of("bar-4", "bar", "bar-3", "bar-2", "bar-5");

    public record Bar(Bucket bucket, String style, int y, int length, Money amount) {}

    static AgingChart of(Aging aging) {
        BigDecimal most = aging.amounts().values().stream().map(Money::amount).reduce(BigDecimal.ONE, BigDecimal::max);
        List<Bar> bars = Stream.of(Bucket.values())
                .map(bucket -> bar(bucket, aging.of(bucket), most))
                .toList();
        return new AgingChart(WIDTH, bars.size() * STEP, LEFT, bars, aging.total());
    }

    private static Bar bar(Bucket bucket, Money amount, BigDecimal most) {
        int length = amount.amount()
                .multiply(BigDecimal.valueOf(WIDTH - LEFT - RIGHT))
                .divide(most, 0, RoundingMode.HALF_UP)
                .intValue();
        int place = bucket.ordinal();
        return new Bar(bucket, STYLES.get(place), place * STEP + 2, Math.max(length, 1), amount);
    }
}
