package eaveside.invoicing;

import static eaveside.invoicing.WorkedCompany.usd;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.kernel.DocumentId;
import eaveside.kernel.FindingId;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.InvoiceLineId;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.Records;
import eaveside.kernel.Unit;
import eaveside.kernel.VisitId;
import eaveside.ledger.AccountRole;
import eaveside.ledger.CostType;
import eaveside.ledger.EntryLine;
import eaveside.ledger.LedgerRefusal;
import eaveside.ledger.ReadBalances;
import eaveside.ledger.ReadLedger;
import eaveside.ledger.ReverseDocument.Reversal;
import eaveside.testing.Bench;
import eaveside.visits.ReadSheets;
import eaveside.visits.ReadVisits;
import eaveside.visits.ScopeChangeType;
import eaveside.visits.ScopeDecision;
import eaveside.visits.Visit;
import eaveside.visits.VisitRefusal;
import eaveside.visits.VisitStatus;
import java.sql.Connection;
import java.sql.Date;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Collectors;
import org.joda.money.CurrencyUnit;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

class InvoiceVisitIT {
    @RegisterExtension
    static final Bench bench = new Bench();

    private static WorkedCompany company;

    @BeforeAll
    static void found() {
        company = new WorkedCompany(bench);
    }

    @AfterEach
    void books_are_true() {
        bench.verifyBooks();
    }

    private static Visit done(int skippedPanels, int moreSkylights, ScopeDecision forExtras) {
        Visit visit = company.scheduled(null);
        company.signedOff(visit, skippedPanels, moreSkylights);
        company.decide(visit.id(), forExtras);
        return visit;
    }

    private static Money on(AccountRole account, VisitId visit) {
        return Money.sum(
                CurrencyUnit.USD,
                bench.get(ReadBalances.class).ofVisit(account, visit).stream()
                        .map(ReadBalances.VisitBalance::amount)
                        .toList());
    }

    private static List<EntryLine> entries(IssuedInvoice invoice) {
        return bench.get(ReadLedger.class)
                .document(new DocumentId(invoice.id().value()))
                .entries();
    }

    private static Money sum(List<EntryLine> entries) {
        return Money.sum(
                CurrencyUnit.USD, entries.stream().map(EntryLine::amount).toList());
    }

    private static VisitStatus status(Visit visit) {
        return bench.get(ReadVisits.class).visit(visit.id()).status();
    }

    @Test
    void a_visit_is_billed_as_quoted_with_its_extras() {
        Visit visit = done(2, 4, ScopeDecision.BILL);
        InvoiceDraft draft = company.drafted(visit.id());
        // 46 × 7.50; the quoted 6 skylights had been topped up, but with 4 more at 12.00 they pass the minimum of 100.
        assertEquals(
                List.of(usd("345.00"), usd("72.00"), usd("48.00")),
                draft.totals().lineNets());
        assertEquals(usd("9.90"), draft.totals().tax());
        assertEquals(usd("474.90"), draft.totals().gross());
        assertEquals("PANEL, South roof", draft.content().lines().getFirst().description());
        Money cost = on(AccountRole.WORK_IN_PROGRESS, visit.id());
        assertEquals(usd("229.60"), cost); // 70.83 + 29.27 + 87.50 + 42.00

        IssuedInvoice invoice = company.issued(draft);
        assertEquals(VisitStatus.BILLED, status(visit));
        assertEquals(usd("0"), on(AccountRole.WORK_IN_PROGRESS, visit.id()));
        assertEquals(cost, on(AccountRole.COST_OF_SERVICES, visit.id()));
        Map<CostType, Money> types =
                bench.get(ReadBalances.class).ofVisit(AccountRole.COST_OF_SERVICES, visit.id()).stream()
                        .collect(Collectors.toMap(
                                b -> Objects.requireNonNull(b.costType()),
                                ReadBalances.VisitBalance::amount,
                                Money::plus));
        assertEquals(
                Map.of(
                        CostType.LABOR, usd("70.83"),
                        CostType.TRAVEL, usd("29.27"),
                        CostType.OVERHEAD, usd("87.50"),
                        CostType.CONSUMABLES, usd("42.00")),
                types);
        Map<Object, Money> revenue = new HashMap<>();
        entries(invoice).stream()
                .filter(e -> e.accountName().equals("Service revenue"))
                .forEach(e -> revenue.merge(Objects.requireNonNull(e.serviceLine()), e.amount(), Money::plus));
        assertEquals(Map.of(company.arrays, usd("-345.00"), company.skylights, usd("-120.00")), revenue);
        assertEquals(
                List.of(invoice.id()),
                bench.get(ReadInvoices.class).ofVisit(visit.id()).stream()
                        .map(InvoiceSummary::id)
                        .toList());
    }

    @Test
    void a_top_up_to_the_minimum_is_a_charge_on_its_line() {
        Visit visit = done(0, 0, ScopeDecision.BILL);
        InvoiceDraft draft = company.drafted(visit.id());
        DraftLine skylights = draft.content().lines().getLast();
        assertEquals(usd("28.00"), skylights.adjustments().getFirst().amount());
        assertEquals(usd("100.00"), draft.totals().lineNets().getLast());
        company.issued(draft);
    }

    @Test
    void a_line_keeps_the_reason_of_its_price_until_somebody_reprices_it() {
        Visit visit = done(0, 0, ScopeDecision.BILL);
        InvoiceDraft draft = company.drafted(visit.id());
        DraftLine panels = draft.content().lines().getFirst();
        DraftLine skylights = draft.content().lines().getLast();
        assertEquals("48 at the quoted $7.50 each, makes $360.00.", reason(draft, panels));

        DraftLine renamed = new DraftLine(
                panels.id(),
                panels.serviceLine(),
                "Panels, washed",
                panels.quantity(),
                panels.price(),
                panels.adjustments(),
                panels.taxCode());
        DraftLine repriced = new DraftLine(
                skylights.id(),
                skylights.serviceLine(),
                skylights.description(),
                skylights.quantity(),
                skylights.price(),
                List.of(),
                skylights.taxCode());
        InvoiceDraft edited = bench.get(DraftInvoice.class)
                .save(Records.with(draft.content(), "lines", List.of(renamed, repriced)), company.office);
        assertEquals("48 at the quoted $7.50 each, makes $360.00.", reason(edited, panels));
        assertEquals("", reason(edited, skylights));
        IssuedInvoice invoice = company.issued(edited);
        assertEquals(
                "48 at the quoted $7.50 each, makes $360.00.",
                Objects.requireNonNull(invoice.lines().getFirst().origin()).priceReason());
    }

    private static String reason(InvoiceDraft draft, DraftLine line) {
        return Objects.requireNonNull(draft.origins().get(line.id())).priceReason();
    }

    @Test
    void given_work_shows_its_value_and_is_recorded_outside_profit() {
        Visit visit = done(0, 4, ScopeDecision.NO_CHARGE);
        IssuedInvoice invoice = company.issued(company.drafted(visit.id()));
        IssuedInvoice.Line noCharge = invoice.lines().getLast();
        assertTrue(Objects.requireNonNull(noCharge.origin()).noCharge());
        assertEquals(usd("0"), noCharge.net());
        assertEquals(usd("48.00"), noCharge.adjustments().getFirst().amount());
        // 48 panels, 6 skylights topped up to the minimum that no-charge work does not count for.
        assertEquals(usd("460.00"), invoice.totals().net());
        assertEquals(usd("48.00"), on(AccountRole.NO_CHARGE_GIVEN, visit.id()));
        assertEquals(usd("-48.00"), on(AccountRole.NO_CHARGE_CONTRA, visit.id()));
        assertEquals(
                usd("0"),
                sum(entries(invoice).stream()
                        .filter(e -> !e.account().value().startsWith("9"))
                        .toList()));
    }

    @Test
    void crediting_takes_all_of_it_back_and_the_visit_can_be_billed_anew() {
        Visit visit = done(0, 4, ScopeDecision.NO_CHARGE);
        Money cost = on(AccountRole.WORK_IN_PROGRESS, visit.id());
        IssuedInvoice invoice = company.issued(company.drafted(visit.id()));
        bench.get(CreditInvoice.class)
                .credit(new Reversal(
                        DocumentId.next(),
                        new DocumentId(invoice.id().value()),
                        company.today(),
                        "The extra was agreed after all",
                        company.office));
        assertEquals(VisitStatus.COMPLETED, status(visit));
        assertEquals(cost, on(AccountRole.WORK_IN_PROGRESS, visit.id()));
        assertEquals(usd("0"), on(AccountRole.NO_CHARGE_GIVEN, visit.id()));
        bench.verifyBooks();
        IssuedInvoice again = company.issued(company.drafted(visit.id()));
        assertEquals(invoice.totals(), again.totals());
        assertEquals(
                List.of(again.id(), invoice.id()),
                bench.get(ReadInvoices.class).ofVisit(visit.id()).stream()
                        .map(InvoiceSummary::id)
                        .toList());
    }

    @Test
    void a_decision_after_the_draft_is_noticed() {
        Visit visit = company.scheduled(null);
        company.signedOff(visit, 0, 4);
        assertThrows(VisitRefusal.Undecided.class, () -> company.drafted(visit.id()));
        company.decide(visit.id(), ScopeDecision.BILL);
        InvoiceDraft draft = company.drafted(visit.id());
        InvoiceRefusal.VisitDrafted twice =
                assertThrows(InvoiceRefusal.VisitDrafted.class, () -> company.drafted(visit.id()));
        assertTrue(twice.text().contains(draft.id().toString()));
        assertEquals(
                draft.id(), bench.get(ReadInvoices.class).draftOf(visit.id()).orElseThrow());
        company.decide(
                bench.get(ReadSheets.class)
                        .sheet(Objects.requireNonNull(
                                bench.get(ReadVisits.class).visit(visit.id()).sheet()))
                        .scopeChanges()
                        .getLast(),
                ScopeDecision.NO_CHARGE);
        assertThrows(InvoiceRefusal.VisitChanged.class, () -> company.issued(draft));
        assertEquals(VisitStatus.COMPLETED, status(visit), "nothing is half-written");
        bench.get(DraftInvoice.class).discard(draft.id(), draft.version(), company.office);
        company.issued(company.drafted(visit.id()));
    }

    @Test
    void edits_keep_where_lines_came_from() {
        Visit visit = done(0, 4, ScopeDecision.NO_CHARGE);
        BillVisit.Bill bill = new BillVisit.Bill(InvoiceId.next(), visit.id(), company.office);
        InvoiceDraft draft = bench.get(BillVisit.class).draft(bill);
        assertEquals(draft, bench.get(BillVisit.class).draft(bill), "a retry");
        List<DraftLine> lines = new ArrayList<>(draft.content().lines());
        DraftLine first = lines.getFirst();
        lines.set(
                0,
                new DraftLine(
                        first.id(),
                        first.serviceLine(),
                        "Panels, washed twice",
                        Quantity.of(40, Unit.PIECE),
                        first.price(),
                        List.of(),
                        first.taxCode()));
        InvoiceDraft edited = edit(draft, lines);
        Map<InvoiceLineId, LineOrigin> origins = new HashMap<>(draft.origins());
        origins.computeIfPresent(first.id(), (id, origin) -> origin.repriced());
        assertEquals(origins, edited.origins());
        DraftLine noCharge = lines.getLast();
        lines.set(
                2,
                new DraftLine(
                        noCharge.id(),
                        noCharge.serviceLine(),
                        noCharge.description(),
                        noCharge.quantity(),
                        noCharge.price(),
                        List.of(Adjustment.charge(usd("1"), "More")),
                        noCharge.taxCode()));
        assertThrows(InvoiceRefusal.NoChargeAdjusted.class, () -> edit(edited, lines));
        IssuedInvoice invoice = company.issued(edited);
        assertEquals(usd("300.00"), invoice.lines().getFirst().net());
        assertEquals(first.id(), invoice.lines().getFirst().id());
    }

    private static InvoiceDraft edit(InvoiceDraft draft, List<DraftLine> lines) {
        return bench.get(DraftInvoice.class).save(Records.with(draft.content(), "lines", lines), company.office);
    }

    @Test
    void revenue_of_a_quote_that_came_from_a_finding_says_so() {
        Visit first = company.scheduled(null);
        FindingId finding = company.signedOff(first, 0, 0);
        Visit visit = company.scheduled(finding);
        company.signedOff(visit, 0, 9);
        company.decide(visit.id(), ScopeDecision.BILL);
        IssuedInvoice invoice = company.issued(company.drafted(visit.id()));
        Map<Boolean, Money> revenue = entries(invoice).stream()
                .filter(e -> e.accountName().equals("Service revenue"))
                .collect(Collectors.toMap(e -> e.finding() != null, EntryLine::amount, Money::plus));
        assertEquals(Map.of(true, usd("-432.00"), false, usd("-108.00")), revenue, "the extras were not quoted");
        assertTrue(entries(invoice).stream()
                .allMatch(e -> e.finding() == null || e.finding().equals(finding)));
        company.issued(company.drafted(first.id()));
    }

    @Test
    void a_return_pays_no_minimum_that_the_first_visit_has_paid() {
        Visit first = company.scheduled(null);
        company.signedOff(first, 0, 0, 4);
        company.decide(first.id(), ScopeChangeType.SKIPPED, ScopeDecision.RETURN_VISIT);
        IssuedInvoice firstInvoice = company.issued(company.drafted(first.id()));
        // 48 panels; 2 skylights at 12.00, topped up to the service's minimum of 100.
        assertEquals(usd("460.00"), firstInvoice.totals().net());

        Visit back = company.returned(first.id());
        company.signedOff(back, 0, 0, 0);
        IssuedInvoice rest = company.issued(company.drafted(back.id()));
        assertEquals(usd("48.00"), rest.totals().net(), "4 skylights at the quoted 12.00 and no second minimum");
        assertEquals(
                usd("508.00"), firstInvoice.totals().net().plus(rest.totals().net()));
    }

    @Test
    void a_return_pays_the_minimum_of_a_service_that_the_first_visit_did_not_do() {
        Visit first = company.scheduled(null);
        company.signedOff(first, 0, 0, 6);
        company.decide(first.id(), ScopeChangeType.SKIPPED, ScopeDecision.RETURN_VISIT);
        Visit back = company.returned(first.id());
        company.signedOff(back, 0, 0, 0);
        // The return is billed first: what the first visit bears does not depend on which invoice is written first.
        assertEquals(
                usd("100.00"),
                company.issued(company.drafted(back.id())).totals().net());
        assertEquals(
                usd("360.00"),
                company.issued(company.drafted(first.id())).totals().net());
    }

    @Test
    void a_return_pays_the_minimum_where_the_first_visit_had_nothing_to_bill() {
        Visit first = company.scheduled(null);
        company.signedOff(first, 48, 0, 6);
        company.decide(first.id(), ScopeChangeType.SKIPPED, ScopeDecision.RETURN_VISIT);
        Visit back = company.returned(first.id());
        company.signedOff(back, 0, 0, 0);
        assertEquals(usd("460.00"), company.drafted(back.id()).totals().net());
    }

    @Test
    void an_invoice_is_not_dated_before_the_work_that_it_bills() {
        bench.clock().forward(Duration.ofDays(3));
        Visit visit = company.scheduled(null);
        company.signedOff(visit, 0, 0);
        InvoiceDraft draft = company.drafted(visit.id());
        LedgerRefusal.BeforeBasis refused = assertThrows(
                LedgerRefusal.BeforeBasis.class,
                () -> bench.get(IssueInvoice.class)
                        .issue(new IssueInvoice.Issue(
                                draft.id(),
                                draft.version(),
                                company.today().minusDays(1),
                                CreditOnHand.KEEP,
                                company.office)));
        assertEquals(List.of("date"), refused.fields());
        assertEquals(VisitStatus.COMPLETED, status(visit), "nothing is half-written");
        IssuedInvoice invoice = company.issued(draft);
        assertEquals(
                Objects.requireNonNull(
                                bench.get(ReadVisits.class).visit(visit.id()).sheet())
                        .value(),
                bench.value(
                        "select billed_sheet_id from invoice where id = ?",
                        invoice.id().value()));
    }

    /** Past every check of the use case: what writes into the table itself, with no more than the application's rights. */
    @Test
    void the_database_takes_no_invoice_dated_before_the_sheet_that_it_bills() throws SQLException {
        IssuedInvoice like =
                company.issued(company.drafted(done(0, 0, ScopeDecision.BILL).id()));
        bench.clock().forward(Duration.ofDays(3));
        Visit visit = done(0, 0, ScopeDecision.BILL);
        DocumentId sheet = Objects.requireNonNull(
                bench.get(ReadVisits.class).visit(visit.id()).sheet());
        LocalDate day =
                ((Date) bench.value("select posting_date from document where id = ?", sheet.value())).toLocalDate();

        insert(like, visit.id(), sheet, day);
        insert(like, visit.id(), sheet, day.plusDays(1));
        String refused = "is dated before the sheet that it bills";
        assertTrue(refusal(like, visit.id(), sheet, day.minusDays(1)).contains(refused));
        assertTrue(refusal(like, visit.id(), null, day).contains(refused), "it bills none");
        DocumentId another = new DocumentId((UUID) bench.value(
                "select billed_sheet_id from invoice where id = ?", like.id().value()));
        assertTrue(refusal(like, visit.id(), another, day).contains(refused), "it bills the sheet of another visit");
        assertTrue(refusal(like, null, sheet, day).contains("without its visit"));
    }

    private static String refusal(
            IssuedInvoice like, @Nullable VisitId visit, @Nullable DocumentId sheet, LocalDate day) {
        SQLException refused = assertThrows(SQLException.class, () -> insert(like, visit, sheet, day));
        assertEquals("23000", refused.getSQLState(), refused.getMessage());
        return refused.getMessage();
    }

    /** Writes an invoice that differs from another in its visit, sheet and day alone; nothing of it stays. */
    private static void insert(IssuedInvoice like, @Nullable VisitId visit, @Nullable DocumentId sheet, LocalDate day)
            throws SQLException {
        String id = UUID.randomUUID().toString();
        try (Connection connection = bench.database().asApplication().getConnection()) {
            connection.setAutoCommit(false);
            copy(connection, "document", like, """
                    {"id": "%1$s", "number": %2$d, "posting_date": "%3$s", "service_date": "%3$s"}
                    """.formatted(id, like.number() + 1, day));
            copy(connection, "invoice", like, """
                    {"id": "%1$s", "number": %2$d, "invoice_date": "%3$s", "due_date": "%3$s", "service_date": "%3$s",
                     "visit_id": %4$s, "billed_sheet_id": %5$s}
                    """.formatted(id, like.number() + 1, day, quoted(visit), quoted(sheet)));
            connection.rollback();
        }
    }

    private static String quoted(@Nullable Object id) {
        return id == null ? "null" : "\"" + id + "\"";
    }

    private static void copy(Connection connection, String table, IssuedInvoice like, String but) throws SQLException {
        try (PreparedStatement insert = connection.prepareStatement("insert into " + table
                + " select (jsonb_populate_record(t, ?::jsonb)).* from " + table + " t where t.id = ?")) {
            insert.setString(1, but);
            insert.setObject(2, like.id().value());
            assertEquals(1, insert.executeUpdate());
        }
    }
}
