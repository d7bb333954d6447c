package eaveside.inventory;

import static eaveside.inventory.StockFixture.DAY;
import static eaveside.inventory.StockFixture.OWNER;
import static eaveside.inventory.StockFixture.gallons;
import static eaveside.inventory.StockFixture.grains;
import static eaveside.inventory.StockFixture.labeled;
import static eaveside.inventory.StockFixture.line;
import static eaveside.inventory.StockFixture.usd;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import eaveside.kernel.DocumentId;
import eaveside.kernel.Money;
import eaveside.kernel.Unit;
import eaveside.ledger.AccountCode;
import eaveside.ledger.AccountRole;
import eaveside.ledger.DocumentType;
import eaveside.ledger.Entry;
import eaveside.ledger.LedgerRefusal;
import eaveside.ledger.PostJournal;
import eaveside.ledger.Posted;
import eaveside.ledger.Posting;
import eaveside.ledger.ReverseDocument;
import eaveside.testing.Bench;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

class ReverseStockDocumentIT {
    @RegisterExtension
    static final Bench bench = new Bench();

    private static StockFixture at;

    @BeforeAll
    static void found() {
        at = StockFixture.on(bench);
    }

    @AfterEach
    void books_are_true() {
        bench.verifyBooks();
    }

    @Test
    void a_receipt_is_taken_back_once_while_its_goods_are_there() {
        StockItem soap = at.soap("R1");
        Money owed = at.balance(AccountRole.GOODS_NOT_INVOICED);
        Posted receipt = at.receive(DAY, at.store, line(soap, gallons("4"), "44.00"));
        Drawn used = at.use(DAY, at.store, new Draw(soap.id(), null, gallons("1")));
        assertThrows(InventoryRefusal.GoodsGone.class, () -> at.reverse(receipt, DAY));
        assertEquals(usd("33.00"), at.value(at.store, soap));

        Posted use = lastWriteOff();
        at.reverse(use, DAY);
        assertEquals(usd("44.00"), at.value(at.store, soap), "the use took " + used.cost());
        var reversal = StockFixture.reversalOf(receipt, DAY);
        ReverseStockDocument reverse = bench.get(ReverseStockDocument.class);
        Posted reversed = reverse.reverse(reversal);
        assertEquals(DocumentType.REVERSAL, reversed.type());
        assertEquals(reversed, reverse.reverse(reversal), "the same reversal again is a retry");
        assertEquals(gallons("0"), at.held(at.store, soap));
        assertEquals(owed, at.balance(AccountRole.GOODS_NOT_INVOICED));
        assertThrows(LedgerRefusal.AlreadyReversed.class, () -> at.reverse(receipt, DAY));
        assertThrows(LedgerRefusal.NotReversible.class, () -> at.reverse(reversed, DAY));
    }

    private static Posted lastWriteOff() {
        var row = bench.rows(
                        "select id, number, posting_date from document where type = 'WRITE_OFF' order by number desc")
                .getFirst();
        return new Posted(new DocumentId((UUID) row.get("id")), DocumentType.WRITE_OFF, (Long) row.get("number"), DAY);
    }

    @Test
    void goods_that_moved_on_hold_the_receipt_until_they_are_back() {
        StockItem soap = at.soap("R2");
        Posted receipt = at.receive(DAY, at.store, line(soap, gallons("3"), "10.00"));
        Posted moved = at.transfer(DAY, at.store, at.van, Portion.of(soap.id(), gallons("2")));
        assertThrows(InventoryRefusal.GoodsGone.class, () -> at.reverse(receipt, DAY));
        at.reverse(moved, DAY);
        assertEquals(usd("10.00"), at.value(at.store, soap));
        at.reverse(receipt, DAY);
        assertEquals(gallons("0"), at.held(at.store, soap));
    }

    @Test
    void a_transfer_comes_back_only_from_where_it_went() {
        StockItem soap = at.soap("R3");
        at.receive(DAY, at.store, line(soap, gallons("3"), "10.00"));
        Posted out = at.transfer(DAY, at.store, at.van, Portion.of(soap.id(), gallons("3")));
        at.transfer(DAY, at.van, at.otherVan, Portion.of(soap.id(), gallons("3")));
        assertThrows(InventoryRefusal.GoodsGone.class, () -> at.reverse(out, DAY));
        assertEquals(usd("10.00"), at.value(at.otherVan, soap));
    }

    @Test
    void counts_and_scrapping_are_taken_back() {
        StockItem soap = at.soap("R4");
        at.receive(DAY, at.store, line(soap, gallons("3"), "10.00"));
        Posted writeOff = at.writeOff(DAY, at.store, Portion.of(soap.id(), gallons("1")));
        Posted missing = at.count(DAY, at.store, CountedItem.found(soap.id(), null, gallons("0")));
        Posted found = at.count(DAY, at.store, CountedItem.found(soap.id(), null, gallons("1")));
        at.reverse(found, DAY);
        at.reverse(missing, DAY);
        at.reverse(writeOff, DAY);
        assertEquals(gallons("3"), at.held(at.store, soap));
        assertEquals(usd("10.00"), at.value(at.store, soap));
    }

    @Test
    void a_wrongly_entered_canister_can_be_entered_again_under_its_label() {
        StockItem resin = at.item("R5", StockType.RESIN, Unit.GRAIN);
        Posted wrong = at.receive(DAY, at.store, labeled(resin, grains("2500"), "900.00", "C-1"));
        at.reverse(wrong, DAY);
        at.receive(DAY, at.store, labeled(resin, grains("2500"), "90.00", "C-1"));
        assertEquals(usd("90.00"), at.value(at.store, resin));
        at.count(DAY, at.van, CountedItem.difference(resin.id(), null, grains("2500")));
        assertEquals(usd("90.00"), at.value(at.van, resin), "the reversed receipt's cost no longer counts");
    }

    @Test
    void other_documents_are_reversed_where_they_were_entered() {
        Posted journal = bench.get(PostJournal.class)
                .post(new PostJournal.Journal(
                        DocumentId.next(),
                        false,
                        DAY,
                        "Rent",
                        List.of(
                                Entry.debit(new AccountCode("6200"), usd("5")),
                                Entry.credit(new AccountCode("1000"), usd("5"))),
                        OWNER));
        assertThrows(InventoryRefusal.NotAStockDocument.class, () -> at.reverse(journal, DAY));
    }

    @Test
    void another_module_mirrors_the_stock_of_its_own_document() {
        StockItem soap = at.soap("R6");
        at.receive(DAY, at.van, line(soap, gallons("3"), "10.00"));
        at.use(DAY, at.van, new Draw(soap.id(), null, gallons("3")));
        Posted use = lastWriteOff();
        bench.inTransaction(() -> {
            ReverseStockDocument stock = bench.get(ReverseStockDocument.class);
            ReverseDocument.Reversal reversal = StockFixture.reversalOf(use, DAY);
            return bench.get(Posting.class)
                    .post(
                            "test.reverse",
                            reversal,
                            List.of(stock.lockOf(use.id())),
                            day -> stock.mirrored(
                                    use.id(),
                                    bench.get(ReverseDocument.class).reversed(DocumentType.REVERSAL, reversal)));
        });
        assertEquals(usd("10.00"), at.value(at.van, soap));
    }
}
