package eaveside.visits.internal;

import eaveside.customers.Customer;
import eaveside.customers.CustomersRefusal;
import eaveside.customers.ReadCustomer;
import eaveside.customers.Site;
import eaveside.kernel.CustomerId;
import eaveside.kernel.SiteId;
import eaveside.kernel.VisitLineId;
import eaveside.offerings.Catalogue;
import eaveside.offerings.Offering;
import eaveside.pricing.Quote;
import eaveside.pricing.QuoteStatus;
import eaveside.pricing.ReadQuotes;
import eaveside.visits.BookVisit;
import eaveside.visits.VisitRefusal;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;

/** What a visit may be booked for: turns each way of booking into a plan, or refuses it. */
@Dependent
public class BookingRules {
    private final Visits visits;
    private final VisitQueries queries;
    private final Crews crews;
    private final ReadCustomer readCustomer;
    private final Surroundings surroundings;
    private final ReadQuotes readQuotes;
    private final Catalogue catalogue;

    @Inject
    public BookingRules(
            Visits visits,
            VisitQueries queries,
            Crews crews,
            ReadCustomer readCustomer,
            Surroundings surroundings,
            ReadQuotes readQuotes,
            Catalogue catalogue) {
        this.visits = visits;
        this.queries = queries;
        this.crews = crews;
        this.readCustomer = readCustomer;
        this.surroundings = surroundings;
        this.readQuotes = readQuotes;
        this.catalogue = catalogue;
    }

    public NewVisit plan(BookVisit.Booking booking) {
        crews.requireOnStaff(booking.crew());
        CustomerId customer = requireInUse(booking.customer(), booking.site());
        return new NewVisit(
                booking.id(),
                customer,
                booking.site(),
                null,
                null,
                null,
                booking.date(),
                booking.crew(),
                booking.lines().stream()
                        .map(line -> planned(booking.site(), line))
                        .toList(),
                booking.note(),
                booking.by());
    }

    private NewVisit.Line planned(SiteId site, BookVisit.Line line) {
        Offering offering = catalogue.offering(line.offering());
        if (!offering.active()) {
            throw new VisitRefusal.OfferingDoesNotFit(offering.name(), "is no longer sold");
        }
        surroundings.requireFits(site, line.surface(), offering);
        return new NewVisit.Line(
                line.id(),
                line.offering(),
                offering.serviceLine(),
                line.surface(),
                line.quantity().in(offering.unit()),
                null,
                null);
    }

    /** The id that the site's customer bears there: that of a customer merged into this one, it may be. */
    private CustomerId requireInUse(CustomerId customerId, SiteId siteId) {
        Customer customer = readCustomer.customer(customerId);
        Site site = readCustomer.site(siteId);
        if (!readCustomer.idsOf(customerId).contains(site.customerId())) {
            throw new VisitRefusal.OtherSite("site");
        }
        if (!customer.active()) {
            throw new CustomersRefusal.NotActive(customer.name());
        }
        if (!site.active()) {
            throw new CustomersRefusal.NotActive(site.name());
        }
        return site.customerId();
    }

    public NewVisit plan(BookVisit.FromQuote booking) {
        crews.requireOnStaff(booking.crew());
        Quote quote = readQuotes.quote(booking.quote());
        if (quote.status() != QuoteStatus.AGREED) {
            throw new VisitRefusal.QuoteNotAgreed(quote.number());
        }
        if (!queries.bookedFor(booking.quote().value()).isEmpty()) {
            throw new VisitRefusal.QuoteAlreadyBooked(quote.number());
        }
        return new NewVisit(
                booking.id(),
                quote.customer(),
                quote.site(),
                quote.id(),
                quote.book(),
                null,
                booking.date(),
                booking.crew(),
                quote.lines().stream().map(this::planned).toList(),
                booking.note(),
                booking.by());
    }

    private NewVisit.Line planned(Quote.Line line) {
        return new NewVisit.Line(
                VisitLineId.next(),
                line.offering(),
                line.serviceLine(),
                line.surface(),
                line.quantity().in(catalogue.offering(line.offering()).unit()),
                line.id(),
                null);
    }

    /** The earlier visit is locked, so that two people do not both book the return. */
    public NewVisit plan(BookVisit.Return booking) {
        crews.requireOnStaff(booking.crew());
        VisitRow first = visits.locked(booking.to());
        List<DifferenceRow> skipped = queries.toComeBackForOf(first.sheet().value());
        if (skipped.isEmpty()) {
            throw new VisitRefusal.NothingToComeBackFor();
        }
        Map<VisitLineId, VisitLineRow> lines =
                visits.plannedLines(first).stream().collect(Collectors.toMap(VisitLineRow::id, Function.identity()));
        return new NewVisit(
                booking.id(),
                first.customer(),
                first.site(),
                first.quote(),
                first.priceBook(),
                first.id(),
                booking.date(),
                booking.crew(),
                skipped.stream().map(difference -> again(difference, lines)).toList(),
                booking.note(),
                booking.by());
    }

    private static NewVisit.Line again(DifferenceRow difference, Map<VisitLineId, VisitLineRow> lines) {
        VisitLineRow line = lines.get(difference.line());
        if (line == null) {
            throw new VisitRefusal.NotOnVisit("line", difference.line().toString());
        }
        return new NewVisit.Line(
                VisitLineId.next(),
                line.offering(),
                line.serviceLine(),
                line.surface(),
                difference.quantity(),
                line.quoteLine(),
                difference.id());
    }
}
