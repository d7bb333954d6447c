package eaveside.invoicing;

import static org.junit.jupiter.api.Assertions.assertEquals;

import eaveside.invoicing.Aging.Bucket;
import eaveside.kernel.Money;
import java.time.LocalDate;
import java.util.List;
import org.joda.money.CurrencyUnit;
import org.junit.jupiter.api.Test;

class AgingPublishedExamplesTest {
    private static final LocalDate TODAY = LocalDate.of(2026, 6, 30);

    private static Money usd(String amount) {
        return Money.of(CurrencyUnit.USD, amount);
    }

    private static Aging.Due late(int days, String amount) {
        return new Aging.Due(TODAY.minusDays(days), usd(amount));
    }

    /**
     * Source: Franklin, Graybeal and Cooper, Principles of Accounting, Volume 1: Financial Accounting (OpenStax, 2019), §9.2,
     * balance sheet aging of receivables: 0-30 days past due 145,740, 31-90 days 102,100, over 90 days 77,010. The
     * source's first two classes hold two of the buckets each; how it weighs them for doubtful debts is no part of this.
     */
    @Test
    void receivables_by_age_of_the_textbook() {
        Aging aging = Aging.of(
                CurrencyUnit.USD,
                TODAY,
                List.of(
                        late(-14, "60000"),
                        late(0, "40000"),
                        late(1, "5740"),
                        late(30, "40000"),
                        late(31, "2100"),
                        late(60, "40000"),
                        late(61, "50000"),
                        late(90, "10000"),
                        late(91, "77010")));
        assertEquals(usd("145740"), aging.of(Bucket.CURRENT).plus(aging.of(Bucket.DAYS_1_30)));
        assertEquals(usd("102100"), aging.of(Bucket.DAYS_31_60).plus(aging.of(Bucket.DAYS_61_90)));
        assertEquals(usd("77010"), aging.of(Bucket.OVER_90));
        assertEquals(usd("324850"), aging.total());
    }
}
