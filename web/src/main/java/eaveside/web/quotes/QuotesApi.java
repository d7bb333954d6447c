package eaveside.web.quotes;

import eaveside.catalog.StandardMinutes;
import eaveside.kernel.CustomerId;
import eaveside.kernel.FindingId;
import eaveside.kernel.Money;
import eaveside.kernel.Percent;
import eaveside.kernel.PriceBookId;
import eaveside.kernel.QuoteId;
import eaveside.kernel.Records;
import eaveside.kernel.SiteId;
import eaveside.kernel.Slice;
import eaveside.pricing.AcceptQuote;
import eaveside.pricing.DeclineQuote;
import eaveside.pricing.DraftQuote;
import eaveside.pricing.Earnings;
import eaveside.pricing.ExpectedTravel;
import eaveside.pricing.NewQuote;
import eaveside.pricing.Quote;
import eaveside.pricing.QuoteAcceptance;
import eaveside.pricing.QuoteDecline;
import eaveside.pricing.QuoteRevision;
import eaveside.pricing.QuoteSending;
import eaveside.pricing.QuoteStatus;
import eaveside.pricing.QuoteSummary;
import eaveside.pricing.ReadQuotes;
import eaveside.pricing.ReviseQuote;
import eaveside.pricing.SendQuote;
import eaveside.web.View;
import eaveside.web.forms.Created;
import eaveside.web.prices.LineAnswer;
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
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** Quotes for scripts. */
@Path("/api/quotes")
@Dependent
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@Tag(name = "Quotes")
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class QuotesApi {
    private static final int PAGE = 50;

    @Inject
    ReadQuotes readQuotes;

    @Inject
    DraftQuote draftQuote;

    @Inject
    ReviseQuote reviseQuote;

    @Inject
    SendQuote sendQuote;

    @Inject
    AcceptQuote acceptQuote;

    @Inject
    DeclineQuote declineQuote;

    @Inject
    Viewer viewer;

    /** A page of the list; ask for more with {@code after=next}. */
    public record Listed(
            List<QuoteSummary> quotes, @Nullable String next) {}

    /**
     * A quote as scripts get it, net of tax.
     *
     * @param  expectedCost   absent where it is not known and for who may not see costs, as is the margin
     * @param  expectedMargin in per cent of the price
     * @param  decision       on an accepted or declined quote
     */
    public record QuoteAnswer(
            QuoteId id,
            long number,
            int version,
            QuoteStatus status,
            CustomerId customer,
            SiteId site,
            PriceBookId book,
            LocalDate date,
            LocalDate validUntil,
            @Nullable FindingId cameFrom,
            String note,
            ExpectedTravel travel,
            List<LineAnswer> lines,
            Money total,
            StandardMinutes expectedMinutes,
            @Nullable Money expectedCost,
            @Nullable Percent expectedMargin,
            Quote.@Nullable Decision decision) {
        static QuoteAnswer of(Quote quote, View view) {
            Map<String, @Nullable Object> parts = Records.values(quote);
            parts.put(
                    "lines",
                    quote.lines().stream()
                            .map(line -> LineAnswer.of(line, view))
                            .toList());
            parts.put("expectedCost", view.cost(quote.expectedCost()));
            parts.put(
                    "expectedMargin",
                    view.cost(quote.earnings().flatMap(Earnings::margin).orElse(null)));
            return Records.make(QuoteAnswer.class, parts);
        }
    }

    @GET
    @Transactional
    @Operation(
            summary = "Lists quotes, the newest first",
            description = "Narrowed by a status, a customer, and a number or words of a customer's name as 'q'.")
    public Listed list(
            @QueryParam("status") @Nullable QuoteStatus status,
            @QueryParam("customer") @Nullable CustomerId customer,
            @QueryParam("q") @DefaultValue("") String search,
            @QueryParam("after") @Nullable String after) {
        Slice<QuoteSummary> page = readQuotes.list(new ReadQuotes.Query(status, customer, search), after, PAGE);
        return new Listed(page.rows(), page.next());
    }

    @GET
    @Path("{id}")
    @Transactional
    @Operation(summary = "Reads a quote with its lines, each with the sentence that explains its price")
    public QuoteAnswer quote(@PathParam("id") QuoteId id) {
        return answer(readQuotes.quote(id));
    }

    @POST
    @Operation(
            summary = "Makes a quote as a draft, priced from the price book in force; the same again changes nothing")
    public Created<QuoteAnswer> draft(NewQuote quote) {
        return Created.at("/api/quotes/" + quote.id(), answer(draftQuote.draft(quote)));
    }

    @PUT
    @Path("{id}")
    @Operation(summary = "Revises the version of an open quote that is named; the same again changes nothing")
    public QuoteAnswer revise(QuoteRevision revise) {
        return answer(reviseQuote.revise(revise));
    }

    @POST
    @Path("{id}/send")
    @Operation(summary = "Records that the quote was sent to the customer; the same again changes nothing")
    public QuoteAnswer send(QuoteSending sending) {
        return answer(sendQuote.send(sending));
    }

    @POST
    @Path("{id}/accept")
    @Operation(summary = "Records that the customer accepted the quote; the same again changes nothing")
    public QuoteAnswer accept(QuoteAcceptance acceptance) {
        return answer(acceptQuote.accept(acceptance));
    }

    @POST
    @Path("{id}/decline")
    @Operation(summary = "Records that the quote was declined, and why; the same again changes nothing")
    public QuoteAnswer decline(QuoteDecline decline) {
        return answer(declineQuote.decline(decline));
    }

    private QuoteAnswer answer(Quote quote) {
        return QuoteAnswer.of(quote, viewer.view());
    }
}
