package eaveside.inventory;

import static eaveside.inventory.StockFixture.DAY;
import static eaveside.inventory.StockFixture.OWNER;
import static eaveside.inventory.StockFixture.gallons;
import static eaveside.inventory.StockFixture.grains;
import static eaveside.inventory.StockFixture.labeled;
import static eaveside.inventory.StockFixture.line;
import static eaveside.inventory.StockFixture.pieces;
import static eaveside.inventory.StockFixture.receipt;
import static eaveside.inventory.StockFixture.usd;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.inventory.ReceiveGoods.Receipt;
import eaveside.inventory.ReceiveGoods.Received;
import eaveside.kernel.DocumentId;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.LocationId;
import eaveside.kernel.LotId;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.Records;
import eaveside.kernel.StockItemId;
import eaveside.kernel.Unit;
import eaveside.ledger.AccountRole;
import eaveside.ledger.DocumentType;
import eaveside.ledger.LedgerRefusal;
import eaveside.ledger.Posted;
import eaveside.testing.Bench;
import java.math.RoundingMode;
import java.util.List;
import java.util.UUID;
import org.joda.money.CurrencyUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

class StockDocumentsIT {
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
    void a_receipt_counts_packs_and_owes_the_supplier() {
        Money owed = at.balance(AccountRole.GOODS_NOT_INVOICED);
        StockItem soap = bench.get(SaveStockItem.class)
                .save(
                        StockItem.of(
                                        StockItemId.next(),
                                        "JUG",
                                        "Neutral soap",
                                        StockType.CONCENTRATE,
                                        Unit.US_FLUID_OUNCE)
                                .with(new Pack("Jug", gallons("1")), new Pack("Case of four", gallons("4"))),
                        OWNER);
        Received jugs = new Received(LotId.next(), soap.id(), "jug", pieces(2), usd("31.98"), "");
        Received kase = new Received(LotId.next(), soap.id(), "Case of four", pieces(1), usd("56.00"), "B-77");
        Receipt receipt = receipt(DAY, at.store, jugs, kase);
        ReceiveGoods receive = bench.get(ReceiveGoods.class);
        Posted posted = receive.receive(receipt);

        assertEquals(Quantity.of(768, Unit.US_FLUID_OUNCE), at.held(at.store, soap));
        assertEquals(usd("87.98"), at.value(at.store, soap));
        assertEquals(owed.minus(usd("87.98")), at.balance(AccountRole.GOODS_NOT_INVOICED));
        assertEquals(posted, receive.receive(receipt), "the same receipt again is a retry");
        assertEquals(usd("87.98"), at.value(at.store, soap));
        Receipt other = new Receipt(receipt.id(), DAY, at.store.id(), "Suds & Sons", "DN 8", receipt.lines(), OWNER);
        assertThrows(KernelRefusal.IdTaken.class, () -> receive.receive(other));
        assertThrows(KernelRefusal.IdTaken.class, () -> receive.receive(receipt(DAY, at.store, jugs)));
        assertThrows(
                InventoryRefusal.NoSuchPack.class,
                () -> receive.receive(receipt(
                        DAY, at.store, new Received(LotId.next(), soap.id(), "Drum", pieces(1), usd("1"), ""))));
    }

    @Test
    void every_canister_is_a_lot_with_its_own_label() {
        StockItem resin = at.item("DI-1", StockType.RESIN, Unit.GRAIN);
        Received lead = labeled(resin, grains("2500"), "90.00", "C-1");
        at.receive(DAY, at.store, lead, labeled(resin, grains("2500"), "90.00", "C-2"));
        assertThrows(
                KernelRefusal.Taken.class,
                () -> at.receive(DAY, at.store, labeled(resin, grains("2500"), "90.00", "C-1")));
        assertThrows(
                InventoryRefusal.LotNotNamed.class, () -> at.receive(DAY, at.store, line(resin, grains("2500"), "90")));
        StockItem brush = bench.get(SaveStockItem.class)
                .save(at.item("BR-1", StockType.BRUSH, Unit.PIECE).with(new Pack("Brush", pieces(4000))), OWNER);
        assertThrows(
                InventoryRefusal.OneAtATime.class,
                () -> at.receive(
                        DAY, at.store, new Received(LotId.next(), brush.id(), "Brush", pieces(2), usd("90"), "B-1")));

        at.transfer(DAY, at.store, at.van, Portion.whole(resin.id(), lead.lot()));
        Draw used = Consumption.ofCanister(
                resin.id(), lead.lot(), new WaterReading(Ppm.of("180"), Ppm.of("4"), gallons("60")));
        Drawn drawn = at.use(DAY, at.van, used);
        assertEquals(
                grains("616.892").value(),
                drawn.lines().getFirst().quantity().value().setScale(3, RoundingMode.HALF_UP));
        assertEquals(usd("22.21"), drawn.cost(), "90.00 × 616.892 ÷ 2,500");
        assertThrows(
                InventoryRefusal.NotEnough.class,
                () -> at.use(DAY, at.otherVan, new Draw(resin.id(), lead.lot(), grains("1"))),
                "the canister is in the first van");
        Money writtenOff = at.balance(AccountRole.WRITE_OFFS);
        at.writeOff(DAY, at.van, Portion.whole(resin.id(), lead.lot()));
        assertEquals(writtenOff.plus(usd("67.79")), at.balance(AccountRole.WRITE_OFFS), "the rest of the value");
    }

    @Test
    void a_transfer_takes_the_cost_along_and_leaves_the_money_ledger_alone() {
        StockItem soap = at.soap("TR");
        at.receive(DAY.minusDays(2), at.store, line(soap, gallons("3"), "30.01"));
        at.receive(DAY, at.store, line(soap, gallons("5"), "60.00"));
        Money inventory = at.balance(AccountRole.INVENTORY);
        Posted posted = at.transfer(DAY, at.store, at.van, Portion.of(soap.id(), gallons("4")));
        assertEquals(usd("42.01"), at.value(at.van, soap), "the older lot whole, and a fifth of the newer");
        assertEquals(usd("48.00"), at.value(at.store, soap));
        assertEquals(inventory, at.balance(AccountRole.INVENTORY));
        assertEquals(
                0L,
                bench.value(
                        "select count(*) from money_entry where document_id = ?",
                        posted.id().value()));
        assertThrows(
                InventoryRefusal.SameLocation.class,
                () -> at.transfer(DAY, at.van, at.van, Portion.of(soap.id(), gallons("1"))));
        assertThrows(
                InventoryRefusal.NotEnough.class,
                () -> at.transfer(DAY, at.store, at.van, Portion.of(soap.id(), gallons("4.000001"))));
        assertEquals(gallons("4"), at.held(at.store, soap), "a refusal leaves nothing half-written");
    }

    @Test
    void a_count_writes_off_what_is_missing_and_values_what_is_found() {
        StockItem soap = at.soap("CT");
        at.receive(DAY.minusDays(2), at.store, line(soap, gallons("10"), "100.00"));
        at.receive(DAY.minusDays(1), at.van, line(soap, gallons("2"), "24.00"));
        Money differences = at.balance(AccountRole.COUNT_DIFFERENCES);
        at.count(DAY, at.store, CountedItem.found(soap.id(), null, gallons("9.5")));
        assertEquals(differences.plus(usd("5.00")), at.balance(AccountRole.COUNT_DIFFERENCES));
        at.count(DAY, at.store, CountedItem.found(soap.id(), null, gallons("11")));
        assertEquals(usd("110.00"), at.value(at.store, soap), "found goods at the newest cost of the same location");
        at.count(DAY, at.otherVan, CountedItem.difference(soap.id(), null, gallons("0.5")));
        assertEquals(usd("5.00"), at.value(at.otherVan, soap), "the lot found by the count is now the newest anywhere");
        Posted agrees = at.count(DAY, at.store, CountedItem.found(soap.id(), null, gallons("11")));
        assertEquals(
                List.of(),
                bench.get(ReadStock.class)
                        .entries(StockEntryFilter.of(agrees.id()), null, 5)
                        .rows());
        assertThrows(
                InventoryRefusal.NotEnough.class,
                () -> at.count(DAY, at.van, CountedItem.difference(soap.id(), null, gallons("-3"))));
        assertThrows(
                KernelRefusal.Twice.class,
                () -> at.count(
                        DAY,
                        at.van,
                        CountedItem.found(soap.id(), null, gallons("1")),
                        CountedItem.found(soap.id(), null, gallons("2"))));
    }

    /** Each receipt can be, and together they are more than anybody enters: what is not there must still be taken out. */
    @Test
    void more_than_can_be_entered_at_once_is_counted_and_written_off() {
        StockItem gloves = at.gloves("MANY");
        at.receive(DAY, at.store, line(gloves, pieces(900_000_000), "1"));
        at.receive(DAY, at.store, line(gloves, pieces(900_000_000), "1"));
        at.count(DAY, at.store, CountedItem.found(gloves.id(), null, pieces(5)));
        assertEquals(pieces(5), at.held(at.store, gloves));
        at.receive(DAY, at.store, line(gloves, pieces(900_000_000), "1"));
        at.receive(DAY, at.store, line(gloves, pieces(900_000_000), "1"));
        at.writeOff(DAY, at.store, new Portion(gloves.id(), null, null));
        assertEquals(pieces(0), at.held(at.store, gloves));
        at.receive(DAY, at.store, line(gloves, pieces(900_000_000), "1"));
        LotId one = new LotId((UUID) bench.value(
                "select lot_id from lot_stock where item_id = ? and quantity > 0",
                gloves.id().value()));
        at.count(DAY, at.store, CountedItem.difference(gloves.id(), one, pieces(900_000_000)));
        at.writeOff(DAY, at.store, new Portion(gloves.id(), one, null));
        assertEquals(pieces(0), at.held(at.store, gloves));
        KernelRefusal.TooLarge entered = assertThrows(
                KernelRefusal.TooLarge.class,
                () -> at.writeOff(DAY, at.store, Portion.of(gloves.id(), pieces(1_000_000_000))));
        assertEquals(List.of("quantity"), entered.fields());
    }

    /** What fits in one unit may not in another: 1 lb is 7,000 grains (NIST Handbook 44, Appendix C). */
    @Test
    void what_is_entered_is_bounded_in_the_unit_that_it_is_kept_in() {
        StockItem resin = at.item("POUNDS", StockType.PLAIN, Unit.GRAIN);
        CountedItem pounds = CountedItem.difference(resin.id(), null, Quantity.of(142_858, Unit.POUND))
                .worth(usd("1"));
        KernelRefusal.TooLarge counted =
                assertThrows(KernelRefusal.TooLarge.class, () -> at.count(DAY, at.store, pounds));
        assertEquals(List.of("lines[0].quantity"), counted.fields());
    }

    @Test
    void more_packs_than_anybody_has_are_refused_by_their_quantity() {
        StockItem gloves = bench.get(SaveStockItem.class)
                .save(
                        Records.with(at.gloves("PALLETS"), "packs", List.of(new Pack("Pallet", pieces(999_999_999)))),
                        OWNER);
        KernelRefusal.TooLarge refused = assertThrows(
                KernelRefusal.TooLarge.class,
                () -> at.receive(
                        DAY, at.store, new Received(null, gloves.id(), "Pallet", pieces(999_999_999), usd("1"), "")));
        assertEquals(List.of("lines[0].quantity"), refused.fields());
    }

    /** Nobody sent an amount: it is the quantity that is too large at what the goods cost. */
    @Test
    void found_goods_worth_more_than_the_books_hold_are_refused_by_their_quantity() {
        StockItem gloves = at.gloves("GOLD");
        at.receive(DAY, at.store, line(gloves, pieces(1), "10000"));
        KernelRefusal.TooLarge refused = assertThrows(
                KernelRefusal.TooLarge.class,
                () -> at.count(DAY, at.store, CountedItem.found(gloves.id(), null, pieces(900_000_000))));
        assertEquals(List.of("lines[0].quantity"), refused.fields());
    }

    @Test
    void found_goods_of_unknown_cost_need_one() {
        StockItem gloves = at.gloves("NEW");
        var found = CountedItem.found(gloves.id(), null, pieces(12));
        assertThrows(InventoryRefusal.CostUnknown.class, () -> at.count(DAY, at.store, found));
        at.count(DAY, at.store, found.worth(usd("6.00")));
        assertEquals(usd("6.00"), at.value(at.store, gloves));
        Draw some = new Draw(gloves.id(), null, pieces(5));
        assertEquals(usd("2.50"), at.use(DAY, at.store, some).cost());
    }

    @Test
    void canisters_are_counted_one_by_one() {
        StockItem resin = at.item("DI-2", StockType.RESIN, Unit.GRAIN);
        Received canister = labeled(resin, grains("1000"), "50.00", "C-9");
        at.receive(DAY, at.van, canister);
        assertThrows(
                InventoryRefusal.LotNotNamed.class,
                () -> at.count(DAY, at.van, CountedItem.found(resin.id(), null, grains("500"))));
        at.count(DAY, at.van, CountedItem.found(resin.id(), canister.lot(), grains("600")));
        assertEquals(usd("30.00"), at.value(at.van, resin));
        at.count(
                DAY,
                at.van,
                CountedItem.difference(resin.id(), null, grains("1000")),
                CountedItem.difference(resin.id(), null, grains("200")));
        List<LotLevel> lots = bench.get(ReadStock.class).lots(at.van.id(), resin.id());
        assertEquals(3, lots.size());
        assertTrue(lots.stream().noneMatch(l -> l.label().isBlank()));
        StockItem soap = at.soap("NOT-RESIN");
        assertThrows(
                KernelRefusal.NotFound.class,
                () -> at.count(DAY, at.van, CountedItem.found(soap.id(), canister.lot(), gallons("1"))));
    }

    @Test
    void a_sheet_declares_what_the_books_lacked_and_draws_it_at_once() {
        StockItem soap = at.soap("SH");
        at.receive(DAY, at.van, line(soap, gallons("1"), "12.50"));
        Draw used = new Draw(soap.id(), null, gallons("1.5"));
        assertThrows(InventoryRefusal.NotEnough.class, () -> at.use(DAY, at.van, used));
        var declared = StockFixture.countOf(DAY, at.van, CountedItem.difference(soap.id(), null, gallons("0.5")));
        Drawn drawn = bench.inTransaction(() -> {
            bench.get(CountStock.class).countWithin(declared);
            return at.useWithin(DAY, at.van, used);
        });
        assertEquals(usd("18.75"), drawn.cost());
        assertEquals(gallons("0"), at.held(at.van, soap));
        assertThrows(
                IllegalStateException.class,
                () -> bench.get(CountStock.class).countWithin(declared),
                "it joins a transaction");
    }

    @Test
    void documents_without_lines_and_unknown_things_are_refused() {
        StockItem soap = at.soap("UN");
        Location nowhere = Location.store(LocationId.next(), "Nowhere");
        assertThrows(KernelRefusal.NotFound.class, () -> at.receive(DAY, nowhere, line(soap, gallons("1"), "1")));
        assertThrows(
                KernelRefusal.NotFound.class,
                () -> at.use(DAY, at.van, new Draw(StockItemId.next(), null, gallons("1"))));
        assertThrows(KernelRefusal.NoRows.class, () -> receipt(DAY, at.store));
        assertThrows(KernelRefusal.NoRows.class, () -> at.writeOff(DAY, at.store));
        assertThrows(
                LedgerRefusal.DateInFuture.class,
                () -> at.receive(DAY.plusYears(1), at.store, line(soap, gallons("1"), "1")));
        assertThrows(
                InventoryRefusal.NothingThere.class,
                () -> at.writeOff(DAY, at.store, new Portion(soap.id(), null, null)));
        assertThrows(
                KernelRefusal.NotFound.class,
                () -> at.reverse(new Posted(DocumentId.next(), DocumentType.WRITE_OFF, 1, DAY), DAY));
    }

    @Test
    void values_in_another_currency_are_refused() {
        StockItem soap = at.soap("EUR");
        Money euros = Money.of(CurrencyUnit.EUR, "10");
        assertThrows(
                KernelRefusal.UnlikeCurrencies.class,
                () -> at.receive(DAY, at.store, new Received(LotId.next(), soap.id(), null, gallons("1"), euros, "")));
        assertThrows(
                KernelRefusal.UnlikeCurrencies.class,
                () -> at.count(
                        DAY,
                        at.store,
                        CountedItem.found(soap.id(), null, gallons("1")).worth(euros)));
        assertEquals(gallons("0"), at.held(at.store, soap));
    }

    @Test
    void free_goods_cost_nothing_and_still_count() {
        StockItem soap = at.soap("FREE");
        at.receive(DAY, at.store, line(soap, gallons("2"), "0"));
        assertEquals(
                usd("0"),
                at.use(DAY, at.store, new Draw(soap.id(), null, gallons("2"))).cost());
        assertEquals(gallons("0"), at.held(at.store, soap));
    }
}
