package eaveside.invoicing;

import static org.junit.jupiter.api.Assertions.assertEquals;

import eaveside.kernel.Money;
import eaveside.kernel.Percent;
import java.util.List;
import org.joda.money.CurrencyUnit;
import org.junit.jupiter.api.Test;

class AgeingPublishedExamplesTest {
    private static Money usd(String amount) {
        return Money.of(CurrencyUnit.USD, amount);
    }

    /**
     * OpenStax, Principles of Accounting, Volume 1, §9.2, balance sheet aging of receivables: 0–30 days 145,740 at 10 %,
     * 31–90 days 102,100 at 20 %, over 90 days 77,010 at 30 % come to 58,097.
     */
    @Test
    void doubtful_receivables_of_the_textbook() {
        Ageing ageing = Ageing.of(
                CurrencyUnit.USD,
                List.of(
                        new Ageing.Owed(0, usd("100000")),
                        new Ageing.Owed(30, usd("45740")),
                        new Ageing.Owed(31, usd("2100")),
                        new Ageing.Owed(90, usd("100000")),
                        new Ageing.Owed(91, usd("77010"))));
        assertEquals(new Ageing(usd("145740"), usd("102100"), usd("77010")), ageing);
        assertEquals(usd("58097"), ageing.doubtful(Percent.of("10"), Percent.of("20"), Percent.of("30")));
    }
}
