package eaveside.inventory;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import eaveside.inventory.ReceiveGoods.Receipt;
import eaveside.inventory.ReceiveGoods.Received;
import eaveside.kernel.DocumentId;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.Unit;
import eaveside.ledger.Posted;
import eaveside.testing.Bench;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import org.joda.money.CurrencyUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** A delivery that is sent again, by a form or a script that names no lots. */
class ReceiptAgainIT {
    @RegisterExtension
    static final Bench bench = new Bench();

    private static final LocalDate DAY = LocalDate.of(2026, 3, 2);

    private static StockFixture at;
    private static StockItem soap;

    @BeforeAll
    static void found() {
        at = StockFixture.on(bench);
        soap = at.soap("AGAIN");
    }

    @AfterEach
    void books_are_true() {
        bench.verifyBooks();
    }

    private static Receipt receipt(DocumentId id, String gallons) {
        Received line = new Received(
                null, soap.id(), null, Quantity.of(gallons, Unit.US_GALLON), Money.of(CurrencyUnit.USD, "10.00"), "");
        return new Receipt(id, DAY, at.store.id(), "Suds and Sons", "D-1", List.of(line, line), StockFixture.OWNER);
    }

    private static long lots(DocumentId receipt) {
        return (long) bench.value("select count(distinct id) from lot where document_id = ?", receipt.value());
    }

    @Test
    void the_same_again_is_the_first_answer_and_brings_nothing_in() {
        ReceiveGoods goods = bench.get(ReceiveGoods.class);
        DocumentId id = DocumentId.next();
        Posted first = goods.receive(receipt(id, "2"));
        Quantity held = at.held(at.store, soap);
        bench.clock().forward(Duration.ofDays(1));
        assertEquals(first, goods.receive(receipt(id, "2")));
        assertEquals(held, at.held(at.store, soap));
        assertEquals(2, lots(id), "each line is a lot of its own");
        assertThrows(KernelRefusal.IdTaken.class, () -> goods.receive(receipt(id, "3")));
    }
}
