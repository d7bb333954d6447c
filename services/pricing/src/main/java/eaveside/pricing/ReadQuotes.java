package eaveside.pricing;

import eaveside.customers.ReadCustomer;
import eaveside.kernel.CustomerId;
import eaveside.kernel.FindingId;
import eaveside.kernel.Money;
import eaveside.kernel.QuoteId;
import eaveside.kernel.SiteId;
import eaveside.kernel.Slice;
import eaveside.ledger.Books;
import eaveside.pricing.internal.PricingQueries;
import eaveside.pricing.internal.QuoteRow;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Finds quotes. Lists page by number. */
@Dependent
public class ReadQuotes {
    private static final Set<QuoteStatus> OPEN = EnumSet.of(QuoteStatus.DRAFT, QuoteStatus.SENT);

    private final EntityManager entities;
    private final PricingQueries queries;
    private final ReadCustomer readCustomer;
    private final Books books;

    @Inject
    public ReadQuotes(EntityManager entities, PricingQueries queries, ReadCustomer readCustomer, Books books) {
        this.entities = entities;
        this.queries = queries;
        this.readCustomer = readCustomer;
        this.books = books;
    }

    /** A quote in a list. */
    public record Summary(
            QuoteId id,
            long number,
            QuoteStatus status,
            CustomerId customer,
            SiteId site,
            LocalDate draftedOn,
            LocalDate validUntil,
            @Nullable FindingId cameFrom,
            Money total) {}

    /** Refuses an unknown id. */
    @Transactional
    public Quote quote(QuoteId id) {
        QuoteRow row = entities.find(QuoteRow.class, id.value());
        if (row == null) {
            throw new PricingRefusal.NoSuchQuote(id.toString());
        }
        return row.toQuote(books.currency(), queries.linesOf(id.value()));
    }

    /** The newest first; of one status where one is named. */
    @Transactional
    public Slice<Summary> list(@Nullable QuoteStatus status, @Nullable String after, int size) {
        Set<QuoteStatus> statuses = status == null ? EnumSet.allOf(QuoteStatus.class) : EnumSet.of(status);
        return slice(queries.quotesBelow(below(after), statuses, size + 1), size);
    }

    /** A customer's, the newest first. */
    @Transactional
    public Slice<Summary> ofCustomer(CustomerId customer, @Nullable String after, int size) {
        return slice(
                queries.quotesOfCustomers(
                        readCustomer.idsOf(customer).stream()
                                .map(CustomerId::value)
                                .toList(),
                        below(after),
                        size + 1),
                size);
    }

    /** Drafts and offered quotes, the oldest first: what waits for an answer. */
    @Transactional
    public Slice<Summary> open(@Nullable String after, int size) {
        long above = after == null ? 0 : Keys.number(after);
        return slice(queries.quotesAbove(above, OPEN, size + 1), size);
    }

    /** How many drafts and offered quotes there are. */
    @Transactional
    public long countOpen() {
        return queries.quotesIn(OPEN);
    }

    /** The quotes that answer a finding. */
    @Transactional
    public List<Summary> from(FindingId finding) {
        return queries.quotesFrom(finding.value()).stream()
                .map(row -> row.toSummary(books.currency()))
                .toList();
    }

    private static long below(@Nullable String after) {
        return after == null ? Long.MAX_VALUE : Keys.number(after);
    }

    private Slice<Summary> slice(List<QuoteRow> read, int size) {
        List<Summary> rows =
                read.stream().map(row -> row.toSummary(books.currency())).toList();
        return Slice.of(rows, size, row -> String.valueOf(row.number()));
    }
}
