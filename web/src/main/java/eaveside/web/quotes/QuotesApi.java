package eaveside.web.quotes;

import eaveside.access.Role;
import eaveside.kernel.CustomerId;
import eaveside.kernel.FindingId;
import eaveside.kernel.QuoteId;
import eaveside.kernel.SiteId;
import eaveside.kernel.Slice;
import eaveside.pricing.AcceptQuote;
import eaveside.pricing.DeclineQuote;
import eaveside.pricing.DraftQuote;
import eaveside.pricing.Quote;
import eaveside.pricing.QuoteStatus;
import eaveside.pricing.ReadQuotes;
import eaveside.pricing.ReviseQuote;
import eaveside.pricing.SendQuote;
import eaveside.web.quotes.QuoteJson.Decision;
import eaveside.web.quotes.QuoteJson.Make;
import eaveside.web.quotes.QuoteJson.Revise;
import eaveside.web.quotes.QuoteJson.Shown;
import eaveside.web.quotes.QuoteJson.Summaries;
import eaveside.web.security.AuditLog;
import eaveside.web.security.For;
import eaveside.web.security.Viewer;
import eaveside.web.security.WebRefusal;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** Quotes for scripts. */
@Path("/api/quotes")
@Dependent
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@Tag(name = "Quotes")
@For({Role.OWNER, Role.OFFICE})
public class QuotesApi {
    private static final int PAGE = 50;

    private final ReadQuotes readQuotes;
    private final DraftQuote draftQuote;
    private final ReviseQuote reviseQuote;
    private final SendQuote sendQuote;
    private final AcceptQuote acceptQuote;
    private final DeclineQuote declineQuote;
    private final QuoteJson json;
    private final Viewer viewer;
    private final AuditLog auditLog;

    @Inject
    public QuotesApi(
            ReadQuotes readQuotes,
            DraftQuote draftQuote,
            ReviseQuote reviseQuote,
            SendQuote sendQuote,
            AcceptQuote acceptQuote,
            DeclineQuote declineQuote,
            QuoteJson json,
            Viewer viewer,
            AuditLog auditLog) {
        this.readQuotes = readQuotes;
        this.draftQuote = draftQuote;
        this.reviseQuote = reviseQuote;
        this.sendQuote = sendQuote;
        this.acceptQuote = acceptQuote;
        this.declineQuote = declineQuote;
        this.json = json;
        this.viewer = viewer;
        this.auditLog = auditLog;
    }

    @GET
    @Transactional
    @Operation(summary = "Lists quotes, the newest first: all, those of one status, or those of one customer")
    public Summaries list(
            @QueryParam("status") @Nullable String status,
            @QueryParam("customer") @Nullable String customer,
            @QueryParam("after") @Nullable String after) {
        if (customer != null && status != null) {
            throw new WebRefusal.Unreadable("Ask for one status or for one customer, not both");
        }
        Slice<ReadQuotes.Summary> quotes = customer == null
                ? readQuotes.list(status == null ? null : status(status), after, PAGE)
                : readQuotes.ofCustomer(CustomerId.of(customer), after, PAGE);
        return Summaries.of(quotes);
    }

    private static QuoteStatus status(String name) {
        try {
            return QuoteStatus.valueOf(name);
        } catch (IllegalArgumentException e) {
            throw new WebRefusal.Unreadable("There is no status '" + name + "'");
        }
    }

    @GET
    @Path("{id}")
    @Transactional
    @Operation(summary = "Reads a quote with its lines, each with the sentence that explains its price")
    public Shown quote(@PathParam("id") String id) {
        return shown(readQuotes.quote(QuoteId.of(id)));
    }

    @POST
    @Operation(summary = "Makes a quote as a draft, priced from the price book in force")
    public Response make(@Nullable Make body) {
        Make make = QuoteJson.present(body);
        Quote quote = draftQuote.draft(new DraftQuote.NewQuote(
                QuoteId.of(QuoteJson.named("id", make.id())),
                CustomerId.of(QuoteJson.named("customer", make.customer())),
                SiteId.of(QuoteJson.named("site", make.site())),
                make.cameFrom() == null ? null : FindingId.of(make.cameFrom()),
                json.scope(make.scope()),
                viewer.id()));
        auditLog.done("quote.draft", quote.id());
        return Response.created(URI.create("/api/quotes/" + quote.id()))
                .entity(shown(quote))
                .build();
    }

    @PUT
    @Path("{id}")
    @Operation(summary = "Revises an open quote; names the version that the change started from")
    public Shown revise(@PathParam("id") String id, @Nullable Revise body) {
        Revise revise = QuoteJson.present(body);
        Quote quote = reviseQuote.revise(new ReviseQuote.Revise(
                QuoteId.of(id), QuoteJson.named("version", revise.version()), json.scope(revise.scope()), viewer.id()));
        auditLog.done("quote.revise", quote.id());
        return shown(quote);
    }

    @POST
    @Path("{id}/send")
    @Operation(summary = "Records that the quote was given to the customer")
    public Shown offer(@PathParam("id") String id, @Nullable Decision body) {
        Decision decision = QuoteJson.present(body);
        Quote quote = sendQuote.send(
                new SendQuote.Sending(QuoteId.of(id), QuoteJson.named("version", decision.version()), viewer.id()));
        auditLog.done("quote.send", quote.id());
        return shown(quote);
    }

    @POST
    @Path("{id}/accept")
    @Operation(summary = "Records that the customer agreed")
    public Shown agree(@PathParam("id") String id, @Nullable Decision body) {
        Decision decision = QuoteJson.present(body);
        Quote quote = acceptQuote.accept(new AcceptQuote.Acceptance(
                QuoteId.of(id),
                QuoteJson.named("version", decision.version()),
                decision.words() == null ? "" : decision.words(),
                viewer.id()));
        auditLog.done("quote.accept", quote.id());
        return shown(quote);
    }

    @POST
    @Path("{id}/decline")
    @Operation(summary = "Records that nothing comes of the quote, and why")
    public Shown decline(@PathParam("id") String id, @Nullable Decision body) {
        Decision decision = QuoteJson.present(body);
        Quote quote = declineQuote.decline(new DeclineQuote.Decline(
                QuoteId.of(id),
                QuoteJson.named("version", decision.version()),
                decision.words() == null ? "" : decision.words(),
                viewer.id()));
        auditLog.done("quote.decline", quote.id());
        return shown(quote);
    }

    private Shown shown(Quote quote) {
        return Shown.of(quote, viewer.view());
    }
}
