package eaveside.web.quotes;

import eaveside.customers.Customer;
import eaveside.customers.ReadCustomer;
import eaveside.customers.Site;
import eaveside.findings.FindingView;
import eaveside.findings.ReadFindings;
import eaveside.kernel.CustomerId;
import eaveside.kernel.QuoteId;
import eaveside.kernel.Slice;
import eaveside.pricing.AcceptQuote;
import eaveside.pricing.DeclineQuote;
import eaveside.pricing.Earnings;
import eaveside.pricing.ExplanationText;
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
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/** The list of quotes; a quote, its paper, and what becomes of it. */
@Path("/quotes")
@Dependent
@Produces(MediaType.TEXT_HTML)
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
     * @param  book     that it is pinned to
     * @param  finding  that it came from
     * @param  earnings for who sees costs, where the cost is known
     */
    public record QuotePage(
            Quote quote,
            Customer customer,
            Site site,
            PriceBook book,
            @Nullable FindingView finding,
            @Nullable Earnings earnings,
            Names names,
            Fields fields)
            implements Page {
        @Override
        public String template() {
            return "quotes/quote.jte";
        }

        public String because(Quote.Line line, View view) {
            return ExplanationText.of(line.explanation(), view.locale());
        }

        public boolean isDraft() {
            return quote.status() == QuoteStatus.DRAFT;
        }

        public boolean isAccepted() {
            return quote.status() == QuoteStatus.ACCEPTED;
        }
    }

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
        return new QuotePage(
                quote,
                readCustomer.customer(quote.customer()),
                readCustomer.site(quote.site()),
                readPriceBooks.book(quote.book()),
                quote.cameFrom() == null ? null : readFindings.finding(quote.cameFrom()),
                viewer.view().cost(quote.earnings().orElse(null)),
                names,
                fields);
    }

    @GET
    @Path("{id}.pdf")
    @Produces(Papers.PDF)
    @Transactional
    public Response pdf(@PathParam("id") QuoteId id) {
        Quote quote = readQuotes.quote(id);
        return Response.ok(papers.quote(quotePapers.paper(quote, viewer.view())))
                .type(Papers.PDF)
                .header(HttpHeaders.CONTENT_DISPOSITION, "inline; filename=\"quote-" + quote.number() + ".pdf\"")
                .build();
    }

    @POST
    @Path("{id}/send")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response send(@PathParam("id") QuoteId id, Form<QuoteSending> form) {
        return changed(id, form, "sent", sendQuote::send);
    }

    @POST
    @Path("{id}/accept")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response accept(@PathParam("id") QuoteId id, Form<QuoteAcceptance> form) {
        return changed(id, form, "accepted", acceptQuote::accept);
    }

    @POST
    @Path("{id}/decline")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
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
