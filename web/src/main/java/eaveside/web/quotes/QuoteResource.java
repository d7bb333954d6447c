package eaveside.web.quotes;

import eaveside.access.Role;
import eaveside.catalog.Catalog;
import eaveside.catalog.ServiceItem;
import eaveside.customers.ReadCustomer;
import eaveside.customers.ReadSurfaces;
import eaveside.findings.ReadFindings;
import eaveside.kernel.QuoteId;
import eaveside.kernel.SurfaceId;
import eaveside.pricing.AcceptQuote;
import eaveside.pricing.DeclineQuote;
import eaveside.pricing.Quote;
import eaveside.pricing.ReadPriceBooks;
import eaveside.pricing.ReadQuotes;
import eaveside.pricing.SendQuote;
import eaveside.reports.Papers;
import eaveside.web.Names;
import eaveside.web.View;
import eaveside.web.forms.Fields;
import eaveside.web.security.AuditLog;
import eaveside.web.security.For;
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
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Collectors;

/** A quote, its paper, and what becomes of it. */
@Path("/quotes")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For({Role.OWNER, Role.OFFICE})
public class QuoteResource {
    private final ReadQuotes readQuotes;
    private final ReadPriceBooks readPriceBooks;
    private final ReadCustomer readCustomer;
    private final ReadSurfaces readSurfaces;
    private final ReadFindings readFindings;
    private final Catalog catalog;
    private final SendQuote sendQuote;
    private final AcceptQuote acceptQuote;
    private final DeclineQuote declineQuote;
    private final QuotePapers quotePapers;
    private final Papers papers;
    private final Names names;
    private final Viewer viewer;
    private final AuditLog auditLog;

    @Inject
    public QuoteResource(
            ReadQuotes readQuotes,
            ReadPriceBooks readPriceBooks,
            ReadCustomer readCustomer,
            ReadSurfaces readSurfaces,
            ReadFindings readFindings,
            Catalog catalog,
            SendQuote sendQuote,
            AcceptQuote acceptQuote,
            DeclineQuote declineQuote,
            QuotePapers quotePapers,
            Papers papers,
            Names names,
            Viewer viewer,
            AuditLog auditLog) {
        this.readQuotes = readQuotes;
        this.readPriceBooks = readPriceBooks;
        this.readCustomer = readCustomer;
        this.readSurfaces = readSurfaces;
        this.readFindings = readFindings;
        this.catalog = catalog;
        this.sendQuote = sendQuote;
        this.acceptQuote = acceptQuote;
        this.declineQuote = declineQuote;
        this.quotePapers = quotePapers;
        this.papers = papers;
        this.names = names;
        this.viewer = viewer;
        this.auditLog = auditLog;
    }

    @GET
    @Path("{id}")
    @Transactional
    public QuotePage quote(@PathParam("id") String id) {
        return page(QuoteId.of(id), Fields.empty());
    }

    private QuotePage page(QuoteId id, Fields fields) {
        Quote quote = readQuotes.quote(id);
        List<SurfaceId> surfaces = quote.lines().stream()
                .map(Quote.Line::surface)
                .filter(Objects::nonNull)
                .distinct()
                .toList();
        View view = viewer.view();
        return new QuotePage(
                quote,
                readCustomer.customer(quote.customer()),
                readCustomer.site(quote.site()),
                readPriceBooks.book(quote.book()),
                quote.cameFrom() == null ? null : readFindings.finding(quote.cameFrom()),
                readSurfaces.surfaces(surfaces),
                catalog.serviceItems().stream().collect(Collectors.toMap(ServiceItem::id, Function.identity())),
                view.cost(quote.earnings().orElse(null)),
                names,
                fields);
    }

    @GET
    @Path("{id}.pdf")
    @Produces(Papers.PDF)
    @Transactional
    public Response pdf(@PathParam("id") String id) {
        Quote quote = readQuotes.quote(QuoteId.of(id));
        return Response.ok(papers.quote(quotePapers.paper(quote, viewer.view())))
                .type(Papers.PDF)
                .header(HttpHeaders.CONTENT_DISPOSITION, "inline; filename=\"quote-" + quote.number() + ".pdf\"")
                .build();
    }

    @POST
    @Path("{id}/send")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response offer(@PathParam("id") String id, MultivaluedMap<String, String> form) {
        QuoteId quote = QuoteId.of(id);
        Fields fields = viewer.fields(form);
        int version = version(fields);
        return answer(quote, fields, "offer", () -> sendQuote.send(new SendQuote.Sending(quote, version, viewer.id())));
    }

    @POST
    @Path("{id}/accept")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response agree(@PathParam("id") String id, MultivaluedMap<String, String> form) {
        QuoteId quote = QuoteId.of(id);
        Fields fields = viewer.fields(form);
        int version = version(fields);
        String words = fields.optional("words");
        return answer(
                quote,
                fields,
                "agree",
                () -> acceptQuote.accept(new AcceptQuote.Acceptance(quote, version, words, viewer.id())));
    }

    @POST
    @Path("{id}/decline")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response decline(@PathParam("id") String id, MultivaluedMap<String, String> form) {
        QuoteId quote = QuoteId.of(id);
        Fields fields = viewer.fields(form);
        int version = version(fields);
        String reason = fields.text("reason");
        return answer(
                quote,
                fields,
                "decline",
                () -> declineQuote.decline(new DeclineQuote.Decline(quote, version, reason, viewer.id())));
    }

    private static int version(Fields fields) {
        return fields.integer("version", 0, Integer.MAX_VALUE);
    }

    /** Back to the quote with a word about what was done, or the quote as it is now with what is in the way. */
    private Response answer(QuoteId quote, Fields fields, String deed, Runnable useCase) {
        if (!fields.run(useCase)) {
            return Response.status(fields.status()).entity(page(quote, fields)).build();
        }
        auditLog.done("quote." + deed, quote);
        return Response.seeOther(URI.create("/quotes/" + quote + "?done=quotes.done-" + deed))
                .build();
    }
}
