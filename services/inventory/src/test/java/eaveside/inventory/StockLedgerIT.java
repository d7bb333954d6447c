package eaveside.inventory;

import static eaveside.inventory.StockFixture.DAY;
import static eaveside.inventory.StockFixture.gallons;
import static eaveside.inventory.StockFixture.line;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.inventory.ReceiveGoods.Received;
import eaveside.ledger.Posted;
import eaveside.testing.Bench;
import java.math.BigDecimal;
import java.sql.Date;
import java.sql.SQLException;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** What the database itself holds to, whoever asks, and that the proofs notice where it could not. */
class StockLedgerIT {
    @RegisterExtension
    static final Bench bench = new Bench();

    private static StockFixture at;
    private static StockItem soap;

    private Received goods;
    private Posted receipt;

    @BeforeAll
    static void found() {
        at = StockFixture.on(bench);
        soap = at.soap("SL");
    }

    @BeforeEach
    void receive() {
        goods = line(soap, gallons("4"), "44.00");
        receipt = at.receive(DAY, at.store, goods);
    }

    @AfterEach
    void books_are_true() {
        bench.verifyBooks();
    }

    @Test
    void the_application_may_not_change_or_remove_entries_or_lots() {
        for (String sql : List.of(
                "update stock_entry set quantity = quantity + 1",
                "delete from stock_entry",
                "truncate stock_entry",
                "update lot set value = value + 1",
                "delete from lot",
                "delete from lot_stock",
                "delete from location",
                "delete from stock_item")) {
            SQLException refused = assertThrows(SQLException.class, () -> bench.executeAsApplication(sql), sql);
            assertTrue(refused.getMessage().contains("permission denied"), sql + ": " + refused.getMessage());
        }
        for (String sql : List.of("update stock_entry set value = value + 1", "delete from stock_entry where true")) {
            AssertionError refused = assertThrows(AssertionError.class, () -> bench.execute(sql), sql);
            assertTrue(String.valueOf(refused.getCause()).contains("append-only"), sql);
        }
    }

    @Test
    void entries_cannot_be_added_to_a_posted_document() {
        SQLException refused = assertThrows(SQLException.class, () -> insertEntry(9, "1", "1"));
        assertTrue(refused.getMessage().contains("already posted"), refused.getMessage());
    }

    private void insertEntry(int line, String quantity, String value) throws SQLException {
        bench.executeAsApplication(
                "insert into stock_entry (document_id, line, posting_date, item_id, lot_id, location_id, quantity, value)"
                        + " values (?, ?, ?, ?, ?, ?, ?, ?)",
                receipt.id().value(),
                line,
                Date.valueOf(receipt.postingDate()),
                soap.id().value(),
                goods.lot().value(),
                at.store.id().value(),
                new BigDecimal(quantity),
                new BigDecimal(value));
    }

    @Test
    void no_lot_goes_below_zero_or_keeps_value_without_goods() {
        for (String change :
                List.of("quantity = quantity - 4.000001, value = 0", "value = value - 44.01", "quantity = 0")) {
            AssertionError refused = assertThrows(
                    AssertionError.class,
                    () -> bench.execute(
                            "update lot_stock set " + change + " where lot_id = ?",
                            goods.lot().value()),
                    change);
            assertTrue(String.valueOf(refused.getCause()).contains("lot_stock"), change + refused.getCause());
        }
    }

    @Test
    void an_item_in_use_keeps_its_unit() {
        AssertionError refused = assertThrows(
                AssertionError.class,
                () -> bench.execute(
                        "update stock_item set base_unit = 'LTR' where id = ?",
                        soap.id().value()));
        assertTrue(String.valueOf(refused.getCause()).contains("foreign key"), String.valueOf(refused.getCause()));
    }

    @Test
    void the_proofs_notice_what_was_tampered_with() {
        tamper(
                "update lot_stock set quantity = quantity + 1 where lot_id = ?",
                "update lot_stock set quantity = quantity - 1 where lot_id = ?",
                "stock quantity and value");
        tamper(
                "update lot_stock set value = value + 1 where lot_id = ?",
                "update lot_stock set value = value - 1 where lot_id = ?",
                "inventory account");
        tamper(
                "update lot set value = value + 1 where id = ?",
                "update lot set value = value - 1 where id = ?",
                "every lot came in");
    }

    private void tamper(String doing, String undoing, String proof) {
        assertEquals(1, bench.execute(doing, goods.lot().value()));
        try {
            AssertionError noticed = assertThrows(AssertionError.class, bench::verifyBooks, doing);
            assertTrue(String.valueOf(noticed.getMessage()).contains(proof), noticed.getMessage());
        } finally {
            bench.execute(undoing, goods.lot().value());
        }
    }
}
