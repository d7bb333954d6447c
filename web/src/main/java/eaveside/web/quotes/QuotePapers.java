package eaveside.web.quotes;

import eaveside.catalog.Catalog;
import eaveside.catalog.ServiceItem;
import eaveside.customers.Address;
import eaveside.customers.Customer;
import eaveside.customers.ReadCustomer;
import eaveside.customers.ReadSurfaces;
import eaveside.customers.Site;
import eaveside.customers.Surface;
import eaveside.kernel.SurfaceId;
import eaveside.pricing.ExplanationText;
import eaveside.pricing.Quote;
import eaveside.reports.QuotePaper;
import eaveside.web.Names;
import eaveside.web.View;
import eaveside.web.papers.Letterheads;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;

/** A quote as the paper that the customer gets. */
@Dependent
class QuotePapers {
    private final Letterheads letterheads;
    private final ReadCustomer readCustomer;
    private final ReadSurfaces readSurfaces;
    private final Catalog catalog;
    private final Names names;

    @Inject
    QuotePapers(
            Letterheads letterheads,
            ReadCustomer readCustomer,
            ReadSurfaces readSurfaces,
            Catalog catalog,
            Names names) {
        this.letterheads = letterheads;
        this.readCustomer = readCustomer;
        this.readSurfaces = readSurfaces;
        this.catalog = catalog;
        this.names = names;
    }

    QuotePaper paper(Quote quote, View view) {
        Customer customer = readCustomer.customer(quote.customer());
        Site site = readCustomer.site(quote.site());
        Map<SurfaceId, Surface> surfaces = readSurfaces.surfaces(quote.lines().stream()
                .map(Quote.Line::surface)
                .filter(Objects::nonNull)
                .distinct()
                .toList());
        List<QuotePaper.Line> lines = new ArrayList<>();
        for (Quote.Line line : quote.lines()) {
            ServiceItem serviceItem = catalog.serviceItem(line.serviceItem());
            Surface surface = line.surface() == null ? null : surfaces.get(line.surface());
            lines.add(new QuotePaper.Line(
                    names.line(line.serviceLine()),
                    surface == null
                            ? serviceItem.name()
                            : view.t("quotes.paper.line", serviceItem.name(), surface.name()),
                    ExplanationText.of(line.explanation(), view.locale()),
                    line.quantity(),
                    line.unitPrice(),
                    line.net()));
        }
        return new QuotePaper(
                letterheads.current(),
                String.valueOf(quote.number()),
                quote.draftedOn(),
                quote.validUntil(),
                lines(customer.name(), customer.address()),
                lines(site.name(), site.address()),
                lines,
                quote.total(),
                view.t("quotes.paper.tax"),
                view.t("quotes.paper.terms", view.date(quote.validUntil())),
                quote.note(),
                view.t("quotes.paper.cautions"));
    }

    private static List<String> lines(String name, Address address) {
        String town = Stream.of(address.city(), address.region(), address.zipCode())
                .filter(part -> !part.isEmpty())
                .reduce((one, other) -> one + " " + other)
                .orElse("");
        return List.of(name, address.street(), town);
    }
}
