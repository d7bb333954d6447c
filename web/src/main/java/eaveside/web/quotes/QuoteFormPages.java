package eaveside.web.quotes;

import eaveside.catalog.Catalog;
import eaveside.catalog.StandardMinutes;
import eaveside.customers.Customer;
import eaveside.customers.CustomerLine;
import eaveside.customers.FindCustomers;
import eaveside.customers.ReadCustomer;
import eaveside.customers.ReadSurfaces;
import eaveside.customers.Site;
import eaveside.findings.FindingView;
import eaveside.findings.ReadFindings;
import eaveside.kernel.CustomerId;
import eaveside.kernel.FindingId;
import eaveside.kernel.QuoteId;
import eaveside.kernel.Records;
import eaveside.kernel.Refusal;
import eaveside.kernel.SiteId;
import eaveside.kernel.Unit;
import eaveside.ledger.Books;
import eaveside.pricing.DraftQuote;
import eaveside.pricing.NewQuote;
import eaveside.pricing.PriceBook;
import eaveside.pricing.PriceWork;
import eaveside.pricing.PricedWork;
import eaveside.pricing.Quote;
import eaveside.pricing.QuoteRevision;
import eaveside.pricing.QuoteScope;
import eaveside.pricing.ReadPriceBooks;
import eaveside.pricing.ReadQuotes;
import eaveside.pricing.ReviseQuote;
import eaveside.web.Page;
import eaveside.web.PagePart;
import eaveside.web.forms.Fields;
import eaveside.web.forms.Form;
import eaveside.web.forms.Respond;
import eaveside.web.security.Roles;
import eaveside.web.security.Viewer;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/** Writing a quote: for whom, where, what, and at which price. */
@Path("/quotes")
@Dependent
@Produces(MediaType.TEXT_HTML)
@Consumes(MediaType.APPLICATION_FORM_URLENCODED)
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class QuoteFormPages {
    /** How long a quote is valid unless somebody says otherwise; common practice, no source. */
    private static final int VALID_DAYS = 30;

    private static final int CUSTOMERS = 20;

    @Inject
    DraftQuote draftQuote;

    @Inject
    ReviseQuote reviseQuote;

    @Inject
    PriceWork priceWork;

    @Inject
    ReadQuotes readQuotes;

    @Inject
    ReadPriceBooks readPriceBooks;

    @Inject
    ReadCustomer readCustomer;

    @Inject
    FindCustomers findCustomers;

    @Inject
    ReadSurfaces readSurfaces;

    @Inject
    ReadFindings readFindings;

    @Inject
    Catalog catalog;

    @Inject
    Books books;

    @Inject
    Viewer viewer;

    /** The question before the form: for whom, then where. */
    public record ChoosePage(
            String search,
            List<CustomerLine> found,
            @Nullable Customer customer,
            List<Site> sites,
            @Nullable FindingId finding)
            implements Page {
        /** The address of the form for a site. */
        public String to(Site site) {
            return "/quotes/new?customer=" + site.customer() + "&site=" + site.id()
                    + (finding == null ? "" : "&finding=" + finding);
        }
    }

    /** Where there is nothing to price from. */
    public record NoBookPage() implements Page {}

    /** The prices alone, for a form that is being written. */
    public record PricesPage(QuoteForm form, FormPrices prices) implements PagePart {}

    /**
     * What a form is about.
     *
     * @param  before  the quote that is changed; null for a new one
     * @param  finding that it came from
     * @param  book    that it is priced from
     */
    public record About(
            QuoteId id,
            @Nullable Quote before,
            Customer customer,
            Site site,
            @Nullable FindingView finding,
            PriceBook book) {}

    /**
     * The form, with its prices as they would be.
     *
     * @param  stored the quote as another user has left it in the meantime; null where nobody has
     */
    public record FormPage(
            About about,
            QuoteForm form,
            FormPrices prices,
            @Nullable Quote stored) implements Page {
        /** The quote that the form changes, as it is stored; null for a new one. */
        public @Nullable Quote before() {
            return stored == null ? about.before() : stored;
        }
    }

    @GET
    @Path("new")
    @Transactional
    public Page fresh(
            @QueryParam("finding") @Nullable FindingId from,
            @QueryParam("customer") @Nullable CustomerId named,
            @QueryParam("site") @Nullable SiteId at,
            @QueryParam("q") @DefaultValue("") String search) {
        FindingView finding = from == null ? null : readFindings.finding(from);
        CustomerId customer = finding == null ? named : finding.customer();
        if (customer == null) {
            List<CustomerLine> found =
                    findCustomers.find(search, true, null, CUSTOMERS).rows();
            return new ChoosePage(search, found, null, List.of(), null);
        }
        List<Site> sites =
                readCustomer.sites(customer).stream().filter(Site::active).toList();
        SiteId site = at != null
                ? at
                : finding != null
                        ? finding.site()
                        : sites.size() == 1 ? sites.getFirst().id() : null;
        if (site == null) {
            return new ChoosePage("", List.of(), readCustomer.customer(customer), sites, from);
        }
        PriceBook book = readPriceBooks.findInForce(books.today()).orElse(null);
        if (book == null) {
            return new NoBookPage();
        }
        Map<String, String> values = Map.of(
                "validUntil", books.today().plusDays(VALID_DAYS).toString(), "cameFrom", from == null ? "" : from + "");
        Fields fields = viewer.form(NewQuote.class, values).fields();
        return page(
                about(QuoteId.next(), null, site, from, book),
                form(fields, site, book).completed(),
                null);
    }

    /** Not in one transaction: prices that are refused would end it, and the form says so instead. */
    @GET
    @Path("{id}/edit")
    public Response edit(@PathParam("id") QuoteId id) {
        Quote quote = readQuotes.quote(id);
        if (!quote.status().isOpen()) {
            return Response.seeOther(URI.create("/quotes/" + id)).build();
        }
        LocalDate today = books.today();
        QuoteScope scope = quote.isExpiredOn(today)
                ? Records.with(quote.scope(), "validUntil", today.plusDays(VALID_DAYS))
                : quote.scope();
        Fields fields = viewer.form(new QuoteRevision(id, quote.version(), scope, viewer.id()))
                .fields();
        About about = about(quote);
        return Response.ok(page(about, form(fields, quote.site(), about.book()).completed(), null))
                .build();
    }

    @POST
    public Response draft(Fields fields) {
        QuoteId id = new QuoteId(fields.id("id"));
        SiteId site = SiteId.of(fields.typed("site"));
        FindingId finding = fields.typed("cameFrom").isEmpty() ? null : FindingId.of(fields.typed("cameFrom"));
        PriceBook book = readPriceBooks.inForce(books.today());
        QuoteForm form = form(fields, site, book);
        return saved(about(id, null, site, finding, book), form, form.of(NewQuote.class), draftQuote::draft);
    }

    @POST
    @Path("{id}")
    public Response revise(@PathParam("id") QuoteId id, Fields fields) {
        About about = about(readQuotes.quote(id));
        QuoteForm form = form(fields, about.site().id(), about.book());
        return saved(about, form, form.of(QuoteRevision.class).given("id", id), reviseQuote::revise);
    }

    private <C extends Record> Response saved(About about, QuoteForm form, Form<C> command, Consumer<C> useCase) {
        Fields fields = form.fields();
        if (fields.typed("do").equals("recalculate")) {
            return Response.ok(page(about, form, null)).build();
        }
        if (command.given("by", viewer.id()).run(useCase)) {
            return Respond.to("/quotes/" + about.id(), "quotes.saved");
        }
        // A new quote's id may have made one before: then what was typed becomes a change of it.
        boolean isConflict = fields.status() == Response.Status.CONFLICT.getStatusCode();
        return Respond.again(
                fields,
                page(about, form, isConflict ? readQuotes.find(about.id()).orElse(null) : null));
    }

    @POST
    @Path("recalculate")
    public PricesPage recalculate(Fields fields) {
        PriceBook book = fields.typed("version").equals("0")
                ? readPriceBooks.inForce(books.today())
                : bookOf(readQuotes.quote(QuoteId.of(fields.typed("id"))));
        QuoteForm form = form(fields, SiteId.of(fields.typed("site")), book);
        return new PricesPage(form, prices(form, book));
    }

    private About about(
            QuoteId id, @Nullable Quote before, SiteId siteId, @Nullable FindingId finding, PriceBook book) {
        Site site = readCustomer.site(siteId);
        return new About(
                id,
                before,
                readCustomer.customer(site.customer()),
                site,
                finding == null ? null : readFindings.finding(finding),
                book);
    }

    private About about(Quote quote) {
        return about(quote.id(), quote, quote.site(), quote.cameFrom(), bookOf(quote));
    }

    private FormPage page(About about, QuoteForm form, @Nullable Quote stored) {
        return new FormPage(about, form, prices(form, about.book()), stored);
    }

    /** The prices of the rows that can be read; what cannot be priced is said in words. */
    private FormPrices prices(QuoteForm form, PriceBook book) {
        List<String> errors = new ArrayList<>();
        Map<String, QuoteScope.Line> lines = form.readable(errors);
        PricedWork work = null;
        try {
            work = lines.isEmpty() ? null : priceWork.preview(book.id(), List.copyOf(lines.values()));
        } catch (Refusal refusal) {
            errors.add(refusal.said());
        }
        if (work == null) {
            return new FormPrices(Map.of(), null, StandardMinutes.ZERO, book.list(), errors);
        }
        Map<String, PricedWork.Line> priced = new HashMap<>();
        Iterator<PricedWork.Line> inOrder = work.lines().iterator();
        lines.keySet().forEach(prefix -> priced.put(prefix, inOrder.next()));
        StandardMinutes minutes = work.lines().stream()
                .map(line -> form.serviceItem(line.serviceItem()).minutesFor(line.quantity()))
                .reduce(StandardMinutes.ZERO, StandardMinutes::plus);
        // A total that leaves a row out would be a false one.
        return new FormPrices(priced, errors.isEmpty() ? work : null, minutes, book.list(), errors);
    }

    /** The book that a change would be priced from. */
    private PriceBook bookOf(Quote quote) {
        return quote.isExpiredOn(books.today())
                ? readPriceBooks.inForce(books.today())
                : readPriceBooks.book(quote.book());
    }

    private QuoteForm form(Fields fields, SiteId site, PriceBook book) {
        return new QuoteForm(
                fields,
                readSurfaces.ofSite(site),
                catalog.serviceItems(),
                book.list(),
                viewer.view().unitOf(Unit.MILE));
    }
}
