package eaveside.web.search;

import eaveside.customers.CustomerHits;
import eaveside.customers.CustomerLine;
import eaveside.customers.FindCustomerHits;
import eaveside.inventory.ReadStock;
import eaveside.invoicing.ReadInvoices;
import eaveside.invoicing.ReadPayments;
import eaveside.kernel.CustomerId;
import eaveside.kernel.Shared;
import eaveside.pricing.ReadQuotes;
import eaveside.visits.ReadVisits;
import eaveside.visits.Visit;
import eaveside.web.Link;
import eaveside.web.Names;
import eaveside.web.View;
import eaveside.web.search.Hits.Group;
import eaveside.web.search.Hits.Hit;
import eaveside.web.search.Hits.Type;
import jakarta.inject.Inject;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Asks each module for a few hits, and those of documents for the newest of the customers that were found. */
@Shared
public class Search {
    /** Of more customers than that, nobody asked for the documents of one. */
    private static final int WHOSE_DOCUMENTS = 3;

    @Inject
    FindCustomerHits findCustomerHits;

    @Inject
    ReadVisits readVisits;

    @Inject
    ReadQuotes readQuotes;

    @Inject
    ReadInvoices readInvoices;

    @Inject
    ReadPayments readPayments;

    @Inject
    ReadStock readStock;

    @Inject
    Names names;

    /** What was typed, in words that the viewer reads; at most so many of each type. */
    Hits find(View view, String typed, int most) {
        Wanted wanted = Wanted.of(typed);
        if (wanted.text().isEmpty()) {
            return new Hits("", List.of(), true);
        }
        CustomerHits people = wanted.is(Type.CUSTOMER)
                ? findCustomerHits.search(wanted.text(), most)
                : new CustomerHits(List.of(), List.of(), List.of(), true);
        List<CustomerId> whose = wanted.number() || people.customers().size() > WHOSE_DOCUMENTS
                ? List.of()
                : people.customers().stream().map(CustomerLine::id).toList();
        Map<Type, List<Hit>> found = new EnumMap<>(Type.class);
        found.put(Type.CUSTOMER, hits(people.customers(), customer -> customer(view, customer)));
        found.put(Type.SITE, hits(people.sites(), Search::site));
        found.put(Type.CONTACT, hits(people.contacts(), Search::contact));
        found.put(Type.VISIT, visits(view, readVisits.newestOf(whose, most)));
        found.put(Type.QUOTE, wanted.is(Type.QUOTE) ? quotes(view, wanted, whose, most) : List.of());
        found.put(Type.INVOICE, wanted.is(Type.INVOICE) ? invoices(view, wanted, whose, most) : List.of());
        found.put(Type.PAYMENT, wanted.is(Type.PAYMENT) ? payments(view, wanted, whose, most) : List.of());
        found.put(Type.ITEM, wanted.is(Type.ITEM) ? items(view, wanted, most) : List.of());
        found.put(Type.LOT, wanted.is(Type.LOT) ? lots(view, wanted, most) : List.of());
        return new Hits(typed.strip(), grouped(wanted, found), people.spelled());
    }

    /** Where a number was typed, documents come before addresses and phones with it. */
    private static List<Group> grouped(Wanted wanted, Map<Type, List<Hit>> found) {
        Comparator<Type> order = Comparator.comparing((Type type) -> wanted.number() && type.compareTo(Type.QUOTE) < 0);
        return Arrays.stream(Type.values())
                .sorted(order.thenComparing(Comparator.naturalOrder()))
                .filter(type -> !found.getOrDefault(type, List.of()).isEmpty())
                .map(type -> new Group(type, found.getOrDefault(type, List.of())))
                .toList();
    }

    private static <T> List<Hit> hits(List<T> found, Function<T, Hit> hit) {
        return found.stream().map(hit).toList();
    }

    private static Hit customer(View view, CustomerLine customer) {
        return new Hit(
                customer.active() ? customer.name() : view.t("search.inactive", customer.name()),
                joined(customer.streetAndCity(), customer.phone()),
                "/customers/" + customer.id());
    }

    private static Hit site(CustomerHits.SiteHit site) {
        return new Hit(
                site.customerName() + ": " + site.name(),
                joined(site.street(), site.city()),
                "/customers/" + site.customer() + "#site-" + site.id());
    }

    private static Hit contact(CustomerHits.ContactHit contact) {
        return new Hit(
                contact.name() + ", " + contact.customerName(),
                joined(contact.phone(), contact.email()),
                "/customers/" + contact.customer());
    }

    private List<Hit> visits(View view, List<Visit.Summary> visits) {
        names.lookUpVisits(visits);
        return hits(
                visits,
                visit -> new Hit(
                        view.t("search.visit", names.customer(visit.customer()), view.shortDate(visit.date())),
                        joined(names.site(visit.site()), view.t("visits.status", visit.status())),
                        "/visits/" + visit.id()));
    }

    private List<Hit> quotes(View view, Wanted wanted, List<CustomerId> whose, int most) {
        return hits(
                wanted.number()
                        ? readQuotes
                                .list(new ReadQuotes.Query(null, null, wanted.text()), null, most)
                                .rows()
                        : readQuotes.newestOf(whose, most),
                quote -> new Hit(
                        view.t("search.quote", String.valueOf(quote.number()), quote.customerName()),
                        joined(
                                view.t("quotes.status", quote.status()),
                                view.shortDate(quote.date()),
                                view.money(quote.total())),
                        "/quotes/" + quote.id()));
    }

    private List<Hit> invoices(View view, Wanted wanted, List<CustomerId> whose, int most) {
        return hits(
                readInvoices.hits(wanted.text(), whose, most),
                invoice -> new Hit(
                        view.t("search.invoice", String.valueOf(invoice.number()), invoice.customerName()),
                        joined(
                                view.shortDate(invoice.date()),
                                invoice.open().isZero()
                                        ? view.money(invoice.gross())
                                        : view.t(
                                                "search.open",
                                                view.money(invoice.gross()),
                                                view.money(invoice.open()))),
                        "/invoices/" + invoice.id()));
    }

    private List<Hit> payments(View view, Wanted wanted, List<CustomerId> whose, int most) {
        return hits(
                readPayments.hits(wanted.text(), whose, most),
                payment -> new Hit(
                        view.t("search.payment", String.valueOf(payment.number()), payment.customerName()),
                        joined(view.shortDate(payment.date()), payment.reference(), view.money(payment.amount())),
                        "/payments/" + payment.id()));
    }

    private List<Hit> items(View view, Wanted wanted, int most) {
        return hits(
                readStock.itemHits(wanted.text(), most),
                item -> new Hit(
                        item.active() ? item.name() : view.t("search.inactive", item.name()),
                        item.code(),
                        "/stock/items/" + item.id()));
    }

    private List<Hit> lots(View view, Wanted wanted, int most) {
        return hits(
                readStock.lotHits(wanted.text(), most),
                lot -> new Hit(
                        lot.label(),
                        joined(names.item(lot.item()), view.t("search.received", view.shortDate(lot.receivedOn()))),
                        new Link("/stock/items/" + lot.item())
                                .with("lot", lot.id())
                                .toString()));
    }

    private static String joined(String... parts) {
        return Stream.of(parts).filter(part -> !part.isBlank()).collect(Collectors.joining(" · "));
    }
}
