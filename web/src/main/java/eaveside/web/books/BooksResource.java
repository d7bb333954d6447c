package eaveside.web.books;

import eaveside.access.Role;
import eaveside.kernel.CustomerId;
import eaveside.kernel.DocumentId;
import eaveside.kernel.Money;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.Slice;
import eaveside.kernel.VisitId;
import eaveside.ledger.AccountCode;
import eaveside.ledger.AccountRef;
import eaveside.ledger.Books;
import eaveside.ledger.ClosePeriod;
import eaveside.ledger.CostKind;
import eaveside.ledger.ReadLedger;
import eaveside.ledger.ReadLedger.Balance;
import eaveside.ledger.ReadLedger.EntryLine;
import eaveside.ledger.ReadLedger.Filter;
import eaveside.web.Csv;
import eaveside.web.Names;
import eaveside.web.Page;
import eaveside.web.forms.Fields;
import eaveside.web.security.For;
import eaveside.web.security.Trail;
import eaveside.web.security.Viewer;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriBuilder;
import jakarta.ws.rs.core.UriInfo;
import java.net.URI;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Trial balance, the entries behind a figure, and the close of a month. */
@Path("/books")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For({Role.OWNER, Role.OFFICE})
public class BooksResource {
    private static final int ACCOUNTS_IN_HEADING = 3;

    private static final int PAGE = 50;
    private static final int EXPORT = 20_000;

    private final ReadLedger readLedger;
    private final ClosePeriod closePeriod;
    private final Books books;
    private final Viewer viewer;
    private final Names names;
    private final Trail trail;

    @Context
    UriInfo uri;

    @Inject
    public BooksResource(
            ReadLedger readLedger, ClosePeriod closePeriod, Books books, Viewer viewer, Names names, Trail trail) {
        this.readLedger = readLedger;
        this.closePeriod = closePeriod;
        this.books = books;
        this.viewer = viewer;
        this.names = names;
        this.trail = trail;
    }

    /** Balances of a span of days, and the months with their state. */
    public record BooksPage(
            LocalDate from,
            LocalDate to,
            List<Balance> balances,
            Money debits,
            Money credits,
            List<ReadLedger.Period> periods,
            @Nullable YearMonth closable,
            DocumentId closeId,
            Fields fields)
            implements Page {
        @Override
        public String template() {
            return "books/books.jte";
        }
    }

    /** The entries that a figure is the sum of. */
    public record EntriesPage(
            String heading,
            Filter filter,
            Money total,
            Slice<EntryLine> entries,
            Names names,
            @Nullable String more,
            String csv)
            implements Page {
        @Override
        public String template() {
            return "books/entries.jte";
        }
    }

    @GET
    @Transactional
    public BooksPage books(@QueryParam("from") @Nullable String from, @QueryParam("to") @Nullable String to) {
        return page(viewer.fields(uri.getQueryParameters()));
    }

    private BooksPage page(Fields fields) {
        LocalDate today = books.today();
        LocalDate from = fields.typed("from").isEmpty() ? today.withDayOfMonth(1) : fields.date("from", today);
        LocalDate to = fields.typed("to").isEmpty() ? today : fields.date("to", today);
        List<Balance> balances = readLedger.trialBalance(from, to);
        List<ReadLedger.Period> periods = readLedger.periods();
        return new BooksPage(
                from,
                to,
                balances,
                sum(balances.stream()
                        .map(Balance::amount)
                        .filter(Money::isPositive)
                        .toList()),
                sum(balances.stream()
                                .map(Balance::amount)
                                .filter(Money::isNegative)
                                .toList())
                        .negated(),
                periods,
                oldestEnded(periods, today),
                DocumentId.next(),
                fields);
    }

    private Money sum(List<Money> amounts) {
        return Money.sum(books.currency(), amounts);
    }

    private static @Nullable YearMonth oldestEnded(List<ReadLedger.Period> periods, LocalDate today) {
        return periods.stream()
                .filter(p -> p.closedAt() == null)
                .map(ReadLedger.Period::month)
                .min(YearMonth::compareTo)
                .filter(month -> month.atEndOfMonth().isBefore(today))
                .orElse(null);
    }

    @POST
    @Path("close")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @For(Role.OWNER)
    public Response close(MultivaluedMap<String, String> form) {
        Fields fields = viewer.fields(form);
        YearMonth month = fields.month("month", YearMonth.from(books.today()));
        DocumentId id = new DocumentId(fields.id("id"));
        boolean closed = fields.run(() -> closePeriod.close(new ClosePeriod.Close(id, month, viewer.id())));
        if (closed) {
            trail.done("month.close", month);
        }
        return closed
                ? Response.seeOther(URI.create("/books?done=books.closed")).build()
                : Response.status(fields.status()).entity(page(fields)).build();
    }

    @GET
    @Path("entries")
    @Transactional
    public EntriesPage entries(@QueryParam("after") @Nullable String after) {
        Filter filter = filter();
        Slice<EntryLine> entries = readLedger.entries(filter, after, PAGE);
        UriBuilder here = uri.getRequestUriBuilder();
        return new EntriesPage(
                heading(filter),
                filter,
                readLedger.total(filter),
                entries,
                names,
                entries.next() == null
                        ? null
                        : here.clone()
                                .replaceQueryParam("after", entries.next())
                                .build()
                                .toString(),
                here.clone().path(".csv").build().toString().replace("/.csv", ".csv"));
    }

    @GET
    @Path("entries.csv")
    @Produces("text/csv")
    @Transactional
    public Response csv() {
        List<List<String>> rows = readLedger.entries(filter(), null, EXPORT).rows().stream()
                .map(e -> List.of(
                        e.postingDate().toString(),
                        e.kind().name(),
                        String.valueOf(e.number()),
                        e.account().value(),
                        e.accountName(),
                        e.amount().amount().toPlainString(),
                        names.line(e.serviceLine()),
                        names.customer(e.customer()),
                        e.costKind() == null ? "" : e.costKind().name(),
                        e.note()))
                .toList();
        return Csv.download(
                "entries",
                List.of(
                        "date",
                        "document",
                        "number",
                        "account",
                        "account name",
                        "amount",
                        "service line",
                        "customer",
                        "cost",
                        "note"),
                rows);
    }

    private Filter filter() {
        MultivaluedMap<String, String> query = uri.getQueryParameters();
        Fields fields = viewer.fields(query);
        String line = fields.typed("line");
        return new Filter(
                fields.typed("from").isEmpty() ? null : fields.date("from", books.today()),
                fields.typed("to").isEmpty() ? null : fields.date("to", books.today()),
                fields.all("account").stream().<AccountRef>map(AccountCode::new).toList(),
                line.isEmpty() || line.equals("none") ? null : ServiceLineId.of(line),
                line.equals("none"),
                fields.typed("visit").isEmpty() ? null : VisitId.of(fields.typed("visit")),
                fields.typed("customer").isEmpty() ? null : CustomerId.of(fields.typed("customer")),
                fields.typed("cost").isEmpty() ? null : fields.choice("cost", CostKind.class),
                fields.ticked("found"));
    }

    private String heading(Filter filter) {
        return filter.accounts().size() > ACCOUNTS_IN_HEADING
                ? ""
                : readLedger.accounts().stream()
                        .filter(a -> filter.accounts().contains(a.code()))
                        .map(ReadLedger.Account::name)
                        .collect(Collectors.joining(", "));
    }
}
