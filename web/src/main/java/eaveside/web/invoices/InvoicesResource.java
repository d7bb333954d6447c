package eaveside.web.invoices;

import eaveside.invoicing.Aging.Bucket;
import eaveside.invoicing.InvoiceSummary;
import eaveside.invoicing.ReadInvoices;
import eaveside.invoicing.ReadInvoices.CustomerAging;
import eaveside.invoicing.ReadInvoices.DraftListed;
import eaveside.invoicing.ReadInvoices.Which;
import eaveside.kernel.CustomerId;
import eaveside.kernel.Slice;
import eaveside.ledger.AccountCode;
import eaveside.ledger.AccountRole;
import eaveside.ledger.ReadLedger;
import eaveside.web.Csv;
import eaveside.web.Link;
import eaveside.web.Names;
import eaveside.web.Page;
import eaveside.web.View;
import eaveside.web.forms.PageResource;
import eaveside.web.security.Roles;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** The list of invoices and drafts, with the aging of what is outstanding. */
@Path("/invoices")
@Dependent
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class InvoicesResource extends PageResource {
    private static final int PAGE = 50;
    private static final int EXPORT = 20_000;

    @Inject
    ReadInvoices readInvoices;

    @Inject
    ReadLedger readLedger;

    @Inject
    Names names;

    /** Which invoices the list shows. */
    public enum Show {
        ALL,
        OUTSTANDING,
        PAST_DUE,
        DRAFTS;

        /** Which issued invoices to search among. */
        Which which() {
            return this == DRAFTS ? Which.ALL : Which.valueOf(name());
        }
    }

    /**
     * @param  customer     whose invoices alone are shown; null for everyone's
     * @param  customerName the customer's, or empty
     * @param  drafts       where these are asked for, otherwise none
     */
    public record ListPage(
            Show show,
            String q,
            @Nullable CustomerId customer,
            String customerName,
            Slice<InvoiceSummary> invoices,
            Slice<DraftListed> drafts,
            AgingChart aging,
            @Nullable AccountCode receivables)
            implements Page {
        /** The address of another filter; the customer and what is searched for are kept. */
        public String link(Show other) {
            return link("/invoices", other).toString();
        }

        /** The address of the list as a file. */
        public String csv() {
            return link("/invoices/list.csv", show).toString();
        }

        /** The address of the next page, or null. */
        public @Nullable String more() {
            String next = show == Show.DRAFTS ? drafts.next() : invoices.next();
            return next == null
                    ? null
                    : link("/invoices", show).with("after", next).toString();
        }

        private Link link(String path, Show shown) {
            return new Link(path)
                    .with("customer", customer)
                    .with("show", shown == Show.ALL ? null : shown)
                    .with("q", q);
        }

        /** What an invoice's status is called. */
        public String status(InvoiceSummary row) {
            return row.credited() ? "credited" : row.open().isZero() ? "paid" : row.isPastDue() ? "pastDue" : "open";
        }
    }

    @GET
    @Transactional
    public ListPage list(
            @QueryParam("show") @DefaultValue("ALL") Show show,
            @QueryParam("q") @DefaultValue("") String q,
            @QueryParam("customer") @Nullable CustomerId customer,
            @QueryParam("after") @Nullable String after) {
        boolean drafts = show == Show.DRAFTS;
        return new ListPage(
                show,
                q,
                customer,
                names.customer(customer),
                drafts ? new Slice<>(List.of(), null) : readInvoices.find(q, show.which(), customer, after, PAGE),
                drafts ? readInvoices.drafts(after, PAGE) : new Slice<>(List.of(), null),
                AgingChart.of(readInvoices.aging()),
                readLedger.accountsInRoles().get(AccountRole.RECEIVABLES));
    }

    @GET
    @Path("list.csv")
    @Produces("text/csv")
    @Transactional
    public Response csv(
            @QueryParam("show") @DefaultValue("ALL") Show show,
            @QueryParam("q") @DefaultValue("") String q,
            @QueryParam("customer") @Nullable CustomerId customer) {
        if (show == Show.DRAFTS) {
            return Csv.download(
                    "invoice-drafts",
                    List.of("customer", "service date", "total"),
                    readInvoices.drafts(null, EXPORT).rows().stream()
                            .map(draft -> Csv.row(draft.customerName(), draft.serviceDate(), draft.gross()))
                            .toList());
        }
        View view = viewer.view();
        return Csv.download(
                "invoices",
                List.of("number", "date", "due", "customer", "total", "open", "credited", "days past due", "aging"),
                readInvoices.find(q, show.which(), customer, null, EXPORT).rows().stream()
                        .map(row -> Csv.row(
                                row.number(),
                                row.date(),
                                row.dueDate(),
                                row.customerName(),
                                row.gross(),
                                row.open(),
                                row.credited() ? "yes" : "",
                                row.aging() == null ? "" : row.daysPastDue(),
                                row.aging() == null ? "" : view.t("invoices.aging", row.aging())))
                        .toList());
    }

    /** Balances due by how long they are past due. */
    public record AgingListPage(List<CustomerAging> customers, AgingChart chart) implements Page {}

    @GET
    @Path("aging")
    @Transactional
    public AgingListPage aging() {
        return new AgingListPage(readInvoices.agingByCustomer(), AgingChart.of(readInvoices.aging()));
    }

    @GET
    @Path("aging.csv")
    @Produces("text/csv")
    @Transactional
    public Response agingCsv() {
        View view = viewer.view();
        return Csv.download(
                "aging",
                row("customer", Stream.of(Bucket.values()).map(bucket -> view.t("invoices.aging", bucket)), "total"),
                readInvoices.agingByCustomer().stream()
                        .map(row -> row(
                                row.customerName(),
                                row.aging().amounts().values().stream(),
                                row.aging().total()))
                        .toList());
    }

    private static List<String> row(String customer, Stream<?> buckets, Object total) {
        return Csv.row(Stream.of(Stream.of(customer), buckets, Stream.of(total))
                .flatMap(cells -> cells)
                .toArray());
    }
}
