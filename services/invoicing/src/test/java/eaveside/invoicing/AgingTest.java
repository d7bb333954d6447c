package eaveside.invoicing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import eaveside.invoicing.Aging.Bucket;
import eaveside.kernel.Money;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.joda.money.CurrencyUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AgingTest {
    private static final LocalDate TODAY = LocalDate.of(2028, 3, 1);

    @ParameterizedTest
    @CsvSource({
        "-30, CURRENT",
        "-1, CURRENT",
        "0, CURRENT",
        "1, DAYS_1_30",
        "30, DAYS_1_30",
        "31, DAYS_31_60",
        "60, DAYS_31_60",
        "61, DAYS_61_90",
        "90, DAYS_61_90",
        "91, OVER_90",
        "4000, OVER_90"
    })
    void what_is_not_due_is_current_and_a_day_late_is_past_due(int daysAgo, Bucket bucket) {
        assertEquals(bucket, Bucket.of(TODAY.minusDays(daysAgo), TODAY));
    }

    @Test
    void buckets_add_up_and_none_is_missing() {
        Money ten = Money.of(CurrencyUnit.USD, "10");
        Aging aging = Aging.of(
                CurrencyUnit.USD,
                TODAY,
                List.of(
                        new Aging.Due(TODAY.plusDays(1), ten),
                        new Aging.Due(TODAY.minusDays(45), ten),
                        new Aging.Due(TODAY.minusDays(46), ten)));
        assertEquals(Money.of(CurrencyUnit.USD, "30"), aging.total());
        assertEquals(Money.of(CurrencyUnit.USD, "20"), aging.pastDue());
        assertEquals(Money.of(CurrencyUnit.USD, "0"), aging.of(Bucket.OVER_90));
        assertThrows(IllegalArgumentException.class, () -> new Aging(Map.of(Bucket.CURRENT, ten)));
    }
}
