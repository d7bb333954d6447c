package eaveside.pricing;

import static eaveside.pricing.TestLists.each;
import static eaveside.pricing.TestLists.percent;
import static eaveside.pricing.TestLists.step;
import static eaveside.pricing.TestLists.usd;

import eaveside.catalog.SaveServiceItem;
import eaveside.catalog.SaveServiceLine;
import eaveside.catalog.ServiceItem;
import eaveside.catalog.ServiceLine;
import eaveside.catalog.SetTax;
import eaveside.catalog.StandardConsumable;
import eaveside.catalog.StandardMinutes;
import eaveside.catalog.TaxCategory;
import eaveside.catalog.TaxCode;
import eaveside.catalog.TaxSetting;
import eaveside.costing.CostRates;
import eaveside.costing.SetCostRates;
import eaveside.customers.Address;
import eaveside.customers.Customer;
import eaveside.customers.CustomerType;
import eaveside.customers.SaveCustomer;
import eaveside.customers.SaveSite;
import eaveside.customers.SaveSurface;
import eaveside.customers.Site;
import eaveside.customers.Surface;
import eaveside.customers.SurfaceAttribute;
import eaveside.customers.SurfaceType;
import eaveside.inventory.Location;
import eaveside.inventory.LocationType;
import eaveside.inventory.ReceiveGoods;
import eaveside.inventory.SaveLocation;
import eaveside.inventory.SaveStockItem;
import eaveside.inventory.StockItem;
import eaveside.inventory.StockType;
import eaveside.kernel.CustomerId;
import eaveside.kernel.DocumentId;
import eaveside.kernel.FindingId;
import eaveside.kernel.LocationId;
import eaveside.kernel.LotId;
import eaveside.kernel.Percent;
import eaveside.kernel.PriceBookId;
import eaveside.kernel.Quantity;
import eaveside.kernel.QuoteId;
import eaveside.kernel.QuoteLineId;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.SiteId;
import eaveside.kernel.StockItemId;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.Unit;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import eaveside.ledger.Company;
import eaveside.ledger.FoundCompany;
import eaveside.testing.Bench;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** A company with a customer, a site with an array and skylights, two services, cost rates and a stock of soap. */
final class PricingFixture {
    static final UserId OWNER = UserId.next();
    static final LocalDate TODAY = LocalDate.of(2026, 3, 2);
    static final LocalDate VALID_UNTIL = LocalDate.of(2026, 4, 1);

    final CustomerId customer = CustomerId.next();
    final SiteId site = SiteId.next();
    final SurfaceId array = SurfaceId.next();
    final SurfaceId skylights = SurfaceId.next();
    final ServiceLineId arrayLine = ServiceLineId.next();
    final ServiceLineId glassLine = ServiceLineId.next();
    final ServiceItemId panelClean = ServiceItemId.next();
    final ServiceItemId skylightClean = ServiceItemId.next();
    final StockItemId soap = StockItemId.next();
    private final Bench bench;

    PricingFixture(Bench bench) {
        this.bench = bench;
        bench.clock().to(TODAY);
        bench.employ(OWNER.value());
        found();
        keepStock();
        sell();
        bench.get(SaveCustomer.class)
                .save(
                        new Customer(
                                customer,
                                "Harriet Quill",
                                CustomerType.HOUSEHOLD,
                                address(),
                                "harriet@example.com",
                                "555-0111",
                                14,
                                "",
                                true,
                                0),
                        OWNER);
        bench.get(SaveSite.class).save(site(site), OWNER);
        save(array, SurfaceType.ARRAY, "South roof", 48, 2, Map.of(SurfaceAttribute.STORY, 2));
        save(skylights, SurfaceType.SKYLIGHT, "Over the stairs", 6, 0, Map.of());
    }

    Site site(SiteId id) {
        return new Site(id, customer, "Home", address(), "", "", true, true, 0);
    }

    private void save(
            SurfaceId id, SurfaceType type, String name, int count, int rows, Map<SurfaceAttribute, Integer> is) {
        bench.get(SaveSurface.class)
                .save(
                        new Surface(id, site, type, name, Quantity.of(count, Unit.PIECE), rows, null, is, true, 0),
                        OWNER);
    }

    private void found() {
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
                        LocalDate.of(2026, 1, 1)));
        bench.get(SetCostRates.class)
                .set(
                        new CostRates(
                                LocalDate.of(2026, 1, 1),
                                usd("30.00"),
                                TestLists.perOne("0.70", Unit.MILE),
                                usd("12.00")),
                        OWNER);
        bench.get(SetTax.class)
                .set(
                        new TaxSetting(
                                new TaxCode("NONE"),
                                TaxCategory.O,
                                Percent.of("0"),
                                LocalDate.of(2026, 1, 1),
                                "Not taxable here"),
                        OWNER);
    }

    private void sell() {
        bench.get(SaveServiceLine.class).save(new ServiceLine(arrayLine, "ARRAYS", "Arrays", true, 0), OWNER);
        bench.get(SaveServiceLine.class).save(new ServiceLine(glassLine, "GLASS", "Glass", true, 0), OWNER);
        sell(panelClean, arrayLine, "PANEL", "Panel, cleaned", SurfaceType.ARRAY, "2", Unit.PIECE, true);
        sell(skylightClean, glassLine, "SKYLIGHT", "Skylight, cleaned", SurfaceType.SKYLIGHT, "6", Unit.PIECE, false);
    }

    void sell(
            ServiceItemId id,
            ServiceLineId line,
            String code,
            String name,
            @Nullable SurfaceType type,
            String minutes,
            Unit unit,
            boolean usesSoap) {
        bench.get(SaveServiceItem.class)
                .save(
                        new ServiceItem(
                                id,
                                line,
                                code,
                                name,
                                unit,
                                StandardMinutes.of(minutes),
                                new TaxCode("NONE"),
                                type,
                                "",
                                usesSoap
                                        ? List.of(new StandardConsumable(soap, Quantity.of("0.5", Unit.US_FLUID_OUNCE)))
                                        : List.of(),
                                true,
                                0),
                        OWNER);
    }

    /** A gallon of soap at 25.60, which is 0.20 a fluid ounce. */
    private void keepStock() {
        bench.get(SaveStockItem.class)
                .save(
                        new StockItem(
                                soap,
                                "SOAP",
                                "Soap concentrate",
                                StockType.CONCENTRATE,
                                Unit.US_FLUID_OUNCE,
                                List.of(),
                                false,
                                true,
                                0),
                        OWNER);
        LocationId store = LocationId.next();
        bench.get(SaveLocation.class)
                .save(new Location(store, "Store room", LocationType.STORE, List.of(), true, 0), OWNER);
        bench.get(ReceiveGoods.class)
                .receive(new ReceiveGoods.Receipt(
                        DocumentId.next(),
                        TODAY,
                        store,
                        "Suds & Co",
                        "",
                        List.of(new ReceiveGoods.Received(
                                LotId.next(), soap, null, Quantity.of(128, Unit.US_FLUID_OUNCE), usd("25.60"), "")),
                        OWNER));
    }

    private static Address address() {
        return new Address("5 Gable Row", "Gutterby", "", "00001", "US");
    }

    /** Panels 9.00, from 40 7.50, story 2 up 20 %; skylights at the price; 5 % off a shared visit; at least 150 a visit. */
    PriceList list(LocalDate from, String skylight) {
        return new PriceList(
                "Prices from " + from,
                from,
                usd("150"),
                Percent.of("5"),
                List.of(new LineMinimum(glassLine, usd("60"))),
                List.of(
                        new ServiceItemPrice(
                                panelClean,
                                List.of(each("0", "9.00"), each("40", "7.50")),
                                List.of(percent(SurfaceAttribute.STORY, 2, "20"))),
                        new ServiceItemPrice(skylightClean, List.of(step("0", skylight, Unit.PIECE)), List.of())));
    }

    PriceBook publish(PriceList list) {
        PriceBookDraft draft =
                bench.get(SavePriceBook.class).save(new PriceBookDraft(PriceBookId.next(), list, 0), OWNER);
        return bench.get(PublishPriceBook.class)
                .publish(new PublishPriceBook.Publish(draft.id(), draft.version(), OWNER));
    }

    QuoteScope scope(LocalDate validUntil, QuoteScope.Line... lines) {
        return new QuoteScope(
                validUntil, "As seen on site", new ExpectedTravel(30, Quantity.of(12, Unit.MILE)), List.of(lines));
    }

    QuoteScope.Line panels(int count) {
        return new QuoteScope.Line(QuoteLineId.next(), panelClean, array, Quantity.of(count, Unit.PIECE));
    }

    QuoteScope.Line skylights(int count) {
        return new QuoteScope.Line(QuoteLineId.next(), skylightClean, skylights, Quantity.of(count, Unit.PIECE));
    }

    NewQuote draftQuote(QuoteScope scope) {
        return new NewQuote(QuoteId.next(), customer, site, null, scope, OWNER);
    }

    Quote quote(QuoteScope.Line... lines) {
        return bench.get(DraftQuote.class).draft(draftQuote(scope(VALID_UNTIL, lines)));
    }

    /** Something that a technician saw at the site. */
    FindingId finding() {
        FindingId id = FindingId.next();
        bench.execute(
                "insert into finding (id, type_code, severity_code, visit_id, customer_id, site_id, note,"
                        + " customer_notified, opened_by, opened_at, fingerprint)"
                        + " values (?, 'LICHEN', 'SOON', ?, ?, ?, '', true, ?, now(), repeat('0', 64))",
                id.value(),
                VisitId.next().value(),
                customer.value(),
                site.value(),
                OWNER.value());
        return id;
    }
}
