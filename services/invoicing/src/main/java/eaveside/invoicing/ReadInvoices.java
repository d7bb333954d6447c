package eaveside.invoicing;

import eaveside.customers.CustomerLine;
import eaveside.customers.FindCustomers;
import eaveside.customers.ReadCustomer;
import eaveside.invoicing.internal.DraftRow;
import eaveside.invoicing.internal.Drafts;
import eaveside.invoicing.internal.InvoiceRow;
import eaveside.invoicing.internal.Invoices;
import eaveside.invoicing.internal.InvoicingQueries;
import eaveside.kernel.CustomerId;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.Money;
import eaveside.kernel.PageKey;
import eaveside.kernel.Shared;
import eaveside.kernel.Slice;
import eaveside.kernel.Texts;
import eaveside.kernel.VisitId;
import eaveside.ledger.Books;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.hibernate.query.Page;
import org.joda.money.CurrencyUnit;
import org.jspecify.annotations.Nullable;

/** Reads drafts and invoices: one whole, lists that page by key, what is outstanding. */
@Shared
public class ReadInvoices {
    /** The least that can be open, in any currency's smallest unit. */
    private static final BigDecimal SOMETHING = new BigDecimal("0.001");

    /** Customers whose names match a search and whose invoices are then looked through. */
    private static final int MOST_CUSTOMERS = 100;

    /** Past the digits of any invoice number. */
    private static final int LONGEST_NUMBER = 18;

    private static final LocalDate LAST_DAY = LocalDate.of(9999, 12, 31);

    private final Drafts drafts;
    private final Invoices invoices;
    private final InvoicingQueries queries;
    private final FindCustomers findCustomers;
    private final ReadCustomer readCustomer;
    private final Books books;

    @Inject
    public ReadInvoices(
            Drafts drafts,
            Invoices invoices,
            InvoicingQueries queries,
            FindCustomers findCustomers,
            ReadCustomer readCustomer,
            Books books) {
        this.drafts = drafts;
        this.invoices = invoices;
        this.queries = queries;
        this.findCustomers = findCustomers;
        this.readCustomer = readCustomer;
        this.books = books;
    }

    /**
     * A draft in a list.
     *
     * @param  gross as it was reckoned when the draft was last written
     */
    public record DraftListed(
            InvoiceId id,
            int version,
            CustomerId customer,
            String customerName,
            @Nullable VisitId visit,
            LocalDate serviceDate,
            Money gross) {}

    /** Refuses an unknown id, and one that has been issued. */
    @Transactional
    public InvoiceDraft draft(InvoiceId id) {
        return drafts.load(id);
    }

    /** The draft of that id; empty where there is none, be it because it has been issued. */
    @Transactional
    public Optional<InvoiceDraft> draftIfThere(InvoiceId id) {
        return drafts.loadIfThere(id);
    }

    /** Newest first. */
    @Transactional
    public Slice<DraftListed> drafts(@Nullable String after, int size) {
        CurrencyUnit currency = books.currency();
        List<DraftRow> read = queries.draftsBefore(PageKey.beforeId(after), Page.first(size + 1));
        Map<CustomerId, String> customers =
                readCustomer.customerNames(read.stream().map(DraftRow::customer).collect(Collectors.toSet()));
        return Slice.of(read, size, row -> row.id().toString())
                .map(row -> new DraftListed(
                        row.id(),
                        row.version(),
                        row.customer(),
                        Objects.requireNonNull(customers.get(row.customer())),
                        row.visit(),
                        row.serviceDate(),
                        row.gross(currency)));
    }

    /** How many drafts, and what they come to with tax. */
    public record DraftsInAll(long drafts, Money gross) {}

    /** The drafts of work done by the day. */
    @Transactional
    public DraftsInAll draftsBy(LocalDate day) {
        InvoicingQueries.DraftsInAll all = queries.draftsBy(day);
        return new DraftsInAll(all.drafts(), books.money(all.gross()));
    }

    /** Refuses an unknown id. */
    @Transactional
    public IssuedInvoice invoice(InvoiceId id) {
        return invoices.load(id);
    }

    /**
     * Invoices, the newest first; all that are outstanding or past due, the one that is due first at first.
     *
     * @param  search   an invoice's number, or words of customers (as {@link FindCustomers} finds them); empty for all
     * @param  customer whose invoices alone; null for everyone's
     */
    @Transactional
    public Slice<InvoiceSummary> find(
            String search, Which which, @Nullable CustomerId customer, @Nullable String after, int size) {
        String text = search.strip();
        LocalDate dueUntil = which == Which.PAST_DUE ? books.today().minusDays(1) : LAST_DAY;
        if (text.isEmpty() && customer == null && which != Which.ALL) {
            return dueBy(dueUntil, after, size);
        }
        long before = PageKey.beforeNumber(after);
        if (text.isEmpty() && customer == null) {
            return listed(queries.invoicesBefore(before, Page.first(size + 1)), size);
        }
        List<CustomerId> of = customer == null ? List.of() : readCustomer.idsOf(customer);
        if (isNumber(text)) {
            List<InvoiceRow> numbered = queries.invoicesNumbered(Long.parseLong(text)).stream()
                    .filter(row -> which == Which.ALL || row.isOutstanding(dueUntil))
                    .filter(row -> customer == null || of.contains(row.customer()))
                    .toList();
            if (!numbered.isEmpty()) {
                return listed(numbered, size);
            }
        }
        List<CustomerId> found = text.isEmpty() ? of : named(text);
        List<CustomerId> customers =
                customer == null ? found : found.stream().filter(of::contains).toList();
        return listed(ofCustomers(customers, which, dueUntil, before, size + 1), size);
    }

    private List<CustomerId> named(String text) {
        return readCustomer.idsOf(findCustomers.find(text, false, null, MOST_CUSTOMERS).rows().stream()
                .map(CustomerLine::id)
                .toList());
    }

    /**
     * A few invoices for a search: that of the number, those whose reference begins so, and the newest of the customers.
     *
     * @param  text as it was typed
     */
    @Transactional
    public List<InvoiceSummary> hits(String text, Collection<CustomerId> customers, int most) {
        CurrencyUnit currency = books.currency();
        LocalDate today = books.today();
        Stream<InvoiceRow> numbered =
                isNumber(text) ? queries.invoicesNumbered(Long.parseLong(text)).stream() : Stream.of();
        Stream<InvoiceRow> referred = queries.invoicesReferred(Texts.beginning(text), Page.first(most)).stream();
        Stream<InvoiceRow> theirs =
                ofCustomers(readCustomer.idsOf(customers), Which.ALL, LAST_DAY, PageKey.beforeNumber(null), most)
                        .stream();
        return Stream.of(numbered, referred, theirs)
                .flatMap(Function.identity())
                .map(row -> row.toRow(currency, today))
                .distinct()
                .limit(most)
                .toList();
    }

    private static boolean isNumber(String text) {
        return text.length() <= LONGEST_NUMBER && text.matches("[0-9]+");
    }

    /** A customer's invoices, newest first. */
    @Transactional
    public Slice<InvoiceSummary> ofCustomer(CustomerId customer, @Nullable String after, int size) {
        return find("", Which.ALL, customer, after, size);
    }

    /** A customer's invoices that are not fully paid, oldest due first: what a payment may be allocated to. */
    @Transactional
    public List<InvoiceSummary> outstandingOf(CustomerId customer) {
        CurrencyUnit currency = books.currency();
        LocalDate today = books.today();
        return queries.outstandingOf(readCustomer.idsOf(customer)).stream()
                .map(row -> row.toRow(currency, today))
                .toList();
    }

    /** Every invoice that is not fully paid, oldest due first. */
    @Transactional
    public Slice<InvoiceSummary> outstanding(@Nullable String after, int size) {
        return dueBy(LAST_DAY, after, size);
    }

    /** Which invoices to find. */
    public enum Which {
        ALL,
        /** Not fully paid. */
        OUTSTANDING,
        /** Not fully paid, and due before today. */
        PAST_DUE
    }

    /** The draft that bills the visit. */
    @Transactional
    public Optional<InvoiceId> draftOf(VisitId visit) {
        return queries.draftsOfVisit(visit).stream().map(row -> row.id()).findFirst();
    }

    /** The invoices that billed the visit, newest first; all but the newest are credited, it may be. */
    @Transactional
    public List<InvoiceSummary> ofVisit(VisitId visit) {
        CurrencyUnit currency = books.currency();
        LocalDate today = books.today();
        return queries.invoicesOfVisit(visit).stream()
                .map(row -> row.toRow(currency, today))
                .toList();
    }

    /** What is outstanding today by how long it is past due. */
    @Transactional
    public Aging aging() {
        return Aging.of(
                books.currency(),
                books.today(),
                queries.openByDueDate().stream()
                        .map(day -> new Aging.Due(day.dueDate(), books.money(day.open())))
                        .toList());
    }

    /** A customer's balances due with their aging. */
    public record CustomerAging(CustomerId customer, String customerName, Aging aging) {}

    /** What every customer with a balance due has outstanding today by how long it is past due; by name. */
    @Transactional
    public List<CustomerAging> agingByCustomer() {
        Map<CustomerId, List<Aging.Due>> due = new LinkedHashMap<>();
        for (InvoicingQueries.OpenOfCustomer day : queries.openByCustomerAndDueDate()) {
            due.computeIfAbsent(day.customer(), id -> new ArrayList<>())
                    .add(new Aging.Due(day.dueDate(), books.money(day.open())));
        }
        Map<CustomerId, String> customers = readCustomer.customerNames(due.keySet());
        LocalDate today = books.today();
        return due.entrySet().stream()
                .map(entry -> new CustomerAging(
                        entry.getKey(),
                        Objects.requireNonNull(customers.get(entry.getKey())),
                        Aging.of(books.currency(), today, entry.getValue())))
                .sorted(Comparator.comparing(CustomerAging::customerName)
                        .thenComparing(row -> row.customer().value()))
                .toList();
    }

    private Slice<InvoiceSummary> dueBy(LocalDate until, @Nullable String after, int size) {
        PageKey<LocalDate> key = PageKey.afterDay(after);
        CurrencyUnit currency = books.currency();
        LocalDate today = books.today();
        List<InvoiceSummary> rows = queries.outstanding(until, key.sort(), key.id(), Page.first(size + 1)).stream()
                .map(row -> row.toRow(currency, today))
                .toList();
        return Slice.of(rows, size, row -> row.dueDate() + "_" + row.id());
    }

    private List<InvoiceRow> ofCustomers(
            List<CustomerId> customers, Which which, LocalDate dueUntil, long before, int most) {
        if (customers.isEmpty()) {
            return List.of();
        }
        String ids = customers.stream().map(CustomerId::toString).collect(Collectors.joining(","));
        return queries.invoicesOfCustomers(
                ids, which == Which.ALL ? BigDecimal.ZERO : SOMETHING, dueUntil, before, most);
    }

    private Slice<InvoiceSummary> listed(List<InvoiceRow> rows, int size) {
        CurrencyUnit currency = books.currency();
        LocalDate today = books.today();
        return Slice.of(
                rows.stream().map(row -> row.toRow(currency, today)).toList(),
                size,
                row -> Long.toString(row.number()));
    }
}
