package eaveside.visits;

import eaveside.access.AddUser;
import eaveside.access.NewPassword;
import eaveside.access.Role;
import eaveside.access.Username;
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
import eaveside.costing.Effort;
import eaveside.costing.SetCostRates;
import eaveside.customers.Address;
import eaveside.customers.Customer;
import eaveside.customers.CustomerType;
import eaveside.customers.ManufacturerName;
import eaveside.customers.PanelManufacturer;
import eaveside.customers.SaveCustomer;
import eaveside.customers.SavePanelManufacturer;
import eaveside.customers.SaveSite;
import eaveside.customers.SaveSurface;
import eaveside.customers.Site;
import eaveside.customers.Surface;
import eaveside.customers.SurfaceType;
import eaveside.kernel.CustomerId;
import eaveside.kernel.Money;
import eaveside.kernel.Percent;
import eaveside.kernel.PriceBookId;
import eaveside.kernel.Quantity;
import eaveside.kernel.QuoteId;
import eaveside.kernel.QuoteLineId;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.SiteId;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.Unit;
import eaveside.kernel.UnitPrice;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import eaveside.kernel.VisitLineId;
import eaveside.ledger.AccountRole;
import eaveside.ledger.Company;
import eaveside.ledger.FoundCompany;
import eaveside.ledger.ReadBalances;
import eaveside.pricing.AcceptQuote;
import eaveside.pricing.DraftQuote;
import eaveside.pricing.ExpectedTravel;
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
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.joda.money.CurrencyUnit;

/**
 * A company with two technicians and a stocked van, and a customer with an array of 48 panels (whose manufacturer forbids alkali)
 * and 6 skylights. A labor hour costs 25 with 25 overhead, a mile 0.70; a panel takes 2 minutes, a skylight 6.
 */
final class VisitsFixture {
    static final LocalDate TODAY = LocalDate.of(2026, 3, 2);

    final UserId owner = UserId.next();
    final UserId office = UserId.next();
    final UserId technician = UserId.next();
    final UserId other = UserId.next();
    final CustomerId customer = CustomerId.next();
    final SiteId site = SiteId.next();
    final SurfaceId array = SurfaceId.next();
    final SurfaceId skylights = SurfaceId.next();
    final ServiceLineId arrayLine = ServiceLineId.next();
    final ServiceLineId skylightLine = ServiceLineId.next();
    final ServiceItemId panelWash = ServiceItemId.next();
    final ServiceItemId skylightWash = ServiceItemId.next();
    final VanFixture van;
    private final Bench bench;

    VisitsFixture(Bench bench) {
        this.bench = bench;
        bench.clock().to(TODAY);
        employ(owner, "olive", "Olive Tarn", Role.OWNER);
        employ(office, "otto", "Otto Birch", Role.OFFICE);
        employ(technician, "tess", "Tess Larch", Role.TECHNICIAN);
        employ(other, "theo", "Theo Rowan", Role.TECHNICIAN);
        found();
        van = new VanFixture(bench, owner, technician);
        sell();
        serve();
        publishPrices();
    }

    static Money usd(String amount) {
        return Money.of(CurrencyUnit.USD, amount);
    }

    static Quantity pieces(long count) {
        return Quantity.of(count, Unit.PIECE);
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
                                usd("25.00"),
                                UnitPrice.perOne(CurrencyUnit.USD, new BigDecimal("0.70"), Unit.MILE),
                                usd("25.00")),
                        owner);
        bench.get(SetTax.class)
                .set(
                        new TaxSetting(
                                new TaxCode("NONE"),
                                TaxCategory.O,
                                Percent.of("0"),
                                LocalDate.of(2026, 1, 1),
                                "Not taxable here"),
                        owner);
    }

    private void employ(UserId id, String username, String name, Role role) {
        bench.get(AddUser.class)
                .add(new AddUser.NewUser(
                        id, new Username(username), name, role, new NewPassword("seven damp gutters sing"), null));
    }

    private void sell() {
        sell(arrayLine, "ARRAYS", panelWash, "PANEL", SurfaceType.ARRAY, "2", "0.25", true);
        sell(skylightLine, "SKYLIGHTS", skylightWash, "SKYLIGHT", SurfaceType.SKYLIGHT, "6", "0.5", false);
    }

    private void sell(
            ServiceLineId line,
            String lineCode,
            ServiceItemId serviceItem,
            String code,
            SurfaceType type,
            String minutes,
            String soapOunces,
            boolean usesResin) {
        bench.get(SaveServiceLine.class).save(new ServiceLine(line, lineCode, lineCode, true, 0), owner);
        StandardConsumable soap = new StandardConsumable(van.soap, Quantity.of(soapOunces, Unit.US_FLUID_OUNCE));
        StandardConsumable resin = new StandardConsumable(van.resin, Quantity.of(2, Unit.GRAIN));
        bench.get(SaveServiceItem.class)
                .save(
                        new ServiceItem(
                                serviceItem,
                                line,
                                code,
                                code,
                                Unit.PIECE,
                                StandardMinutes.of(minutes),
                                new TaxCode("NONE"),
                                type,
                                "",
                                usesResin ? List.of(soap, resin) : List.of(soap),
                                true,
                                0),
                        owner);
    }

    private void serve() {
        Address address = new Address("5 Gable Row", "Gutterby", "", "00001", "US");
        bench.get(SaveCustomer.class)
                .save(
                        Customer.of(customer, "Harriet Quill", CustomerType.HOUSEHOLD, address, 14)
                                .reached("harriet@example.com", "555-0111"),
                        owner);
        bench.get(SaveSite.class).save(new Site(site, customer, "Home", address, "", "", true, true, 0), owner);
        ManufacturerName manufacturer = new ManufacturerName("Brightfield");
        bench.get(SavePanelManufacturer.class)
                .save(new PanelManufacturer(manufacturer, 75, 700, 20, true, "Invented manual, page 9", 0), owner);
        save(new Surface(array, site, SurfaceType.ARRAY, "South roof", pieces(48), 2, manufacturer, Map.of(), true, 0));
        save(new Surface(skylights, site, SurfaceType.SKYLIGHT, "Stairs", pieces(6), 0, null, Map.of(), true, 0));
    }

    private void save(Surface surface) {
        bench.get(SaveSurface.class).save(surface, owner);
    }

    private void publishPrices() {
        PriceBookDraft draft = bench.get(SavePriceBook.class)
                .save(
                        new PriceBookDraft(
                                PriceBookId.next(),
                                new PriceList(
                                        "Spring",
                                        TODAY.minusDays(30),
                                        usd("0"),
                                        Percent.of("0"),
                                        List.of(),
                                        List.of(price(panelWash, "7.50"), price(skylightWash, "12.00"))),
                                0),
                        owner);
        bench.get(PublishPriceBook.class).publish(new PublishPriceBook.Publish(draft.id(), draft.version(), owner));
    }

    private static ServiceItemPrice price(ServiceItemId serviceItem, String each) {
        return new ServiceItemPrice(
                serviceItem,
                List.of(new QuantityStep(
                        Quantity.zero(Unit.PIECE),
                        UnitPrice.perOne(CurrencyUnit.USD, new BigDecimal(each), Unit.PIECE))),
                List.of());
    }

    /** A quote for all panels and skylights, accepted unless it is to stay a draft. */
    Quote quote(boolean accepted) {
        Quote draft = bench.get(DraftQuote.class)
                .draft(new NewQuote(
                        QuoteId.next(),
                        customer,
                        site,
                        null,
                        new QuoteScope(
                                LocalDate.of(2026, 4, 1),
                                "",
                                ExpectedTravel.NONE,
                                List.of(
                                        new QuoteScope.Line(QuoteLineId.next(), panelWash, array, pieces(48)),
                                        new QuoteScope.Line(QuoteLineId.next(), skylightWash, skylights, pieces(6)))),
                        office));
        return accepted
                ? bench.get(AcceptQuote.class)
                        .accept(new QuoteAcceptance(draft.id(), draft.version(), "By phone", office))
                : draft;
    }

    Scheduling scheduling() {
        return Scheduling.of(
                VisitId.next(),
                customer,
                site,
                TODAY,
                List.of(technician),
                List.of(
                        new ScheduledLine(VisitLineId.next(), panelWash, array, pieces(48)),
                        new ScheduledLine(VisitLineId.next(), skylightWash, skylights, pieces(6))),
                "",
                office);
    }

    /** A visit of {@link #technician} today, for 48 panels and 6 skylights. */
    Visit scheduled() {
        return bench.get(ScheduleVisit.class).schedule(scheduling());
    }

    /** The same from an accepted quote. */
    Visit scheduledFromQuote() {
        return bench.get(ScheduleVisit.class)
                .schedule(
                        Scheduling.fromQuote(VisitId.next(), quote(true).id(), TODAY, List.of(technician), "", office));
    }

    /** 150 labor minutes on site, 40 driving, 20 loading, 18 miles: labor 70.83, travel 29.27, overhead 87.50. */
    static Effort effort() {
        return new Effort(150, 40, 20, Quantity.of(18, Unit.MILE));
    }

    SheetBuilder sheet(Visit visit) {
        return new SheetBuilder(this, visit);
    }

    /** What the visit has on the account now. */
    Money balance(AccountRole account, VisitId visit) {
        return Money.sum(
                CurrencyUnit.USD,
                bench.get(ReadBalances.class).ofVisit(account, visit).stream()
                        .map(ReadBalances.VisitBalance::amount)
                        .toList());
    }
}
