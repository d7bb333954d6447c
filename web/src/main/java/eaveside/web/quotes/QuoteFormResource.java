package eaveside.web.quotes;

import eaveside.access.Role;
import eaveside.catalog.Catalog;
import eaveside.customers.Customer;
import eaveside.customers.FindCustomers;
import eaveside.customers.ReadCustomer;
import eaveside.customers.ReadSurfaces;
import eaveside.customers.Site;
import eaveside.findings.FindingView;
import eaveside.findings.ReadFindings;
import eaveside.kernel.CustomerId;
import eaveside.kernel.FindingId;
import eaveside.kernel.QuoteId;
import eaveside.kernel.SiteId;
import eaveside.kernel.Unit;
import eaveside.ledger.Books;
import eaveside.pricing.DraftQuote;
import eaveside.pricing.PriceBook;
import eaveside.pricing.PricingRefusal;
import eaveside.pricing.Quote;
import eaveside.pricing.QuoteScope;
import eaveside.pricing.ReadPriceBooks;
import eaveside.pricing.ReadQuotes;
import eaveside.pricing.ReviseQuote;
import eaveside.web.Page;
import eaveside.web.View;
import eaveside.web.forms.Fields;
import eaveside.web.security.AuditLog;
import eaveside.web.security.For;
import eaveside.web.security.Untold;
import eaveside.web.security.Viewer;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.net.URI;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** Writing a quote: for whom, where, what, and at which price. */
@Path("/quotes")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For({Role.OWNER, Role.OFFICE})
public class QuoteFormResource {
    /** How long a quote is valid unless somebody says otherwise; common practice, no source. */
    private static final int VALID_DAYS = 30;

    private static final int CUSTOMERS = 20;

    private final DraftQuote draftQuote;
    private final ReviseQuote reviseQuote;
    private final ReadQuotes readQuotes;
    private final ReadPriceBooks readPriceBooks;
    private final ReadCustomer readCustomer;
    private final FindCustomers findCustomers;
    private final ReadSurfaces readSurfaces;
    private final ReadFindings readFindings;
    private final Catalog catalog;
    private final Books books;
    private final Calculation calculate;
    private final Viewer viewer;
    private final AuditLog auditLog;

    @Context
    UriInfo uri;

    @Inject
    public QuoteFormResource(
            DraftQuote draftQuote,
            ReviseQuote reviseQuote,
            ReadQuotes readQuotes,
            ReadPriceBooks readPriceBooks,
            ReadCustomer readCustomer,
            FindCustomers findCustomers,
            ReadSurfaces readSurfaces,
            ReadFindings readFindings,
            Catalog catalog,
            Books books,
            Calculation calculate,
            Viewer viewer,
            AuditLog auditLog) {
        this.draftQuote = draftQuote;
        this.reviseQuote = reviseQuote;
        this.readQuotes = readQuotes;
        this.readPriceBooks = readPriceBooks;
        this.readCustomer = readCustomer;
        this.findCustomers = findCustomers;
        this.readSurfaces = readSurfaces;
        this.readFindings = readFindings;
        this.catalog = catalog;
        this.books = books;
        this.calculate = calculate;
        this.viewer = viewer;
        this.auditLog = auditLog;
    }

    /** The question before the form: for whom, then where. */
    public record ChoosePage(
            Fields fields,
            List<FindCustomers.CustomerLine> found,
            @Nullable Customer customer,
            List<Site> sites,
            String finding)
            implements Page {
        @Override
        public String template() {
            return "quotes/choose.jte";
        }

        /** The address of the form for a site. */
        public String to(Site site) {
            return "/quotes/new?customer=" + site.customerId() + "&site=" + site.id()
                    + (finding.isEmpty() ? "" : "&finding=" + finding);
        }
    }

    /** Where there is nothing to price from. */
    public record NoBookPage() implements Page {
        @Override
        public String template() {
            return "quotes/no-book.jte";
        }
    }

    /** The prices alone, for a form that is being written. */
    public record WorkedPage(QuoteForm form, Fields fields, Calculated worked) implements Page {
        @Override
        public String template() {
            return "quotes/worked-page.jte";
        }
    }

    @GET
    @Path("new")
    @Transactional
    public Page fresh() {
        Fields fields = viewer.fields(uri.getQueryParameters());
        FindingView finding = finding(fields.typed("finding"));
        CustomerId customer = finding != null
                ? finding.customer()
                : fields.typed("customer").isEmpty() ? null : CustomerId.of(fields.typed("customer"));
        if (customer == null) {
            List<FindCustomers.CustomerLine> found =
                    findCustomers.find(fields.typed("q"), true, null, CUSTOMERS).rows();
            return new ChoosePage(fields, found, null, List.of(), "");
        }
        SiteId site = fields.typed("site").isEmpty() ? null : SiteId.of(fields.typed("site"));
        if (site == null && finding != null) {
            site = finding.site();
        }
        List<Site> sites =
                readCustomer.sites(customer).stream().filter(Site::active).toList();
        if (site == null && sites.size() == 1) {
            site = sites.getFirst().id();
        }
        if (site == null) {
            return new ChoosePage(fields, List.of(), readCustomer.customer(customer), sites, fields.typed("finding"));
        }
        PriceBook book = readPriceBooks.findInForce(books.today()).orElse(null);
        return book == null ? new NoBookPage() : freshForm(readCustomer.site(site), book, finding);
    }

    private QuoteFormPage freshForm(Site site, PriceBook book, @Nullable FindingView finding) {
        QuoteForm form = form(site.id(), book);
        Map<String, String> values = form.fresh();
        values.put("validUntil", books.today().plusDays(VALID_DAYS).toString());
        return page(
                QuoteId.next(), null, site, finding, book, form, Fields.showing(values), Fields.showing(values), null);
    }

    @GET
    @Path("{id}/edit")
    @Transactional
    public Response edit(@PathParam("id") String id) {
        Quote quote = readQuotes.quote(QuoteId.of(id));
        if (!quote.status().isOpen()) {
            return Response.seeOther(URI.create("/quotes/" + quote.id())).build();
        }
        PriceBook book = bookOf(quote);
        QuoteForm form = form(quote.site(), book);
        Map<String, String> values = form.filled(quote);
        if (quote.isExpiredOn(books.today())) {
            values.put("validUntil", books.today().plusDays(VALID_DAYS).toString());
        }
        return Response.ok(page(
                        quote.id(),
                        quote,
                        readCustomer.site(quote.site()),
                        quote.cameFrom() == null ? null : readFindings.finding(quote.cameFrom()),
                        book,
                        form,
                        Fields.showing(values),
                        Fields.showing(values),
                        null))
                .build();
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response make(MultivaluedMap<String, String> typed) {
        Fields fields = viewer.fields(typed);
        QuoteId id = new QuoteId(fields.id("id"));
        Site site = readCustomer.site(SiteId.of(fields.typed("site")));
        FindingView finding = finding(fields.typed("finding"));
        PriceBook book = readPriceBooks.inForce(books.today());
        QuoteForm form = form(site.id(), book);
        if (fields.typed("do").equals("calculation")) {
            return Response.ok(page(id, null, site, finding, book, form, fields, viewer.fields(typed), null))
                    .build();
        }
        Supplier<QuoteScope> scope = form.scope(fields, books.today());
        boolean made = fields.run(() -> draftQuote.draft(new DraftQuote.NewQuote(
                id, site.customerId(), site.id(), finding == null ? null : finding.id(), scope.get(), viewer.id())));
        if (made) {
            auditLog.done("quote.draft", id);
            return Response.seeOther(URI.create("/quotes/" + id + "?done=quotes.saved"))
                    .build();
        }
        // The id may have made a quote before: then what was typed becomes a change of it.
        Quote stored = fields.status() == Response.Status.CONFLICT.getStatusCode() ? find(id) : null;
        return Response.status(fields.status())
                .entity(page(id, stored, site, finding, book, form, fields, viewer.fields(typed), stored))
                .build();
    }

    @POST
    @Path("{id}")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response revise(@PathParam("id") String id, MultivaluedMap<String, String> typed) {
        Quote quote = readQuotes.quote(QuoteId.of(id));
        Fields fields = viewer.fields(typed);
        Site site = readCustomer.site(quote.site());
        FindingView finding = quote.cameFrom() == null ? null : readFindings.finding(quote.cameFrom());
        PriceBook book = bookOf(quote);
        QuoteForm form = form(quote.site(), book);
        int version = fields.integer("version", 0, Integer.MAX_VALUE);
        Supplier<QuoteScope> scope = form.scope(fields, books.today());
        if (fields.typed("do").equals("calculation")) {
            Fields shown = viewer.fields(typed);
            return Response.ok(page(quote.id(), quote, site, finding, book, form, shown, viewer.fields(typed), null))
                    .build();
        }
        boolean revised = fields.run(
                () -> reviseQuote.revise(new ReviseQuote.Revise(quote.id(), version, scope.get(), viewer.id())));
        if (revised) {
            auditLog.done("quote.revise", quote.id());
            return Response.seeOther(URI.create("/quotes/" + quote.id() + "?done=quotes.saved"))
                    .build();
        }
        boolean overtaken = fields.status() == Response.Status.CONFLICT.getStatusCode();
        Quote now = overtaken ? readQuotes.quote(quote.id()) : quote;
        return Response.status(fields.status())
                .entity(page(
                        quote.id(),
                        now,
                        site,
                        finding,
                        book,
                        form,
                        fields,
                        viewer.fields(typed),
                        overtaken ? now : null))
                .build();
    }

    @POST
    @Untold("it works out and changes nothing")
    @Path("calculation")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public WorkedPage calculate(MultivaluedMap<String, String> typed) {
        Fields fields = viewer.fields(typed);
        SiteId site = SiteId.of(fields.typed("site"));
        String id = fields.typed("id");
        PriceBook book = fields.typed("version").equals("0")
                ? readPriceBooks.inForce(books.today())
                : bookOf(readQuotes.quote(QuoteId.of(id)));
        QuoteForm form = form(site, book);
        return new WorkedPage(
                form,
                fields,
                calculate.calculate(
                        form, viewer.fields(typed), book, viewer.view().locale()));
    }

    private QuoteFormPage page(
            QuoteId id,
            @Nullable Quote before,
            Site site,
            @Nullable FindingView finding,
            PriceBook book,
            QuoteForm form,
            Fields fields,
            Fields reading,
            @Nullable Quote stored) {
        View view = viewer.view();
        return new QuoteFormPage(
                id,
                before,
                readCustomer.customer(site.customerId()),
                site,
                finding,
                book,
                form,
                fields,
                calculate.calculate(form, reading, book, view.locale()),
                stored);
    }

    /** The book that a change would be priced from. */
    private PriceBook bookOf(Quote quote) {
        return quote.isExpiredOn(books.today())
                ? readPriceBooks.inForce(books.today())
                : readPriceBooks.book(quote.book());
    }

    private QuoteForm form(SiteId site, PriceBook book) {
        return new QuoteForm(
                readSurfaces.ofSite(site),
                catalog.serviceItems(),
                book.list(),
                viewer.view().us() ? Unit.MILE : Unit.KILOMETER);
    }

    private @Nullable FindingView finding(String id) {
        return id.isEmpty() ? null : readFindings.finding(FindingId.of(id));
    }

    private @Nullable Quote find(QuoteId id) {
        try {
            return readQuotes.quote(id);
        } catch (PricingRefusal.NoSuchQuote none) {
            return null;
        }
    }
}
