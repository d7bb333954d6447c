package eaveside.invoicing;

import eaveside.access.AddUser;
import eaveside.access.NewPassword;
import eaveside.access.Role;
import eaveside.access.Username;
import eaveside.catalog.SaveServiceItem;
import eaveside.catalog.SaveServiceLine;
import eaveside.catalog.ServiceItem;
import eaveside.catalog.ServiceLine;
import eaveside.catalog.SetTax;
import eaveside.catalog.StandardMinutes;
import eaveside.catalog.TaxCategory;
import eaveside.catalog.TaxCode;
import eaveside.catalog.TaxSetting;
import eaveside.costing.CostRates;
import eaveside.costing.Effort;
import eaveside.costing.SetCostRates;
import eaveside.customers.Address;
import eaveside.customers.Customer;
import eaveside.customers.CustomerType;
import eaveside.customers.SaveCustomer;
import eaveside.customers.SaveSite;
import eaveside.customers.SaveSurface;
import eaveside.customers.Site;
import eaveside.customers.Surface;
import eaveside.customers.SurfaceType;
import eaveside.findings.FindingTypeCode;
import eaveside.findings.SeverityCode;
import eaveside.inventory.Location;
import eaveside.inventory.ReceiveGoods;
import eaveside.inventory.SaveLocation;
import eaveside.inventory.SaveStockItem;
import eaveside.inventory.StockItem;
import eaveside.inventory.StockType;
import eaveside.kernel.CustomerId;
import eaveside.kernel.DocumentId;
import eaveside.kernel.FindingId;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.LocationId;
import eaveside.kernel.LotId;
import eaveside.kernel.Money;
import eaveside.kernel.Percent;
import eaveside.kernel.PriceBookId;
import eaveside.kernel.Quantity;
import eaveside.kernel.QuoteId;
import eaveside.kernel.QuoteLineId;
import eaveside.kernel.Records;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.SiteId;
import eaveside.kernel.StockItemId;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.Unit;
import eaveside.kernel.UnitPrice;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import eaveside.kernel.VisitLineId;
import eaveside.ledger.Books;
import eaveside.ledger.Company;
import eaveside.ledger.FoundCompany;
import eaveside.pricing.AcceptQuote;
import eaveside.pricing.DraftQuote;
import eaveside.pricing.ExpectedTravel;
import eaveside.pricing.LineMinimum;
import eaveside.pricing.NewQuote;
import eaveside.pricing.PriceBookDraft;
import eaveside.pricing.PriceList;
import eaveside.pricing.PublishPriceBook;
import eaveside.pricing.QuantityStep;
import eaveside.pricing.Quote;
import eaveside.pricing.QuoteAcceptance;
import eaveside.pricing.QuoteScope;
import eaveside.pricing.SavePriceBook;
import eaveside.pricing.ServiceItemPrice;
import eaveside.testing.Bench;
import eaveside.visits.DecideScopeChange;
import eaveside.visits.JobSheet;
import eaveside.visits.ReadSheets;
import eaveside.visits.ScheduleVisit;
import eaveside.visits.ScheduledLine;
import eaveside.visits.Scheduling;
import eaveside.visits.ScopeChange;
import eaveside.visits.ScopeChangeDecision;
import eaveside.visits.ScopeChangeType;
import eaveside.visits.ScopeDecision;
import eaveside.visits.SignOffVisit;
import eaveside.visits.SkipReason;
import eaveside.visits.Visit;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.joda.money.CurrencyUnit;
import org.jspecify.annotations.Nullable;

/**
 * A company that does visits, for tests here and to the right: 48 panels at 7.50 untaxed, 6 skylights at 12.00 taxed at
 * 8.25 % with a line minimum of 100.00; a labor hour costs 25 and as much overhead, a mile 0.70; parts at 42.00 in the
 * van.
 */
public final class WorkedCompany {
    /** The bench's first day. */
    public static final LocalDate TODAY = LocalDate.of(2026, 3, 2);

    public final UserId office = UserId.next();
    public final UserId technician = UserId.next();
    public final CustomerId customer = CustomerId.next();
    public final ServiceLineId arrays = ServiceLineId.next();
    public final ServiceLineId skylights = ServiceLineId.next();
    private final SiteId site = SiteId.next();
    private final SurfaceId array = SurfaceId.next();
    private final SurfaceId windows = SurfaceId.next();
    private final ServiceItemId panelWash = ServiceItemId.next();
    private final ServiceItemId skylightWash = ServiceItemId.next();
    private final StockItemId parts = StockItemId.next();
    private final Bench bench;

    public WorkedCompany(Bench bench) {
        this.bench = bench;
        employ(office, "otto", Role.OFFICE);
        employ(technician, "tess", Role.TECHNICIAN);
        found();
        sell(arrays, "ARRAYS", panelWash, "PANEL", SurfaceType.ARRAY, "2", "UNTAXED");
        sell(skylights, "SKYLIGHTS", skylightWash, "SKYLIGHT", SurfaceType.SKYLIGHT, "6", "TAXED");
        serve();
        stock();
        publishPrices(TODAY.minusDays(30));
    }

    public static Money usd(String amount) {
        return Money.of(CurrencyUnit.USD, amount);
    }

    private static Quantity pieces(long count) {
        return Quantity.of(count, Unit.PIECE);
    }

    private void found() {
        LocalDate start = LocalDate.of(2026, 1, 1);
        bench.get(FoundCompany.class)
                .found(new Company(
                        "Gutterby Exterior Care",
                        new Company.Address("1 Ladder Lane", "Gutterby", "", "00001", "US"),
                        "office@example.com",
                        "555-0100",
                        "",
                        "USD",
                        "America/Los_Angeles",
                        Company.Measures.US,
                        start));
        UnitPrice mile = UnitPrice.perOne(CurrencyUnit.USD, new BigDecimal("0.70"), Unit.MILE);
        bench.get(SetCostRates.class).set(new CostRates(start, usd("25.00"), mile, usd("25.00")), office);
        SetTax setTax = bench.get(SetTax.class);
        setTax.set(
                new TaxSetting(new TaxCode("UNTAXED"), TaxCategory.O, Percent.of("0"), start, "Not taxable here"),
                office);
        setTax.set(new TaxSetting(new TaxCode("TAXED"), TaxCategory.S, Percent.of("8.25"), start, ""), office);
    }

    private void employ(UserId id, String username, Role role) {
        bench.get(AddUser.class)
                .add(new AddUser.NewUser(
                        id, new Username(username), username, role, new NewPassword("seven damp gutters sing"), null));
    }

    private void sell(
            ServiceLineId line,
            String lineCode,
            ServiceItemId serviceItem,
            String code,
            SurfaceType type,
            String minutes,
            String tax) {
        bench.get(SaveServiceLine.class).save(new ServiceLine(line, lineCode, lineCode, true, 0), office);
        sellUnder(line, serviceItem, code, type, minutes, tax);
    }

    private void sellUnder(
            ServiceLineId line, ServiceItemId serviceItem, String code, SurfaceType type, String minutes, String tax) {
        bench.get(SaveServiceItem.class)
                .save(
                        new ServiceItem(
                                serviceItem,
                                line,
                                code,
                                code,
                                Unit.PIECE,
                                StandardMinutes.of(minutes),
                                new TaxCode(tax),
                                type,
                                "",
                                List.of(),
                                true,
                                0),
                        office);
    }

    private void serve() {
        Address address = new Address("5 Gable Row", "Gutterby", "", "00001", "US");
        bench.get(SaveCustomer.class)
                .save(
                        Customer.of(customer, "Harriet Quill", CustomerType.HOUSEHOLD, address, 14)
                                .reached("harriet@example.com", "555-0111"),
                        office);
        bench.get(SaveSite.class).save(new Site(site, customer, "Home", address, "", "", true, true, 0), office);
        SaveSurface save = bench.get(SaveSurface.class);
        save.save(
                new Surface(array, site, SurfaceType.ARRAY, "South roof", pieces(48), 2, null, Map.of(), true, 0),
                office);
        save.save(
                new Surface(windows, site, SurfaceType.SKYLIGHT, "Stairs", pieces(6), 0, null, Map.of(), true, 0),
                office);
    }

    private void stock() {
        LocationId van = LocationId.next();
        bench.get(SaveStockItem.class).save(StockItem.of(parts, "PARTS", "Parts", StockType.PLAIN, Unit.PIECE), office);
        bench.get(SaveLocation.class).save(Location.van(van, "Van 1", technician), office);
        bench.get(ReceiveGoods.class)
                .receive(new ReceiveGoods.Receipt(
                        DocumentId.next(),
                        TODAY,
                        van,
                        "Suds & Co",
                        "",
                        List.of(new ReceiveGoods.Received(LotId.next(), parts, null, pieces(100), usd("4200.00"), "")),
                        office));
    }

    /** A service on the array under that service line, at 7.50 a panel from the day on; the other prices stay. */
    public ServiceItemId offers(ServiceLineId line, String code, LocalDate from) {
        ServiceItemId serviceItem = ServiceItemId.next();
        sellUnder(line, serviceItem, code, SurfaceType.ARRAY, "2", "UNTAXED");
        publishPrices(from, price(serviceItem, "7.50"));
        return serviceItem;
    }

    private void publishPrices(LocalDate from, ServiceItemPrice... more) {
        List<ServiceItemPrice> prices =
                new ArrayList<>(List.of(price(panelWash, "7.50"), price(skylightWash, "12.00")));
        prices.addAll(Arrays.asList(more));
        PriceBookDraft draft = bench.get(SavePriceBook.class)
                .save(
                        new PriceBookDraft(
                                PriceBookId.next(),
                                new PriceList(
                                        "From " + from,
                                        from,
                                        usd("0"),
                                        Percent.of("0"),
                                        List.of(new LineMinimum(skylights, usd("100.00"))),
                                        prices),
                                0),
                        office);
        bench.get(PublishPriceBook.class).publish(new PublishPriceBook.Publish(draft.id(), draft.version(), office));
    }

    private static ServiceItemPrice price(ServiceItemId serviceItem, String each) {
        UnitPrice price = UnitPrice.perOne(CurrencyUnit.USD, new BigDecimal(each), Unit.PIECE);
        return new ServiceItemPrice(
                serviceItem, List.of(new QuantityStep(Quantity.zero(Unit.PIECE), price)), List.of());
    }

    /** An accepted quote for all panels and skylights. */
    public Quote quote(@Nullable FindingId cameFrom) {
        QuoteScope scope = new QuoteScope(
                today().plusDays(30),
                "",
                ExpectedTravel.NONE,
                List.of(
                        new QuoteScope.Line(QuoteLineId.next(), panelWash, array, pieces(48)),
                        new QuoteScope.Line(QuoteLineId.next(), skylightWash, windows, pieces(6))));
        Quote draft = bench.get(DraftQuote.class)
                .draft(new NewQuote(QuoteId.next(), customer, site, cameFrom, scope, office));
        return bench.get(AcceptQuote.class)
                .accept(new QuoteAcceptance(draft.id(), draft.version(), "By phone", office));
    }

    /** A visit today from an accepted quote. */
    public Visit scheduled(@Nullable FindingId cameFrom) {
        return bench.get(ScheduleVisit.class)
                .schedule(Scheduling.fromQuote(
                        VisitId.next(), quote(cameFrom).id(), today(), List.of(technician), "", office));
    }

    /** A visit today for one service on the whole array, without a quote. */
    public Visit scheduledFor(ServiceItemId service) {
        return bench.get(ScheduleVisit.class)
                .schedule(Scheduling.of(
                        VisitId.next(),
                        customer,
                        site,
                        today(),
                        List.of(technician),
                        List.of(new ScheduledLine(VisitLineId.next(), service, array, pieces(48))),
                        "",
                        office));
    }

    /** Signs the visit off as planned, with that much work and so many parts (42.00 each) on its first line. */
    public void signedOff(Visit visit, Effort effort, int partsUsed) {
        List<JobSheet.Used> used = partsUsed == 0
                ? List.of()
                : List.of(new JobSheet.Used.OfItem(
                        parts, pieces(partsUsed), visit.lines().getFirst().serviceLine()));
        bench.get(SignOffVisit.class)
                .signOff(new JobSheet(
                        DocumentId.next(),
                        visit.id(),
                        visit.date(),
                        technician,
                        null,
                        visit.lines().stream()
                                .map(line -> new JobSheet.DoneLine(line.id(), line.planned(), List.of()))
                                .toList(),
                        List.of(),
                        List.of(),
                        used,
                        null,
                        effort,
                        List.of(),
                        List.of(),
                        ""));
    }

    /** Bills the one line of the visit at a price of the office's own. */
    public IssuedInvoice billedAt(Visit visit, Money price) {
        InvoiceDraft draft = drafted(visit.id());
        DraftLine line = draft.content().lines().getFirst();
        DraftLine priced = new DraftLine(
                line.id(),
                line.serviceLine(),
                line.description(),
                line.quantity(),
                ItemPrice.of(new UnitPrice(price.currency(), price.amount(), line.quantity())),
                List.of(),
                line.taxCode());
        return issued(
                bench.get(DraftInvoice.class).save(Records.with(draft.content(), "lines", List.of(priced)), office));
    }

    /**
     * Signs the visit off: 150 labor minutes on site, 40 driving, 20 loading, 18 miles (labor 70.83, travel 29.27,
     * overhead 87.50), one part (42.00) on the first line, and a cracked panel seen.
     *
     * @param  skippedPanels not done, cracked
     * @param  moreSkylights beyond the plan
     */
    public FindingId signedOff(Visit visit, int skippedPanels, int moreSkylights) {
        return signedOff(visit, skippedPanels, moreSkylights, 0);
    }

    /** @param  skippedSkylights not done, for the weather */
    public FindingId signedOff(Visit visit, int skippedPanels, int moreSkylights, int skippedSkylights) {
        FindingId finding = FindingId.next();
        List<JobSheet.DoneLine> lines = new ArrayList<>();
        for (Visit.Line line : visit.lines()) {
            boolean panels = line.serviceLine().equals(arrays);
            Quantity missing = pieces(panels ? skippedPanels : skippedSkylights);
            SkipReason reason = panels ? SkipReason.CRACKED : SkipReason.WEATHER;
            lines.add(new JobSheet.DoneLine(
                    line.id(),
                    line.planned().minus(missing),
                    missing.isPositive()
                            ? List.of(new JobSheet.Skip(missing, reason, "", panels ? finding : null))
                            : List.of()));
        }
        List<JobSheet.Extra> extras = moreSkylights == 0
                ? List.of()
                : List.of(new JobSheet.Extra(
                        VisitLineId.next(), skylightWash, windows, pieces(moreSkylights), "Ms. Quill, on site"));
        bench.get(SignOffVisit.class)
                .signOff(new JobSheet(
                        DocumentId.next(),
                        visit.id(),
                        visit.date(),
                        technician,
                        null,
                        lines,
                        extras,
                        List.of(),
                        List.of(new JobSheet.Used.OfItem(
                                parts, pieces(1), visit.lines().getFirst().serviceLine())),
                        null,
                        new Effort(150, 40, 20, Quantity.of(18, Unit.MILE)),
                        List.of(new JobSheet.Seen(
                                finding,
                                new FindingTypeCode("CRACKED_GLASS"),
                                new SeverityCode("URGENT"),
                                array,
                                "By the chimney",
                                true,
                                List.of())),
                        List.of(),
                        ""));
        return finding;
    }

    /** Leaves what was skipped undone and settles what was extra. */
    public void decide(VisitId visit, ScopeDecision forExtras) {
        for (ScopeChange scopeChange :
                bench.get(ReadSheets.class).undecided(null, 100).rows()) {
            if (scopeChange.visit().equals(visit)) {
                decide(scopeChange, scopeChange.type() == ScopeChangeType.SKIPPED ? ScopeDecision.CANCEL : forExtras);
            }
        }
    }

    /** Settles all of a type on the visit. */
    public void decide(VisitId visit, ScopeChangeType type, ScopeDecision decision) {
        bench.get(ReadSheets.class).undecided(null, 100).rows().stream()
                .filter(d -> d.visit().equals(visit) && d.type() == type)
                .forEach(d -> decide(d, decision));
    }

    /** A visit today for what the visit skipped. */
    public Visit returned(VisitId to) {
        return bench.get(ScheduleVisit.class)
                .schedule(Scheduling.returning(VisitId.next(), to, today(), List.of(technician), "", office));
    }

    public void decide(ScopeChange scopeChange, ScopeDecision decision) {
        bench.get(DecideScopeChange.class)
                .decide(new ScopeChangeDecision(
                        scopeChange.visit(), scopeChange.id(), scopeChange.version(), decision, "As agreed", office));
    }

    public InvoiceDraft drafted(VisitId visit) {
        return bench.get(BillVisit.class).draft(new BillVisit.Bill(InvoiceId.next(), visit, office));
    }

    public IssuedInvoice issued(InvoiceDraft draft) {
        return bench.get(IssueInvoice.class)
                .issue(new IssueInvoice.Issue(draft.id(), draft.version(), today(), CreditOnHand.KEEP, office));
    }

    public LocalDate today() {
        return bench.inTransaction(() -> bench.get(Books.class).today());
    }
}
