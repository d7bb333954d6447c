package eaveside.pricing;

import eaveside.customers.CustomerLine;
import eaveside.customers.FindCustomers;
import eaveside.customers.ReadCustomer;
import eaveside.kernel.CustomerId;
import eaveside.kernel.FindingId;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.PageKey;
import eaveside.kernel.QuoteId;
import eaveside.kernel.Shared;
import eaveside.kernel.SiteId;
import eaveside.kernel.Slice;
import eaveside.ledger.Books;
import eaveside.pricing.internal.PricingQueries;
import eaveside.pricing.internal.QuoteRow;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.util.Collection;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Finds quotes. Lists page by number. */
@Shared
public class ReadQuotes {
    private static final Set<QuoteStatus> OPEN = EnumSet.of(QuoteStatus.DRAFT, QuoteStatus.SENT);

    private static final Set<QuoteStatus> ALL = EnumSet.allOf(QuoteStatus.class);

    /** How many customers a search looks at; whoever types more finds fewer. */
    private static final int CUSTOMERS = 8;

    private final EntityManager entities;
    private final PricingQueries queries;
    private final ReadCustomer readCustomer;
    private final FindCustomers findCustomers;
    private final Books books;

    @Inject
    public ReadQuotes(
            EntityManager entities,
            PricingQueries queries,
            ReadCustomer readCustomer,
            FindCustomers findCustomers,
            Books books) {
        this.entities = entities;
        this.queries = queries;
        this.readCustomer = readCustomer;
        this.findCustomers = findCustomers;
        this.books = books;
    }

    /**
     * What a list asks for; nothing of it narrows the list where it is absent.
     *
     * @param  search a quote's number, or words of a customer's name, address or reach; may be empty
     */
    public record Query(
            @Nullable QuoteStatus status, @Nullable CustomerId customer, String search) {
        public static final Query EVERY = new Query(null, null, "");
    }

    /** Refuses an unknown id. */
    @Transactional
    public Quote quote(QuoteId id) {
        return find(id).orElseThrow(() -> new KernelRefusal.NotFound("quote", id));
    }

    @Transactional
    public Optional<Quote> find(QuoteId id) {
        return Optional.ofNullable(entities.find(QuoteRow.class, id.value()))
                .map(row -> row.toQuote(books.currency(), queries.linesOf(id)));
    }

    /** The newest first. */
    @Transactional
    public Slice<QuoteSummary> list(Query query, @Nullable String after, int size) {
        Set<QuoteStatus> statuses = query.status() == null ? ALL : EnumSet.of(query.status());
        long below = PageKey.beforeNumber(after);
        String search = query.search().strip();
        if (search.matches("\\d{1,9}")) {
            List<QuoteRow> numbered = queries.quotesNumbered(Long.parseLong(search), below, statuses, size + 1);
            return slice(numbered.stream().filter(row -> isOf(query, row)).toList(), size);
        }
        List<CustomerId> customers = customers(query, search);
        return slice(
                customers == null
                        ? queries.quotesBelow(below, statuses, size + 1)
                        : queries.quotesOfCustomers(customers, below, statuses, size + 1),
                size);
    }

    private boolean isOf(Query query, QuoteRow row) {
        return query.customer() == null || readCustomer.idsOf(query.customer()).contains(row.customer());
    }

    /** Whose quotes are listed; null for everybody's. */
    private @Nullable List<CustomerId> customers(Query query, String search) {
        if (query.customer() != null) {
            return readCustomer.idsOf(query.customer());
        }
        if (search.isEmpty()) {
            return null;
        }
        List<CustomerId> found = findCustomers.find(search, false, null, CUSTOMERS).rows().stream()
                .map(CustomerLine::id)
                .toList();
        return found.isEmpty() ? List.of() : readCustomer.idsOf(found);
    }

    /** The newest quotes of a few customers, for a search; at most so many. */
    @Transactional
    public List<QuoteSummary> newestOf(Collection<CustomerId> customers, int most) {
        return customers.isEmpty()
                ? List.of()
                : summaries(queries.quotesOfCustomers(
                        readCustomer.idsOf(customers), PageKey.beforeNumber(null), ALL, most));
    }

    /** The quotes that answer a finding. */
    @Transactional
    public List<QuoteSummary> from(FindingId finding) {
        return summaries(queries.quotesFrom(finding));
    }

    private Slice<QuoteSummary> slice(List<QuoteRow> read, int size) {
        return Slice.of(summaries(read), size, row -> String.valueOf(row.number()));
    }

    private List<QuoteSummary> summaries(List<QuoteRow> rows) {
        Map<CustomerId, String> customers = readCustomer.customerNames(
                rows.stream().map(QuoteRow::customer).distinct().toList());
        Map<SiteId, String> sites = readCustomer.siteNames(
                rows.stream().map(QuoteRow::site).distinct().toList());
        return rows.stream()
                .map(row -> row.toSummary(
                        books.currency(),
                        customers.getOrDefault(row.customer(), ""),
                        sites.getOrDefault(row.site(), "")))
                .toList();
    }
}
