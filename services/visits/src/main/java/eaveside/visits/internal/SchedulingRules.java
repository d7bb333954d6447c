package eaveside.visits.internal;

import eaveside.catalog.Catalog;
import eaveside.catalog.ServiceItem;
import eaveside.catalog.StandardMinutes;
import eaveside.customers.Customer;
import eaveside.customers.ReadCustomer;
import eaveside.customers.Site;
import eaveside.kernel.CustomerId;
import eaveside.kernel.Elements;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.QuoteId;
import eaveside.kernel.Shared;
import eaveside.kernel.SiteId;
import eaveside.kernel.VisitId;
import eaveside.kernel.VisitLineId;
import eaveside.ledger.Books;
import eaveside.pricing.Quote;
import eaveside.pricing.QuoteStatus;
import eaveside.pricing.ReadQuotes;
import eaveside.visits.ScheduledLine;
import eaveside.visits.Scheduling;
import eaveside.visits.VisitRefusal;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** What a visit may be scheduled for: turns each way of scheduling into a plan, or refuses it. */
@Shared
public class SchedulingRules {
    private final Visits visits;
    private final VisitQueries queries;
    private final Crews crews;
    private final ReadCustomer readCustomer;
    private final Surroundings surroundings;
    private final ReadQuotes readQuotes;
    private final Catalog catalog;
    private final Books books;

    @Inject
    public SchedulingRules(
            Visits visits,
            VisitQueries queries,
            Crews crews,
            ReadCustomer readCustomer,
            Surroundings surroundings,
            ReadQuotes readQuotes,
            Catalog catalog,
            Books books) {
        this.visits = visits;
        this.queries = queries;
        this.crews = crews;
        this.readCustomer = readCustomer;
        this.surroundings = surroundings;
        this.readQuotes = readQuotes;
        this.catalog = catalog;
        this.books = books;
    }

    /** The visit that comes of it, or a refusal. */
    public NewVisit plan(Scheduling scheduling) {
        books.near(scheduling.date(), "date");
        crews.requireOnStaff(scheduling.crew());
        if (scheduling.quote() != null) {
            return fromQuote(scheduling, scheduling.quote());
        }
        if (scheduling.returnsTo() != null) {
            return returning(scheduling, scheduling.returnsTo());
        }
        return free(scheduling, Objects.requireNonNull(scheduling.site(), "a scheduling without a quote has a site"));
    }

    private NewVisit free(Scheduling scheduling, SiteId site) {
        CustomerId customer = requireActive(scheduling.customer(), site);
        List<NewVisit.Line> lines = new ArrayList<>();
        List<StandardMinutes> minutes = new ArrayList<>();
        Elements.each("lines", scheduling.lines(), (line, i) -> {
            ServiceItem serviceItem = catalog.serviceItem(line.serviceItem());
            lines.add(planned(site, line, serviceItem));
            minutes.add(serviceItem.minutesFor(line.quantity()));
        });
        StandardMinutes.requireOneVisit(StandardMinutes.ZERO, "lines", minutes);
        return new NewVisit(
                scheduling.id(),
                customer,
                site,
                null,
                null,
                null,
                scheduling.date(),
                scheduling.crew(),
                lines,
                scheduling.note(),
                scheduling.by());
    }

    private NewVisit.Line planned(SiteId site, ScheduledLine line, ServiceItem serviceItem) {
        if (!serviceItem.active()) {
            throw new KernelRefusal.NotActive("service", serviceItem.name(), "serviceItem");
        }
        surroundings.requireFits(site, line.surface(), serviceItem);
        return new NewVisit.Line(
                line.id(),
                line.serviceItem(),
                serviceItem.serviceLine(),
                line.surface(),
                line.quantity().in(serviceItem.unit(), "quantity"),
                null,
                null);
    }

    /** The id that the site's customer bears there: that of a customer merged into this one, it may be. */
    private CustomerId requireActive(@Nullable CustomerId named, SiteId siteId) {
        Site site = readCustomer.site(siteId);
        CustomerId customerId = named == null ? site.customer() : named;
        Customer customer = readCustomer.customer(customerId);
        if (!readCustomer.idsOf(customerId).contains(site.customer())) {
            throw new VisitRefusal.OtherSite("site");
        }
        if (!customer.active()) {
            throw new KernelRefusal.NotActive("customer", customer.name(), "customer");
        }
        if (!site.active()) {
            throw new KernelRefusal.NotActive("site", site.name(), "site");
        }
        return site.customer();
    }

    private NewVisit fromQuote(Scheduling scheduling, QuoteId id) {
        Quote quote = readQuotes.quote(id);
        if (quote.status() != QuoteStatus.ACCEPTED) {
            throw new VisitRefusal.QuoteNotAccepted(quote.number());
        }
        if (!queries.scheduledFor(id).isEmpty()) {
            throw new VisitRefusal.QuoteAlreadyScheduled(quote.number());
        }
        return new NewVisit(
                scheduling.id(),
                quote.customer(),
                quote.site(),
                quote.id(),
                quote.book(),
                null,
                scheduling.date(),
                scheduling.crew(),
                quote.lines().stream().map(this::planned).toList(),
                scheduling.note(),
                scheduling.by());
    }

    private NewVisit.Line planned(Quote.Line line) {
        return new NewVisit.Line(
                VisitLineId.next(),
                line.serviceItem(),
                line.serviceLine(),
                line.surface(),
                line.quantity().in(catalog.serviceItem(line.serviceItem()).unit()),
                line.id(),
                null);
    }

    /** The earlier visit is locked, so that two users do not both schedule the return visit. */
    private NewVisit returning(Scheduling scheduling, VisitId to) {
        VisitRow first = visits.locked(to);
        List<ScopeChangeRow> skipped = queries.awaitingReturnVisitOf(first.sheet("returnsTo"));
        if (skipped.isEmpty()) {
            throw new VisitRefusal.NothingToReturnFor();
        }
        Map<VisitLineId, VisitLineRow> lines =
                visits.plannedLines(first).stream().collect(Collectors.toMap(VisitLineRow::id, Function.identity()));
        return new NewVisit(
                scheduling.id(),
                first.customer(),
                first.site(),
                first.quote(),
                first.priceBook(),
                first.id(),
                scheduling.date(),
                scheduling.crew(),
                skipped.stream().map(scopeChange -> again(scopeChange, lines)).toList(),
                scheduling.note(),
                scheduling.by());
    }

    private static NewVisit.Line again(ScopeChangeRow scopeChange, Map<VisitLineId, VisitLineRow> lines) {
        VisitLineRow line = lines.get(scopeChange.line());
        if (line == null) {
            throw new VisitRefusal.NotOnVisit("line", scopeChange.line().toString());
        }
        return new NewVisit.Line(
                VisitLineId.next(),
                line.serviceItem(),
                line.serviceLine(),
                line.surface(),
                scopeChange.quantity(),
                line.quoteLine(),
                scopeChange.id());
    }
}
