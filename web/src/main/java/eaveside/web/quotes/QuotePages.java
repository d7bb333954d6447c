package eaveside.web.quotes;

import eaveside.customers.ReadCustomer;
import eaveside.customers.Site;
import eaveside.findings.FindingView;
import eaveside.findings.ReadFindings;
import eaveside.kernel.CustomerId;
import eaveside.kernel.QuoteId;
import eaveside.kernel.Slice;
import eaveside.pricing.AcceptQuote;
import eaveside.pricing.DeclineQuote;
import eaveside.pricing.PriceBook;
import eaveside.pricing.Quote;
import eaveside.pricing.QuoteAcceptance;
import eaveside.pricing.QuoteChange;
import eaveside.pricing.QuoteDecline;
import eaveside.pricing.QuoteSending;
import eaveside.pricing.QuoteStatus;
import eaveside.pricing.QuoteSummary;
import eaveside.pricing.ReadPriceBooks;
import eaveside.pricing.ReadQuotes;
import eaveside.pricing.SendQuote;
import eaveside.reports.Papers;
import eaveside.web.Names;
import eaveside.web.Page;
import eaveside.web.View;
import eaveside.web.forms.Fields;
import eaveside.web.forms.Form;
import eaveside.web.forms.ListResource;
import eaveside.web.forms.Listing;
import eaveside.web.forms.Respond;
import eaveside.web.security.Roles;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/** The list of quotes; a quote, its paper, and what becomes of it. */
@Path("/quotes")
@Dependent
@Produces(MediaType.TEXT_HTML)
@Consumes(MediaType.APPLICATION_FORM_URLENCODED)
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class QuotePages extends ListResource<QuoteSummary> {
    @Inject
    ReadQuotes readQuotes;

    @Inject
    ReadPriceBooks readPriceBooks;

    @Inject
    ReadCustomer readCustomer;

    @Inject
    ReadFindings readFindings;

    @Inject
    SendQuote sendQuote;

    @Inject
    AcceptQuote acceptQuote;

    @Inject
    DeclineQuote declineQuote;

    @Inject
    QuotePapers quotePapers;

    @Inject
    Papers papers;

    @Inject
    Names names;

    /**
     * A quote whole.
     *
     * @param  book    that it is pinned to
     * @param  finding that it came from
     */
    public record QuotePage(
            Quote quote,
            Site site,
            PriceBook book,
            @Nullable FindingView finding,
            Names names,
            Fields fields) implements Page {}

    @Override
    protected Listing<QuoteSummary> list() {
        View view = viewer.view();
        String customer = asked.getQueryParameters().getFirst("customer");
        return Listing.of("quotes", "/quotes", this::read)
                .searched()
                .kept("customer")
                .choice("status", QuoteStatus.class)
                .column("number", quote -> String.valueOf(quote.number()), quote -> "/quotes/" + quote.id())
                .columns("date", "customerName", "siteName", "total")
                .column(
                        "status",
                        quote -> quote.isExpiredOn(view.today())
                                ? view.t("quotes.expired")
                                : view.t("quotes.status", quote.status()))
                .columns("validUntil")
                .action("new", "/quotes/new" + (customer == null ? "" : "?customer=" + CustomerId.of(customer)));
    }

    private Slice<QuoteSummary> read(Listing.Query query) {
        String customer = query.value("customer");
        return readQuotes.list(
                new ReadQuotes.Query(
                        query.chosen("status", QuoteStatus.class),
                        customer.isEmpty() ? null : CustomerId.of(customer),
                        query.search()),
                query.after(),
                query.size());
    }

    @GET
    @Path("{id}")
    @Transactional
    public QuotePage quote(@PathParam("id") QuoteId id) {
        return page(id, Fields.empty());
    }

    private QuotePage page(QuoteId id, Fields fields) {
        Quote quote = readQuotes.quote(id);
        names.lookUpWork(quote.site());
        return new QuotePage(
                quote,
                readCustomer.site(quote.site()),
                readPriceBooks.book(quote.book()),
                quote.cameFrom() == null ? null : readFindings.finding(quote.cameFrom()),
                names,
                fields);
    }

    @GET
    @Path("{id}.pdf")
    @Produces(Papers.PDF)
    @Transactional
    public Response pdf(@PathParam("id") QuoteId id) {
        Quote quote = readQuotes.quote(id);
        return Respond.inline(
                papers.quote(quotePapers.paper(quote, viewer.view())), Papers.PDF, "quote-" + quote.number() + ".pdf");
    }

    @POST
    @Path("{id}/send")
    public Response send(@PathParam("id") QuoteId id, Form<QuoteSending> form) {
        return changed(id, form, "sent", sendQuote::send);
    }

    @POST
    @Path("{id}/accept")
    public Response accept(@PathParam("id") QuoteId id, Form<QuoteAcceptance> form) {
        return changed(id, form, "accepted", acceptQuote::accept);
    }

    @POST
    @Path("{id}/decline")
    public Response decline(@PathParam("id") QuoteId id, Form<QuoteDecline> form) {
        return changed(id, form, "declined", declineQuote::decline);
    }

    /** Back to the quote with a word about what was done, or the quote as it is now with what is in the way. */
    private <C extends QuoteChange> Response changed(QuoteId id, Form<C> form, String done, Consumer<C> useCase) {
        return form.labeled("quotes").run(useCase)
                ? Respond.to("/quotes/" + id, "quotes.done-" + done)
                : Respond.again(form.fields(), page(id, form.fields()));
    }
}
