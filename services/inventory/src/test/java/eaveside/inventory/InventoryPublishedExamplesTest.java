package eaveside.inventory;

import static eaveside.inventory.StockFixture.line;
import static eaveside.inventory.StockFixture.pieces;
import static eaveside.inventory.StockFixture.usd;
import static org.junit.jupiter.api.Assertions.assertEquals;

import eaveside.kernel.Money;
import eaveside.kernel.UnitPrice;
import eaveside.ledger.AccountRole;
import eaveside.testing.Bench;
import java.time.LocalDate;
import java.util.List;
import org.joda.money.CurrencyUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

@Tag("database")
class InventoryPublishedExamplesTest {
    @RegisterExtension
    static final Bench bench = new Bench();

    /**
     * Source: Franklin, Graybeal and Cooper, Principles of Accounting, Volume 1: Financial Accounting (OpenStax, 2019),
     * §10.3, perpetual first-in-first-out: opening stock 150 at $21; 5 July sale of 120; 10 July purchase of 225 at $27; 15
     * July sale of 180; 25 July purchase of 210 at $33. Cost of sales 7,200, ending stock 8,955. Goods leave here by use,
     * so the cost of sales stands where the test's document puts it.
     */
    @Test
    void perpetual_fifo_of_the_textbook() {
        bench.clock().to(LocalDate.of(2026, 8, 1));
        StockFixture at = StockFixture.on(bench);
        StockItem item = at.gloves("unit");
        at.receive(LocalDate.of(2026, 7, 1), at.store, line(item, pieces(150), "3150"));
        Drawn first = at.use(LocalDate.of(2026, 7, 5), at.store, new Draw(item.id(), null, pieces(120)));
        at.receive(LocalDate.of(2026, 7, 10), at.store, line(item, pieces(225), "6075"));
        Drawn second = at.use(LocalDate.of(2026, 7, 15), at.store, new Draw(item.id(), null, pieces(180)));
        at.receive(LocalDate.of(2026, 7, 25), at.store, line(item, pieces(210), "6930"));

        assertEquals(usd("2520"), first.cost(), "120 at $21");
        assertEquals(
                List.of(usd("630"), usd("4050")),
                second.lines().stream().map(Drawn.DrawnLine::cost).toList(),
                "30 at $21 and 150 at $27");
        assertEquals(usd("7200"), first.cost().plus(second.cost()));
        assertEquals(usd("7200"), at.balance(AccountRole.WRITE_OFFS));
        assertEquals(usd("8955"), at.value(at.store, item));
        assertEquals(usd("8955"), at.balance(AccountRole.INVENTORY));
        assertEquals(pieces(285), at.held(at.store, item));
        UnitPrice newest = bench.get(ReadStock.class).newestCost(item.id()).orElseThrow();
        assertEquals(Money.of(CurrencyUnit.USD, "33"), newest.times(pieces(1)));
        bench.verifyBooks();
    }
}
