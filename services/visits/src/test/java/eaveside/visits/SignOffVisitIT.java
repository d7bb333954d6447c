package eaveside.visits;

import static eaveside.visits.VisitsFixture.TODAY;
import static eaveside.visits.VisitsFixture.pieces;
import static eaveside.visits.VisitsFixture.usd;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.catalog.CatalogRefusal;
import eaveside.customers.ReadSurfaces;
import eaveside.customers.SurfaceType;
import eaveside.findings.FindingRefusal;
import eaveside.findings.FindingTypeCode;
import eaveside.findings.FindingView;
import eaveside.findings.ReadFindings;
import eaveside.findings.SeverityCode;
import eaveside.inventory.InventoryRefusal;
import eaveside.inventory.LotLevel;
import eaveside.inventory.ReadStock;
import eaveside.kernel.DocumentId;
import eaveside.kernel.FindingId;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.LotId;
import eaveside.kernel.Money;
import eaveside.kernel.PhotoId;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.VisitId;
import eaveside.ledger.AccountRole;
import eaveside.ledger.ClosePeriod;
import eaveside.ledger.CostType;
import eaveside.ledger.DocumentView;
import eaveside.ledger.EntryLine;
import eaveside.ledger.LedgerRefusal;
import eaveside.ledger.ReadLedger;
import eaveside.ledger.ReverseDocument;
import eaveside.testing.Bench;
import eaveside.visits.JobSheet.SurfaceFact;
import java.math.BigDecimal;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Map;
import org.joda.money.CurrencyUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

class SignOffVisitIT {
    @RegisterExtension
    static final Bench bench = new Bench();

    static VisitsFixture company;

    @BeforeAll
    static void found() {
        company = new VisitsFixture(bench);
    }

    @AfterEach
    void books_are_true() {
        bench.verifyBooks();
        bench.clock().to(TODAY);
    }

    private static SignOffVisit.SignedOff signOff(JobSheet sheet) {
        return bench.get(SignOffVisit.class).signOff(sheet);
    }

    private static Visit visit(Visit scheduled) {
        return bench.get(ReadVisits.class).visit(scheduled.id());
    }

    private static JobSheet.Seen cracked(FindingId id) {
        return new JobSheet.Seen(
                id,
                new FindingTypeCode("CRACKED_GLASS"),
                new SeverityCode("URGENT"),
                company.array,
                "Two panels by the chimney",
                true,
                List.of());
    }

    private static Money wip(VisitId visit) {
        return company.balance(AccountRole.WORK_IN_PROGRESS, visit);
    }

    /** The whole of what the trade expects of a sheet, in one. */
    @Test
    void a_sheet_posts_once_with_all_that_follows_from_it() {
        Visit scheduled = company.scheduledFromQuote();
        FindingId finding = FindingId.next();
        JobSheet sheet = company.sheet(scheduled)
                .skipped(0, 2, SkipReason.CRACKED, finding)
                .extraSkylights(4)
                .mixed("4", null)
                .water("171.1806", "0", "10")
                .brushed(50, company.skylightLine)
                .saw(cracked(finding))
                .fact(new SurfaceFact.Recounted(company.skylights, pieces(10)))
                .build();
        SignOffVisit.SignedOff signed = signOff(sheet);

        // Soap 16 fl oz × 0.50, resin 100 grains × 0.018, brush 50 × 0.03; labor, travel, overhead of the fixture's
        // effort.
        assertEquals(usd("198.90"), wip(scheduled.id()));
        List<ReadSheets.Cost> costs = bench.get(ReadSheets.class).costOf(sheet.id());
        assertEquals(usd("5.58").plus(usd("1.80")), cost(costs, true, CostType.CONSUMABLES));
        assertEquals(usd("2.42").plus(usd("1.50")), cost(costs, false, CostType.CONSUMABLES));
        // 46 panels × 2 min = 92 of 152 standard minutes.
        assertEquals(usd("42.87"), cost(costs, true, CostType.LABOR));
        assertEquals(usd("27.96"), cost(costs, false, CostType.LABOR));

        Visit done = visit(scheduled);
        assertEquals(VisitStatus.COMPLETED, done.status());
        assertEquals(sheet.id(), done.sheet());
        assertEquals(
                pieces(10),
                bench.get(ReadSurfaces.class).surface(company.skylights).extent());
        FindingView seen = bench.get(ReadFindings.class).finding(finding);
        assertEquals(FindingView.Status.OPEN, seen.status());
        SignedSheet shown = bench.get(ReadSheets.class).sheetFor(company.technician, sheet.id());
        assertEquals(
                List.of(ScopeChangeType.SKIPPED, ScopeChangeType.EXTRA),
                shown.scopeChanges().stream().map(ScopeChange::type).toList());
        assertEquals(sheet.lines(), shown.lines());
        assertEquals(sheet.extras(), shown.extras());
        assertEquals(sheet.readings(), shown.readings());
        assertEquals(sheet.used(), shown.used());
        assertEquals(sheet.effort(), shown.effort());
        assertEquals(1, signed.warnings().size(), "alkaline mix on modules whose manufacturer forbids it");
        assertEquals(signed.warnings(), shown.warnings());
        assertEquals(signed.posted(), shown.posted());
        assertThrows(
                VisitRefusal.NotYours.class, () -> bench.get(ReadSheets.class).sheetFor(company.other, sheet.id()));

        String after = footprint();
        assertEquals(signed, signOff(sheet), "the same sheet again");
        assertEquals(after, footprint());
        assertThrows(
                KernelRefusal.IdTaken.class,
                () -> signOff(company.sheet(scheduled).id(sheet.id()).build()));
        assertThrows(
                VisitRefusal.WrongStatus.class,
                () -> signOff(company.sheet(scheduled).build()));
        assertEquals(after, footprint());
    }

    private static Money cost(List<ReadSheets.Cost> costs, boolean arrays, CostType type) {
        return Money.sum(
                CurrencyUnit.USD,
                costs.stream()
                        .filter(c -> c.type() == type
                                && c.serviceLine().equals(arrays ? company.arrayLine : company.skylightLine))
                        .map(ReadSheets.Cost::amount)
                        .toList());
    }

    /** How much there is of everything that a sheet touches. */
    private static String footprint() {
        StringBuilder all = new StringBuilder();
        for (String table : List.of(
                "document",
                "money_entry",
                "stock_entry",
                "job_sheet",
                "visit_line",
                "scope_change",
                "finding",
                "surface",
                "surface_count",
                "job_sheet_line",
                "job_sheet_cost")) {
            all.append(table)
                    .append(' ')
                    .append(bench.value("select count(*) from " + table))
                    .append('\n');
        }
        all.append(bench.rows("select lot_id, location_id, quantity, value from lot_stock order by 1, 2"));
        all.append(bench.rows("select type, last_number from number_series order by 1"));
        all.append(bench.rows("select id, status, version from visit order by 1"));
        all.append(bench.rows("select id, extent, version from surface order by 1"));
        return all.toString();
    }

    /** A skylight takes 6 minutes: 16,667 of them are more than the 100,000 minutes that a visit takes. */
    @Test
    void more_extra_work_than_a_visit_takes_is_refused_by_its_quantity() {
        Visit scheduled = company.scheduled();
        CatalogRefusal.TooMuchWork refused = assertThrows(
                CatalogRefusal.TooMuchWork.class,
                () -> signOff(company.sheet(scheduled).extraSkylights(16_667).build()));
        assertEquals(List.of("extras[0].quantity"), refused.fields());
        // 16,666 would be 99,996 minutes alone; what was done of the plan comes first.
        assertThrows(
                CatalogRefusal.TooMuchWork.class,
                () -> signOff(company.sheet(scheduled).extraSkylights(16_666).build()));
    }

    @Test
    void a_fault_at_the_very_end_leaves_nothing_anywhere() {
        Visit scheduled = company.scheduled();
        FindingId finding = FindingId.next();
        SurfaceId found = SurfaceId.next();
        JobSheet sheet = company.sheet(scheduled)
                .skipped(0, 2, SkipReason.CRACKED, finding)
                .extraSkylights(1)
                .mixed("2", null)
                .countedParts(15)
                .saw(cracked(finding))
                .fact(new SurfaceFact.Found(found, SurfaceType.WINDOW, "Conservatory", pieces(8), 0, Map.of()))
                .build();
        String before = footprint();
        bench.execute("create function fail() returns trigger language plpgsql as"
                + " $$ begin raise exception 'the disk is full'; end $$");
        bench.execute("create constraint trigger fault after update on visit deferrable initially deferred"
                + " for each row execute function fail()");
        try {
            assertThrows(RuntimeException.class, () -> signOff(sheet));
        } finally {
            bench.execute("drop trigger fault on visit");
            bench.execute("drop function fail()");
        }
        assertEquals(before, footprint());
        assertEquals(VisitStatus.SCHEDULED, visit(scheduled).status());

        signOff(sheet);
        assertEquals(VisitStatus.COMPLETED, visit(scheduled).status());
        assertEquals(
                "Conservatory", bench.get(ReadSurfaces.class).surface(found).name());
    }

    @Test
    void refusals_of_other_modules_leave_nothing_either() {
        Visit scheduled = company.scheduled();
        String before = footprint();
        FindingId finding = FindingId.next();
        JobSheet.Seen unseen = new JobSheet.Seen(
                finding,
                new FindingTypeCode("NEST"),
                new SeverityCode("NOTE"),
                null,
                "",
                false,
                List.of(PhotoId.next()));
        assertThrows(
                FindingRefusal.PhotoNotOfVisit.class,
                () -> signOff(
                        company.sheet(scheduled).mixed("1", null).saw(unseen).build()));
        assertThrows(
                InventoryRefusal.NotEnough.class,
                () -> signOff(company.sheet(scheduled).parts(5_000).build()));
        assertThrows(
                LedgerRefusal.DateInFuture.class,
                () -> signOff(company.sheet(scheduled).on(TODAY.plusDays(1)).build()));
        assertThrows(
                KernelRefusal.NotFound.class,
                () -> signOff(company.sheet(scheduled)
                        .skipped(0, 2, SkipReason.CRACKED, FindingId.next())
                        .build()));
        assertThrows(
                KernelRefusal.NotFound.class, () -> signOff(new SheetBuilder(company, unknown(scheduled)).build()));
        assertEquals(before, footprint());
    }

    private static Visit unknown(Visit like) {
        return new Visit(
                VisitId.next(),
                like.customer(),
                like.site(),
                null,
                null,
                null,
                like.date(),
                like.crew(),
                like.status(),
                "",
                null,
                null,
                null,
                null,
                0,
                like.lines(),
                List.of(),
                List.of(),
                List.of());
    }

    @Test
    void technicians_sign_only_for_their_own_crew_and_draw_only_from_its_van() {
        Visit scheduled = company.scheduled();
        assertThrows(
                VisitRefusal.NotYours.class,
                () -> signOff(company.sheet(scheduled).by(company.other).build()));
        assertThrows(
                VisitRefusal.NotYourVan.class,
                () -> signOff(company.sheet(scheduled)
                        .mixed("1", null)
                        .from(company.van.store)
                        .build()));
        assertThrows(
                VisitRefusal.NoLocation.class,
                () -> signOff(company.sheet(scheduled)
                        .by(company.office)
                        .mixed("1", null)
                        .build()));
        signOff(company.sheet(scheduled)
                .by(company.office)
                .mixed("1", null)
                .from(company.van.van)
                .build());
        assertEquals(VisitStatus.COMPLETED, visit(scheduled).status());
    }

    @Test
    void a_declared_count_is_posted_before_the_draw_and_shown_to_the_office() {
        Visit scheduled = company.scheduled();
        long held = bench.get(ReadStock.class).lots(company.van.van, company.van.parts).stream()
                .mapToLong(lot -> lot.quantity().value().longValueExact())
                .sum();
        JobSheet sheet = company.sheet(scheduled)
                .parts((int) held + 2)
                .countedParts((int) held + 3)
                .build();
        signOff(sheet);
        JobSheet.Declared declared = sheet.count();
        assertEquals(
                usd("126.00"),
                bench.get(ReadLedger.class).document(declared.document()).entries().stream()
                        .map(EntryLine::amount)
                        .filter(Money::isPositive)
                        .findFirst()
                        .orElseThrow());
        assertEquals(declared, bench.get(ReadSheets.class).sheet(sheet.id()).count());
    }

    @Test
    void a_late_sheet_keeps_its_day_and_posts_on_the_first_open_one() {
        Visit scheduled = company.scheduled();
        bench.get(RescheduleVisit.class)
                .reschedule(new Rescheduling(
                        scheduled.id(),
                        scheduled.version(),
                        LocalDate.of(2026, 1, 20),
                        scheduled.crew(),
                        "Was done earlier",
                        company.office));
        bench.get(ClosePeriod.class)
                .close(new ClosePeriod.Close(DocumentId.next(), YearMonth.of(2026, 1), company.owner));
        JobSheet sheet = company.sheet(scheduled).on(LocalDate.of(2026, 1, 20)).build();
        signOff(sheet);
        DocumentView document = bench.get(ReadLedger.class).document(sheet.id());
        assertEquals(LocalDate.of(2026, 1, 20), document.serviceDate());
        assertFalse(document.posted().postingDate().isBefore(LocalDate.of(2026, 2, 1)));
        assertEquals(LocalDate.of(2026, 1, 20), visit(scheduled).completedOn());
    }

    @Test
    void a_visit_where_nothing_could_be_done_still_costs_by_the_plan() {
        Visit scheduled = company.scheduled();
        JobSheet sheet = company.sheet(scheduled)
                .skipped(0, 48, SkipReason.NO_ACCESS, null)
                .skipped(1, 6, SkipReason.NO_ACCESS, null)
                .build();
        signOff(sheet);
        assertEquals(usd("187.60"), wip(scheduled.id()));
        // 96 of 132 planned minutes are the array's.
        assertEquals(usd("51.51"), cost(bench.get(ReadSheets.class).costOf(sheet.id()), true, CostType.LABOR));
        assertTrue(bench.get(ReadSheets.class).sheet(sheet.id()).scopeChanges().stream()
                .allMatch(d -> d.reason() == SkipReason.NO_ACCESS));
    }

    private static Money resinOf(DocumentId sheet) {
        return Money.sum(
                CurrencyUnit.USD,
                bench
                        .rows(
                                "select value from stock_entry where document_id = ? and item_id = ?",
                                sheet.value(),
                                company.van.resin.value())
                        .stream()
                        .map(row -> Money.of(CurrencyUnit.USD, ((BigDecimal) row.get("value")).stripTrailingZeros()))
                        .toList());
    }

    /** 1,000 grains by its manufacturer, yet the water stays pure for 1,500: what a reading shows is so, the books only estimate. */
    @Test
    void a_canister_works_for_as_long_as_its_reading_says() {
        LotId canister = company.van.anotherCanister("C-long");
        Visit first = company.scheduled();
        JobSheet sheet = company.sheet(first)
                .water("171.1806", "0", "90", canister)
                .water("171.1806", "2", "60", canister)
                .build();
        signOff(sheet);
        assertEquals(VisitStatus.COMPLETED, visit(first).status());
        Money paid = resinOf(sheet.id()).negated();
        assertTrue(paid.compareTo(usd("17.90")) > 0 && paid.compareTo(usd("18.00")) <= 0, paid + " of 18.00");
        LotLevel left = bench.get(ReadStock.class).countedSingly(company.van.van).stream()
                .filter(lot -> lot.lot().equals(canister))
                .findFirst()
                .orElseThrow(() -> new AssertionError("the canister that works cannot be named on the next sheet"));
        assertTrue(left.quantity().isPositive());
        String after = footprint();
        signOff(sheet);
        assertEquals(after, footprint(), "the same sheet again");

        Visit second = company.scheduled();
        signOff(company.sheet(second).water("171.1806", "4", "50", canister).build());
        assertEquals(VisitStatus.COMPLETED, visit(second).status());

        bench.get(ReverseJobSheet.class)
                .reverse(new ReverseDocument.Reversal(
                        DocumentId.next(), visit(second).sheet(), TODAY, "Wrong canister", company.office));
        bench.get(ReverseJobSheet.class)
                .reverse(new ReverseDocument.Reversal(
                        DocumentId.next(), sheet.id(), TODAY, "Wrong canister", company.office));
        assertEquals(
                new BigDecimal("1000.000000"),
                bench.value("select quantity from lot_stock where lot_id = ?", canister.value()),
                "a reversed sheet takes back its correction of the estimate too");
    }

    @Test
    void a_canister_is_refused_where_its_own_reading_says_that_it_is_spent() {
        LotId canister = company.van.anotherCanister("C-spent");
        Visit scheduled = company.scheduled();
        String before = footprint();
        InventoryRefusal refusal = assertThrows(
                InventoryRefusal.class,
                () -> signOff(company.sheet(scheduled)
                        .water("171.1806", "20", "150", canister)
                        .build()));
        assertTrue(refusal.text().contains("20 ppm") && refusal.text().contains("spent"), refusal.text());
        assertEquals(List.of("readings[0].pureWater"), refusal.fields());
        assertEquals(before, footprint());
        signOff(company.sheet(scheduled).water("171.1806", "20", "50", canister).build());
        assertEquals(
                VisitStatus.COMPLETED, visit(scheduled).status(), "as long as the books hold it, it can be used up");
    }

    @Test
    void the_day_of_the_work_lies_near_the_day_that_was_planned() {
        Visit scheduled = company.scheduled();
        for (LocalDate slip : List.of(TODAY.minusYears(1), TODAY.minusDays(15))) {
            VisitRefusal refusal = assertThrows(
                    VisitRefusal.class,
                    () -> signOff(company.sheet(scheduled).on(slip).build()));
            assertEquals(List.of("completedOn"), refusal.fields());
            assertTrue(refusal.text().contains(slip.toString()), refusal.text());
        }
        signOff(company.sheet(scheduled).on(TODAY.minusDays(14)).build());
        assertEquals(TODAY.minusDays(14), visit(scheduled).completedOn());
        SQLException refused = assertThrows(
                SQLException.class,
                () -> bench.executeAsApplication(
                        "update visit set completed_on = scheduled_for + 15 where id = ?",
                        scheduled.id().value()));
        assertTrue(refused.getMessage().contains("far from the day that was planned"), refused.getMessage());
    }
}
