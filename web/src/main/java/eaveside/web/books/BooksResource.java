package eaveside.web.books;

import eaveside.access.Role;
import eaveside.access.Sight;
import eaveside.customers.ReadCustomer;
import eaveside.kernel.CustomerId;
import eaveside.kernel.Money;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.Slice;
import eaveside.kernel.VisitId;
import eaveside.ledger.Account;
import eaveside.ledger.AccountCode;
import eaveside.ledger.AccountingPeriod;
import eaveside.ledger.Books;
import eaveside.ledger.CostType;
import eaveside.ledger.EntryFilter;
import eaveside.ledger.EntryLine;
import eaveside.ledger.ReadLedger;
import eaveside.ledger.TrialBalance;
import eaveside.reports.Papers;
import eaveside.web.Csv;
import eaveside.web.Names;
import eaveside.web.Page;
import eaveside.web.forms.Fields;
import eaveside.web.security.For;
import eaveside.web.security.Sees;
import eaveside.web.security.Viewer;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriBuilder;
import jakarta.ws.rs.core.UriInfo;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** The trial balance as page, paper and file, and the entries behind a figure. */
@Path("/books")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For({Role.OWNER, Role.OFFICE})
public class BooksResource {
    private static final int ACCOUNTS_IN_HEADING = 3;

    private static final int PAGE = 50;
    private static final int EXPORT = 20_000;

    private final ReadLedger readLedger;
    private final OpenAccounts openAccounts;
    private final ReadCustomer readCustomer;
    private final Books books;
    private final Papers papers;
    private final TrialBalancePapers trialBalancePapers;
    private final Names names;
    private final Viewer viewer;

    @Context
    UriInfo uri;

    @Inject
    public BooksResource(
            ReadLedger readLedger,
            OpenAccounts openAccounts,
            ReadCustomer readCustomer,
            Books books,
            Papers papers,
            TrialBalancePapers trialBalancePapers,
            Names names,
            Viewer viewer) {
        this.viewer = viewer;
        this.readLedger = readLedger;
        this.openAccounts = openAccounts;
        this.readCustomer = readCustomer;
        this.books = books;
        this.papers = papers;
        this.trialBalancePapers = trialBalancePapers;
        this.names = names;
    }

    /** The trial balance, and the months with their state. */
    public record BooksPage(TrialBalance balance, String query, List<AccountingPeriod> periods, Fields fields)
            implements Page {
        @Override
        public String template() {
            return "books/books.jte";
        }

        /** The entries behind an account's opening balance. */
        public String opening(TrialBalance.Row row) {
            return "/books/entries?account=" + row.code() + "&to="
                    + balance.from().minusDays(1);
        }

        /** The entries behind an account's change. */
        public String change(TrialBalance.Row row) {
            return "/books/entries?account=" + row.code() + "&from=" + balance.from() + "&to=" + balance.to();
        }

        /** The entries behind an account's closing balance. */
        public String closing(TrialBalance.Row row) {
            return "/books/entries?account=" + row.code() + "&to=" + balance.to();
        }
    }

    /** The entries that a figure is the sum of. */
    public record EntriesPage(
            String heading,
            EntryFilter filter,
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
    @Sees(Sight.BOOKS)
    public Response books() {
        Fields fields = viewer.fields(uri.getQueryParameters());
        BooksPage page = page(fields);
        return Response.status(fields.status()).entity(page).build();
    }

    private BooksPage page(Fields fields) {
        Span span = Span.of(fields, books.today());
        return new BooksPage(
                readLedger.trialBalance(span.from(), span.to()), span.query(), readLedger.periods(), fields);
    }

    @GET
    @Path("trial-balance.csv")
    @Produces("text/csv")
    @Transactional
    @Sees(Sight.BOOKS)
    public Response trialBalanceCsv() {
        return file(trialBalancePapers::csv);
    }

    @GET
    @Path("trial-balance.pdf")
    @Produces(Papers.PDF)
    @Transactional
    @Sees(Sight.BOOKS)
    public Response trialBalancePdf() {
        return file(balance -> Response.ok(papers.trialBalance(trialBalancePapers.paper(balance)))
                .type(Papers.PDF)
                .header(
                        HttpHeaders.CONTENT_DISPOSITION,
                        "inline; filename=\"trial-balance-" + balance.from() + "-" + balance.to() + ".pdf\"")
                .build());
    }

    /** The file of the days asked for, or the page that says what is wrong with them. */
    private Response file(Function<TrialBalance, Response> print) {
        Fields fields = viewer.fields(uri.getQueryParameters());
        Span span = Span.of(fields, books.today());
        return fields.hasErrors()
                ? Response.status(fields.status())
                        .type(MediaType.TEXT_HTML_TYPE)
                        .entity(page(fields))
                        .build()
                : print.apply(readLedger.trialBalance(span.from(), span.to()));
    }

    @GET
    @Path("entries")
    @Transactional
    public EntriesPage entries(@QueryParam("after") @Nullable String after) {
        EntryFilter filter = filter();
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
                        e.type().name(),
                        String.valueOf(e.number()),
                        e.account().value(),
                        e.accountName(),
                        e.amount().amount().toPlainString(),
                        names.line(e.serviceLine()),
                        names.customer(e.customer()),
                        e.costType() == null ? "" : e.costType().name(),
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

    private EntryFilter filter() {
        MultivaluedMap<String, String> query = uri.getQueryParameters();
        Fields fields = viewer.fields(query);
        String line = fields.typed("line");
        return new EntryFilter(
                fields.typed("from").isEmpty() ? null : fields.date("from", books.today()),
                fields.typed("to").isEmpty() ? null : fields.date("to", books.today()),
                openAccounts.among(
                        fields.all("account").stream().map(AccountCode::new).toList()),
                line.isEmpty() || line.equals("none") ? null : ServiceLineId.of(line),
                line.equals("none"),
                fields.typed("visit").isEmpty() ? null : VisitId.of(fields.typed("visit")),
                fields.typed("customer").isEmpty()
                        ? List.of()
                        : readCustomer.idsOf(CustomerId.of(fields.typed("customer"))),
                fields.typed("cost").isEmpty() ? null : fields.choice("cost", CostType.class),
                fields.ticked("found"));
    }

    private String heading(EntryFilter filter) {
        return filter.accounts().size() > ACCOUNTS_IN_HEADING
                ? ""
                : readLedger.accounts().stream()
                        .filter(a -> filter.accounts().contains(a.code()))
                        .map(Account::name)
                        .collect(Collectors.joining(", "));
    }
}
