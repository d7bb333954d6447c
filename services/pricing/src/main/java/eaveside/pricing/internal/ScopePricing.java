package eaveside.pricing.internal;

import eaveside.catalog.Catalog;
import eaveside.catalog.CatalogRefusal;
import eaveside.catalog.ServiceItem;
import eaveside.catalog.StandardMinutes;
import eaveside.customers.ReadCustomer;
import eaveside.customers.ReadSurfaces;
import eaveside.customers.Surface;
import eaveside.customers.SurfaceAttribute;
import eaveside.kernel.CustomerId;
import eaveside.kernel.Elements;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Money;
import eaveside.kernel.Shared;
import eaveside.kernel.SiteId;
import eaveside.ledger.Books;
import eaveside.pricing.PriceBook;
import eaveside.pricing.PricedWork;
import eaveside.pricing.PricingRefusal;
import eaveside.pricing.Quote;
import eaveside.pricing.QuoteScope;
import eaveside.pricing.WorkLine;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Prices a quote's scope: what each line costs the customer, and what it is expected to cost the company. */
@Shared
public class ScopePricing {
    private final ReadCustomer customers;
    private final ReadSurfaces surfaces;
    private final Catalog catalog;
    private final ExpectedCosts expectedCosts;
    private final Books books;

    @Inject
    public ScopePricing(
            ReadCustomer customers, ReadSurfaces surfaces, Catalog catalog, ExpectedCosts expectedCosts, Books books) {
        this.customers = customers;
        this.surfaces = surfaces;
        this.catalog = catalog;
        this.expectedCosts = expectedCosts;
        this.books = books;
    }

    /**
     * The id that the customer bears at the site: that of a customer who was merged into this one, it may be. Refuses a
     * site of another customer.
     */
    public CustomerId requireSite(CustomerId customer, SiteId site) {
        customers.customer(customer);
        CustomerId there = customers.site(site).customer();
        if (!customers.idsOf(customer).contains(there)) {
            throw new PricingRefusal.Elsewhere("site", "The site belongs to another customer");
        }
        return there;
    }

    /** Its fields are told as those of {@code scope}, which is what each command calls it. */
    public PricedScope price(PriceBook book, SiteId site, QuoteScope scope) {
        return Elements.inside("scope", scope, () -> priced(book, site, scope));
    }

    private PricedScope priced(PriceBook book, SiteId site, QuoteScope scope) {
        LocalDate today = books.today();
        if (scope.validUntil().isBefore(today)) {
            throw new KernelRefusal.TooEarly("validUntil", scope.validUntil(), today);
        }
        books.near(scope.validUntil(), "validUntil");
        List<ServiceItem> serviceItems = new ArrayList<>();
        List<WorkLine> work = new ArrayList<>();
        Elements.each("lines", scope.lines(), (line, i) -> {
            ServiceItem serviceItem = catalog.serviceItem(line.serviceItem());
            Map<SurfaceAttribute, Integer> attributes = attributes(line, serviceItem, site);
            requireSold(serviceItem, line, book);
            serviceItems.add(serviceItem);
            work.add(new WorkLine(line.id(), line.serviceItem(), line.quantity(), attributes, null));
        });
        PricedWork priced = PricingEngine.price(
                        book.list(), work, id -> catalog.serviceItem(id).serviceLine())
                .held();
        return assembled(book, scope, priced, expectedCosts.of(today, scope, serviceItems));
    }

    private Map<SurfaceAttribute, Integer> attributes(QuoteScope.Line line, ServiceItem serviceItem, SiteId site) {
        if (line.surface() == null) {
            return Map.of();
        }
        Surface surface = surfaces.surface(line.surface());
        if (!surface.site().equals(site) || !surface.active()) {
            throw new PricingRefusal.Elsewhere(
                    "surface", "'" + surface.name() + "' is not an active surface of this site");
        }
        if (serviceItem.surfaceType() != null && serviceItem.surfaceType() != surface.type()) {
            throw new CatalogRefusal.ServiceItemDoesNotFit(
                    serviceItem.name(), "is not done on '" + surface.name() + "'");
        }
        return surface.attributes();
    }

    private static void requireSold(ServiceItem serviceItem, QuoteScope.Line line, PriceBook book) {
        if (!serviceItem.active()) {
            throw new KernelRefusal.NotActive("service", serviceItem.name(), "serviceItem");
        }
        if (!line.quantity().unit().isLike(serviceItem.unit())) {
            throw new CatalogRefusal.ServiceItemDoesNotFit(
                    serviceItem.name(), "is counted in " + serviceItem.unit().code(), "quantity");
        }
        book.list().requirePriceOf(serviceItem);
    }

    private static PricedScope assembled(
            PriceBook book, QuoteScope scope, PricedWork priced, List<ExpectedCosts.Expected> expected) {
        List<Quote.Line> lines = new ArrayList<>();
        StandardMinutes minutes = StandardMinutes.ZERO;
        for (int i = 0; i < priced.lines().size(); i++) {
            PricedWork.Line line = priced.lines().get(i);
            QuoteScope.Line asked = scope.lines().get(i);
            lines.add(new Quote.Line(
                    asked.id(),
                    line.serviceItem(),
                    line.serviceLine(),
                    asked.surface(),
                    line.quantity(),
                    line.unitPrice(),
                    line.netBeforeTopUp(),
                    line.topUp(),
                    line.net(),
                    line.explanation(),
                    expected.get(i).minutes(),
                    expected.get(i).cost()));
            minutes = minutes.plus(expected.get(i).minutes());
        }
        return new PricedScope(book.id(), scope, lines, priced.total(), minutes, total(lines, priced.total()));
    }

    /** Null where the cost of a line is not known. */
    private static @Nullable Money total(List<Quote.Line> lines, Money like) {
        Money total = Money.zero(like.currency());
        for (Quote.Line line : lines) {
            Optional<Money> cost = Optional.ofNullable(line.expectedCost());
            if (cost.isEmpty()) {
                return null;
            }
            total = total.plus(cost.get());
        }
        return total;
    }
}
