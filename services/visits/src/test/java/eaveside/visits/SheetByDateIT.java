package eaveside.visits;

import static eaveside.visits.VisitsFixture.TODAY;
import static eaveside.visits.VisitsFixture.pieces;
import static eaveside.visits.VisitsFixture.usd;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.inventory.CountStock;
import eaveside.inventory.CountedItem;
import eaveside.inventory.InventoryRefusal;
import eaveside.inventory.Location;
import eaveside.inventory.LotLevel;
import eaveside.inventory.Portion;
import eaveside.inventory.ReadStock;
import eaveside.inventory.ReceiveGoods;
import eaveside.inventory.SaveLocation;
import eaveside.inventory.StockCount;
import eaveside.inventory.TransferStock;
import eaveside.kernel.DocumentId;
import eaveside.kernel.LocationId;
import eaveside.kernel.LotId;
import eaveside.kernel.Quantity;
import eaveside.kernel.Unit;
import eaveside.kernel.VisitId;
import eaveside.kernel.VisitLineId;
import eaveside.ledger.Posted;
import eaveside.ledger.ReverseDocument.Reversal;
import eaveside.testing.Bench;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A sheet draws only what its van holds on the day that the sheet posts; each test has days of its own. */
class SheetByDateIT {
    @RegisterExtension
    static final Bench bench = new Bench();

    private static VisitsFixture company;
    private static int tests;

    private LocalDate day = TODAY;

    @BeforeAll
    static void found() {
        company = new VisitsFixture(bench);
    }

    /** Ten more parts come into the van on the day. */
    @BeforeEach
    void goods_of_the_day() {
        day = TODAY.plusDays(10L * ++tests);
        bench.clock().to(day);
        bench.get(ReceiveGoods.class)
                .receive(new ReceiveGoods.Receipt(
                        DocumentId.next(),
                        day,
                        company.van.van,
                        "Suds & Co",
                        "",
                        List.of(new ReceiveGoods.Received(
                                LotId.next(), company.van.parts, null, pieces(10), usd("420.00"), "")),
                        company.owner));
    }

    @AfterEach
    void books_are_true() {
        bench.verifyBooks();
    }

    private Visit scheduled(LocalDate on) {
        return bench.get(ScheduleVisit.class)
                .schedule(Scheduling.of(
                        VisitId.next(),
                        company.customer,
                        company.site,
                        on,
                        List.of(company.technician),
                        List.of(new ScheduledLine(VisitLineId.next(), company.panelWash, company.array, pieces(48))),
                        "",
                        company.office));
    }

    private static int parts() {
        return bench.get(ReadStock.class).lots(company.van.van, company.van.parts).stream()
                .map(LotLevel::quantity)
                .reduce(pieces(0), Quantity::plus)
                .value()
                .intValueExact();
    }

    private static Posted signed(JobSheet sheet) {
        return bench.get(SignOffVisit.class).signOff(sheet).posted();
    }

    @Test
    void goods_are_not_used_before_they_came() {
        LocalDate before = day.minusDays(1);
        Visit visit = scheduled(before);
        InventoryRefusal.NotEnough refused = assertThrows(
                InventoryRefusal.NotEnough.class,
                () -> signed(company.sheet(visit).parts(parts()).build()));
        assertTrue(refused.text().contains("On " + before), refused.text());
        assertTrue(refused.text().contains((parts() - 10) + " H87"), refused.text());
        assertEquals(
                VisitStatus.SCHEDULED,
                bench.get(ReadVisits.class).visit(visit.id()).status());
        signed(company.sheet(visit).on(day).parts(parts()).build());
    }

    /** The reversal gives the goods back on its own day, so the sheet that is right posts from that day on. */
    @Test
    void a_sheet_entered_again_uses_what_its_reversal_gave_back() {
        Visit visit = scheduled(day);
        JobSheet wrong = company.sheet(visit).parts(parts()).build();
        assertEquals(day, signed(wrong).postingDate());
        bench.clock().to(day.plusDays(4));
        bench.get(ReverseJobSheet.class)
                .reverse(new Reversal(
                        DocumentId.next(), wrong.id(), day.plusDays(4), "Minutes of another visit", company.office));
        JobSheet right = company.sheet(visit).parts(parts()).build();
        assertEquals(day.plusDays(4), signed(right).postingDate());
        assertEquals(day, bench.get(ReadSheets.class).sheet(right.id()).completedOn());
        assertEquals(0, parts());
    }

    /** Counts have a series of their own: one of a later day moves the declared count, and the sheet follows it. */
    @Test
    void a_sheet_posts_no_earlier_than_the_count_that_it_declares() {
        bench.clock().to(day.plusDays(3));
        bench.get(CountStock.class)
                .count(new StockCount(
                        DocumentId.next(),
                        day.plusDays(3),
                        company.van.van,
                        "Soap counted",
                        List.of(CountedItem.difference(company.van.soap, null, Quantity.of(1, Unit.US_FLUID_OUNCE))),
                        company.owner));
        int held = parts();
        Visit visit = scheduled(day.plusDays(1));
        JobSheet sheet =
                company.sheet(visit).parts(held + 2).countedParts(held + 2).build();
        assertEquals(day.plusDays(3), signed(sheet).postingDate());
        assertEquals(0, parts());
    }

    /** The technician has the canister before him: papers that were entered late neither stop him nor count it twice. */
    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void what_a_sheet_counts_of_a_lot_is_held_against_the_lot_although_it_came_later_by_its_papers(boolean byTransfer) {
        Visit visit = scheduled(day.minusDays(1));
        LotId canister = LotId.next();
        LocationId store = LocationId.next();
        bench.get(SaveLocation.class).save(Location.store(store, "Store of " + store), company.owner);
        bench.get(ReceiveGoods.class)
                .receive(new ReceiveGoods.Receipt(
                        DocumentId.next(),
                        day,
                        byTransfer ? store : company.van.van,
                        "Suds & Co",
                        "",
                        List.of(new ReceiveGoods.Received(
                                canister,
                                company.van.resin,
                                null,
                                Quantity.of(1_000, Unit.GRAIN),
                                usd("18.00"),
                                "C-" + canister)),
                        company.owner));
        if (byTransfer) {
            bench.get(TransferStock.class)
                    .transfer(new TransferStock.Transfer(
                            DocumentId.next(),
                            day,
                            store,
                            company.van.van,
                            "",
                            List.of(new Portion(company.van.resin, canister, null)),
                            company.owner));
        }
        bench.get(CountStock.class)
                .count(new StockCount(
                        DocumentId.next(),
                        day,
                        company.van.van,
                        "Soap counted",
                        List.of(CountedItem.difference(company.van.soap, null, Quantity.of(1, Unit.US_FLUID_OUNCE))),
                        company.owner));
        signed(company.sheet(visit)
                .counted(company.van.resin, canister, Quantity.of(900, Unit.GRAIN))
                .build());
        assertEquals(
                Quantity.of(900, Unit.GRAIN),
                bench.get(ReadStock.class).lots(company.van.van, company.van.resin).stream()
                        .filter(level -> level.lot().equals(canister))
                        .findFirst()
                        .orElseThrow()
                        .quantity());
    }
}
