package eaveside.web.invoices;

import eaveside.invoicing.Aging;
import eaveside.invoicing.InvoiceSummary;
import eaveside.invoicing.ReadInvoices;
import eaveside.invoicing.ReadInvoices.CustomerAging;
import eaveside.invoicing.ReadInvoices.DraftListed;
import eaveside.kernel.CustomerId;
import eaveside.kernel.Slice;
import eaveside.ledger.AccountCode;
import eaveside.ledger.AccountRole;
import eaveside.ledger.ReadLedger;
import eaveside.web.Csv;
import eaveside.web.Names;
import eaveside.web.Page;
import eaveside.web.View;
import eaveside.web.security.Roles;
import eaveside.web.security.Viewer;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriBuilder;
import jakarta.ws.rs.core.UriInfo;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The list of invoices and drafts, with the aging of what is outstanding. */
@Path("/invoices")
@Dependent
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class InvoicesResource {
    private static final int PAGE = 50;
    private static final int EXPORT = 20_000;

    @Inject
    ReadInvoices readInvoices;

    @Inject
    ReadLedger readLedger;

    @Inject
    Names names;

    @Inject
    Viewer viewer;

    @Context
    UriInfo uri;

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
            List<InvoiceSummary> invoices,
            List<DraftListed> drafts,
            @Nullable String more,
            String csv,
            AgingChart aging,
            @Nullable AccountCode receivables)
            implements Page {
        @Override
        public String template() {
            return "invoices/list.jte";
        }

        /** The address of another filter; the customer and what is searched for are kept. */
        public String link(Show other) {
            List<String> query = new ArrayList<>();
            if (customer != null) {
                query.add("customer=" + customer);
            }
            if (other != Show.ALL) {
                query.add("show=" + other);
            }
            if (!q.isBlank()) {
                query.add("q=" + URLEncoder.encode(q, StandardCharsets.UTF_8));
            }
            return query.isEmpty() ? "/invoices" : "/invoices?" + String.join("&", query);
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
        Slice<DraftListed> draftRows = drafts ? readInvoices.drafts(after, PAGE) : new Slice<>(List.of(), null);
        Slice<InvoiceSummary> rows =
                drafts ? new Slice<>(List.of(), null) : readInvoices.find(q, show.which(), customer, after, PAGE);
        String next = drafts ? draftRows.next() : rows.next();
        UriBuilder here = uri.getRequestUriBuilder().scheme(null).host(null).port(-1);
        return new ListPage(
                show,
                q,
                customer,
                names.customer(customer),
                rows.rows(),
                draftRows.rows(),
                next == null
                        ? null
                        : here.clone().replaceQueryParam("after", next).build().toString(),
                here.clone()
                        .replacePath("/invoices/list.csv")
                        .replaceQueryParam("after")
                        .build()
                        .toString(),
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
                            .map(d -> List.of(
                                    d.customerName(),
                                    d.serviceDate().toString(),
                                    d.gross().amount().toPlainString()))
                            .toList());
        }
        View view = viewer.view();
        return Csv.download(
                "invoices",
                List.of("number", "date", "due", "customer", "total", "open", "credited", "days past due", "aging"),
                readInvoices.find(q, show.which(), customer, null, EXPORT).rows().stream()
                        .map(r -> List.of(
                                String.valueOf(r.number()),
                                r.date().toString(),
                                r.dueDate().toString(),
                                r.customerName(),
                                r.gross().amount().toPlainString(),
                                r.open().amount().toPlainString(),
                                r.credited() ? "yes" : "",
                                r.aging() == null ? "" : String.valueOf(r.daysPastDue()),
                                r.aging() == null ? "" : view.t("invoices.aging", r.aging())))
                        .toList());
    }

    /** Balances due by how long they are past due. */
    public record AgingPage(Aging all, List<CustomerAging> customers, AgingChart chart) implements Page {
        @Override
        public String template() {
            return "invoices/aging-list.jte";
        }
    }

    @GET
    @Path("aging")
    @Transactional
    public AgingPage aging() {
        Aging all = readInvoices.aging();
        return new AgingPage(all, readInvoices.agingByCustomer(), AgingChart.of(all));
    }

    @GET
    @Path("aging.csv")
    @Produces("text/csv")
    @Transactional
    public Response agingCsv() {
        View view = viewer.view();
        List<String> head = new ArrayList<>(List.of("customer"));
        for (Aging.Bucket bucket : Aging.Bucket.values()) {
            head.add(view.t("invoices.aging", bucket));
        }
        head.add("total");
        return Csv.download(
                "aging",
                head,
                readInvoices.agingByCustomer().stream()
                        .map(row -> {
                            List<String> cells = new ArrayList<>(List.of(row.customerName()));
                            for (Aging.Bucket bucket : Aging.Bucket.values()) {
                                cells.add(row.aging().of(bucket).amount().toPlainString());
                            }
                            cells.add(row.aging().total().amount().toPlainString());
                            return cells;
                        })
                        .toList());
    }
}
