package eaveside.web.quotes;

import eaveside.access.Role;
import eaveside.customers.Customer;
import eaveside.customers.FindCustomers;
import eaveside.customers.ReadCustomer;
import eaveside.customers.Site;
import eaveside.kernel.CustomerId;
import eaveside.kernel.SiteId;
import eaveside.kernel.Slice;
import eaveside.pricing.QuoteStatus;
import eaveside.pricing.ReadQuotes;
import eaveside.pricing.ReadQuotes.Summary;
import eaveside.web.Csv;
import eaveside.web.Page;
import eaveside.web.View;
import eaveside.web.forms.Fields;
import eaveside.web.security.For;
import eaveside.web.security.Viewer;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The list of quotes. */
@Path("/quotes")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For({Role.OWNER, Role.OFFICE})
public class QuotesResource {
    private static final int PAGE = 50;
    private static final int EXPORT = 20_000;

    /** How many customers a search looks at; whoever types more finds fewer. */
    private static final int CUSTOMERS = 8;

    private final ReadQuotes readQuotes;
    private final ReadCustomer readCustomer;
    private final FindCustomers findCustomers;
    private final Viewer viewer;

    @Context
    UriInfo uri;

    @Inject
    public QuotesResource(
            ReadQuotes readQuotes, ReadCustomer readCustomer, FindCustomers findCustomers, Viewer viewer) {
        this.readQuotes = readQuotes;
        this.readCustomer = readCustomer;
        this.findCustomers = findCustomers;
        this.viewer = viewer;
    }

    /** What the address asks for; nothing of it narrows the list where it is absent. */
    private record Filter(
            @Nullable QuoteStatus status,
            @Nullable CustomerId customer,
            String words,
            @Nullable String after) {
        boolean admits(Summary quote) {
            return status == null || quote.status() == status;
        }
    }

    /** A quote in the list. */
    public record Row(Summary quote, String customer, String site) {
        public boolean isExpired(View view) {
            return quote.status().isOpen() && quote.validUntil().isBefore(view.today());
        }
    }

    /**
     * @param  customer whose quotes are shown; null for everybody's
     * @param  more     the address of the next page
     */
    public record QuotesPage(
            Fields fields,
            @Nullable Customer customer,
            List<Row> rows,
            String query,
            @Nullable String more) implements Page {
        @Override
        public String template() {
            return "quotes/quotes.jte";
        }

        public QuoteStatus[] statuses() {
            return QuoteStatus.values();
        }

        /** The address of the list with another status, the other filters kept. */
        public String with(String status) {
            StringBuilder address = new StringBuilder("/quotes?status=").append(status);
            if (customer != null) {
                address.append("&customer=").append(customer.id());
            }
            if (!fields.typed("q").isEmpty()) {
                address.append("&q=").append(URLEncoder.encode(fields.typed("q"), StandardCharsets.UTF_8));
            }
            return address.toString();
        }
    }

    @GET
    @Transactional
    public QuotesPage quotes() {
        Fields fields = viewer.fields(uri.getQueryParameters());
        Filter filter = filter(fields);
        Slice<Summary> quotes = read(filter, PAGE);
        String query = uri.getRequestUri().getRawQuery();
        return new QuotesPage(
                fields,
                filter.customer() == null ? null : readCustomer.customer(filter.customer()),
                rows(quotes.rows()),
                query == null ? "" : "?" + query,
                quotes.next() == null
                        ? null
                        : uri.getRequestUriBuilder()
                                .replaceQueryParam("after", quotes.next())
                                .build()
                                .toString());
    }

    @GET
    @Path("list.csv")
    @Produces("text/csv")
    @Transactional
    public Response csv() {
        View view = viewer.view();
        Filter filter = filter(viewer.fields(uri.getQueryParameters()));
        Filter whole = new Filter(filter.status(), filter.customer(), filter.words(), null);
        return Csv.download(
                "quotes",
                List.of("number", "made on", "customer", "site", "status", "valid until", "total"),
                rows(read(whole, EXPORT).rows()).stream()
                        .map(row -> List.of(
                                String.valueOf(row.quote().number()),
                                row.quote().draftedOn().toString(),
                                row.customer(),
                                row.site(),
                                view.t("quotes.status", row.quote().status()),
                                row.quote().validUntil().toString(),
                                row.quote().total().amount().toPlainString()))
                        .toList());
    }

    private static Filter filter(Fields fields) {
        String status = fields.typed("status").toUpperCase(Locale.ROOT);
        String customer = fields.typed("customer");
        return new Filter(
                Arrays.stream(QuoteStatus.values())
                        .filter(s -> s.name().equals(status))
                        .findFirst()
                        .orElse(null),
                customer.isEmpty() ? null : CustomerId.of(customer),
                fields.optional("q"),
                fields.typed("after").isEmpty() ? null : fields.typed("after"));
    }

    private Slice<Summary> read(Filter filter, int size) {
        if (filter.words().matches("\\d{1,9}")) {
            long number = Long.parseLong(filter.words());
            return new Slice<>(
                    readQuotes.list(null, String.valueOf(number + 1), 1).rows().stream()
                            .filter(quote -> quote.number() == number)
                            .filter(filter::admits)
                            .toList(),
                    null);
        }
        if (filter.customer() != null) {
            return ofCustomer(filter.customer(), filter, size);
        }
        if (filter.words().isEmpty()) {
            return readQuotes.list(filter.status(), filter.after(), size);
        }
        List<Summary> found = new ArrayList<>();
        for (var customer :
                findCustomers.find(filter.words(), false, null, CUSTOMERS).rows()) {
            found.addAll(ofCustomer(customer.id(), filter, size).rows());
        }
        found.sort(Comparator.comparing(Summary::number).reversed());
        return new Slice<>(found.subList(0, Math.min(size, found.size())), null);
    }

    /** One customer's are few: those of another status are left out while paging through them. */
    private Slice<Summary> ofCustomer(CustomerId customer, Filter filter, int size) {
        List<Summary> found = new ArrayList<>();
        String after = filter.after();
        do {
            Slice<Summary> read = readQuotes.ofCustomer(customer, after, size);
            read.rows().stream().filter(filter::admits).forEach(found::add);
            after = read.next();
        } while (after != null && found.size() <= size);
        return Slice.of(
                found.size() > size + 1 ? found.subList(0, size + 1) : found,
                size,
                quote -> String.valueOf(quote.number()));
    }

    private List<Row> rows(List<Summary> quotes) {
        Map<CustomerId, Customer> customers = readCustomer.customers(
                quotes.stream().map(Summary::customer).distinct().toList());
        Map<SiteId, Site> sites =
                readCustomer.sites(quotes.stream().map(Summary::site).distinct().toList());
        return quotes.stream()
                .map(quote -> {
                    Customer customer = customers.get(quote.customer());
                    Site site = sites.get(quote.site());
                    return new Row(quote, customer == null ? "" : customer.name(), site == null ? "" : site.name());
                })
                .toList();
    }
}
