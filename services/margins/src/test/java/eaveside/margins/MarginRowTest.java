package eaveside.margins;

import static org.junit.jupiter.api.Assertions.assertEquals;

import eaveside.kernel.Money;
import eaveside.kernel.Percent;
import eaveside.ledger.AccountRole;
import eaveside.ledger.EntryFilter;
import java.util.List;
import java.util.Optional;
import org.joda.money.CurrencyUnit;
import org.junit.jupiter.api.Test;

class MarginRowTest {
    private static Figure figure(String amount) {
        EntryFilter all =
                new EntryFilter(null, null, List.of(AccountRole.REVENUE), null, false, null, List.of(), null, false);
        return new Figure(Money.of(CurrencyUnit.USD, amount), all, Figure.Side.CREDIT);
    }

    private static Optional<Percent> rate(String margin, String revenue) {
        Figure none = figure("0");
        return new MarginRow(figure(revenue), none, none, none, none, figure(margin), none, none).rate();
    }

    /** A cent of rounding beside a large difference of stock is a rate of nothing, and no reason to show no report. */
    @Test
    void next_to_no_revenue_has_no_rate() {
        assertEquals(Optional.of(Percent.of("40")), rate("40", "100"));
        assertEquals(Optional.of(Percent.of("-999900")), rate("-99.99", "0.01"));
        assertEquals(Optional.empty(), rate("-100", "0.01"));
        assertEquals(Optional.empty(), rate("-999999999999", "0.01"));
        assertEquals(Optional.empty(), rate("5", "0"));
    }
}
