package eaveside.inventory;

import static eaveside.inventory.StockFixture.DAY;
import static eaveside.inventory.StockFixture.gallons;
import static eaveside.inventory.StockFixture.grains;
import static eaveside.inventory.StockFixture.labeled;
import static eaveside.inventory.StockFixture.line;
import static eaveside.inventory.StockFixture.pieces;
import static eaveside.inventory.StockFixture.usd;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.kernel.KernelRefusal;
import eaveside.kernel.LocationId;
import eaveside.kernel.LotId;
import eaveside.kernel.Quantity;
import eaveside.kernel.Refusal;
import eaveside.kernel.Slice;
import eaveside.kernel.Unit;
import eaveside.ledger.DocumentType;
import eaveside.testing.Bench;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

class ReadStockIT {
    @RegisterExtension
    static final Bench bench = new Bench();

    private static StockFixture at;

    @BeforeAll
    static void found() {
        at = StockFixture.on(bench);
    }

    @Test
    void levels_tell_what_is_there_and_what_should_be() {
        StockItem soap = at.soap("L-SOAP");
        StockItem gloves = at.gloves("L-GLOVES");
        SetReorderPoint reorderPoint = bench.get(SetReorderPoint.class);
        reorderPoint.set(
                new SetReorderPoint.ReorderPoint(soap.id(), at.otherVan.id(), gallons("2")), StockFixture.OWNER);
        reorderPoint.set(
                new SetReorderPoint.ReorderPoint(gloves.id(), at.otherVan.id(), pieces(20)), StockFixture.OWNER);
        at.receive(DAY, at.otherVan, line(soap, gallons("2"), "25.00"));

        ReadStock read = bench.get(ReadStock.class);
        assertEquals(
                List.of(
                        new StockLevel(gloves, pieces(0), usd("0"), pieces(20)),
                        new StockLevel(soap, gallons("2"), usd("25.00"), gallons("2"))),
                read.levels(at.otherVan.id()));
        assertEquals(
                List.of(List.of(gloves.id().value(), at.otherVan.id().value(), pieces(0), pieces(20))),
                belowReorderPoint());
        at.use(DAY, at.otherVan, new Draw(soap.id(), null, gallons("0.25")));
        assertEquals(2, belowReorderPoint().size());
        assertTrue(read.levels(at.otherVan.id()).stream().allMatch(StockLevel::isBelowReorderPoint));
        reorderPoint.set(
                new SetReorderPoint.ReorderPoint(soap.id(), at.otherVan.id(), gallons("1.5")), StockFixture.OWNER);
        reorderPoint.set(
                new SetReorderPoint.ReorderPoint(gloves.id(), at.otherVan.id(), pieces(0)), StockFixture.OWNER);
        assertEquals(List.of(), belowReorderPoint());
        assertThrows(
                KernelRefusal.NotFound.class,
                () -> reorderPoint.set(
                        new SetReorderPoint.ReorderPoint(soap.id(), LocationId.next(), gallons("1")),
                        StockFixture.OWNER));
    }

    /** What the worklist lists: item, location, held, reorder point. */
    private static List<List<Object>> belowReorderPoint() {
        return bench
                .rows(
                        "select id, place, held, wanted, unit from due_items(?) where type = 'STOCK' order by detail, name",
                        DAY)
                .stream()
                .map(row -> {
                    Unit unit = Unit.ofCode((String) row.get("unit"));
                    return List.of(
                            row.get("id"),
                            row.get("place"),
                            (Object) Quantity.of((BigDecimal) row.get("held"), unit),
                            Quantity.of((BigDecimal) row.get("wanted"), unit));
                })
                .toList();
    }

    @Test
    void lots_are_listed_oldest_first_with_what_is_left() {
        StockItem resin = at.item("DI", StockType.RESIN, Unit.GRAIN);
        var newer = labeled(resin, grains("2000"), "80.00", "C-2");
        var older = labeled(resin, grains("1000"), "50.00", "C-1");
        at.receive(DAY, at.van, newer);
        at.receive(DAY.minusDays(3), at.van, older);
        at.use(DAY, at.van, new Draw(resin.id(), newer.lot(), grains("500")));
        ReadStock read = bench.get(ReadStock.class);
        List<LotLevel> lots = read.lots(at.van.id(), resin.id());
        assertEquals(List.of("C-1", "C-2"), lots.stream().map(LotLevel::label).toList());
        assertEquals(grains("2000"), lots.getLast().received());
        assertEquals(grains("1500"), lots.getLast().quantity());
        assertEquals(usd("60.00"), lots.getLast().value());
        assertEquals(lots, read.countedSingly(at.van.id()));
        assertEquals("C-2", read.lot(newer.lot()).label());
        assertThrows(KernelRefusal.NotFound.class, () -> read.lot(LotId.next()));
    }

    @Test
    void entries_page_by_key_newest_first_without_gap_or_overlap() {
        StockItem gloves = at.gloves("PAGED");
        for (int i = 1; i <= 7; i++) {
            at.receive(DAY, at.store, line(gloves, pieces(i), i + ".00"));
        }
        at.transfer(DAY, at.store, at.van, Portion.of(gloves.id(), pieces(4)));
        ReadStock read = bench.get(ReadStock.class);
        StockEntryFilter filter = StockEntryFilter.of(gloves.id(), null);
        List<StockEntryLine> all = read.entries(filter, null, 100).rows();
        assertTrue(all.size() > 10, "seven receipts and a transfer of several lots");
        List<StockEntryLine> paged = new ArrayList<>();
        String after = null;
        do {
            Slice<StockEntryLine> page = read.entries(filter, after, 4);
            paged.addAll(page.rows());
            after = page.next();
        } while (after != null);
        assertEquals(all, paged);

        assertTrue(all.stream()
                .anyMatch(e -> e.type() == DocumentType.TRANSFER
                        && e.locationName().equals("Van 1")
                        && e.itemName().equals("The PAGED")
                        && e.quantity().isPositive()));
        List<StockEntryLine> receipts = read.entries(
                        new StockEntryFilter(
                                DAY, DAY, List.of(DocumentType.RECEIPT), gloves.id(), null, at.store.id(), null),
                        null,
                        100)
                .rows();
        assertEquals(7, receipts.size());
        assertFalse(receipts.getFirst().summary().isBlank());
        assertNull(read.entries(StockEntryFilter.ALL, null, 1000).next());
        for (String bad : List.of("", "x", "2026-02-10_1_2", "2026-02-10")) {
            assertThrows(Refusal.class, () -> read.entries(filter, bad, 4), bad);
        }
    }

    @Test
    void locations_come_stores_first() {
        assertEquals(
                List.of(at.store, at.van, at.otherVan),
                bench.get(ReadStock.class).locations());
    }
}
