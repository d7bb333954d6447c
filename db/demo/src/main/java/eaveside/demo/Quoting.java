package eaveside.demo;

import eaveside.customers.ReadSurfaces;
import eaveside.customers.Surface;
import eaveside.kernel.FindingId;
import eaveside.kernel.Quantity;
import eaveside.kernel.QuoteId;
import eaveside.kernel.QuoteLineId;
import eaveside.kernel.Unit;
import eaveside.pricing.AcceptQuote;
import eaveside.pricing.DeclineQuote;
import eaveside.pricing.DraftQuote;
import eaveside.pricing.ExpectedTravel;
import eaveside.pricing.NewQuote;
import eaveside.pricing.Quote;
import eaveside.pricing.QuoteAcceptance;
import eaveside.pricing.QuoteDecline;
import eaveside.pricing.QuoteRevision;
import eaveside.pricing.QuoteScope;
import eaveside.pricing.QuoteSending;
import eaveside.pricing.ReviseQuote;
import eaveside.pricing.SendQuote;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The office's quotes, from the walk-through of the site to the customer's answer. */
@Dependent
class Quoting {
    private static final int VALID_DAYS = 30;

    private final ReadSurfaces readSurfaces;
    private final DraftQuote draftQuote;
    private final ReviseQuote reviseQuote;
    private final SendQuote sendQuote;
    private final AcceptQuote acceptQuote;
    private final DeclineQuote declineQuote;

    @Inject
    Quoting(
            ReadSurfaces readSurfaces,
            DraftQuote draftQuote,
            ReviseQuote reviseQuote,
            SendQuote sendQuote,
            AcceptQuote acceptQuote,
            DeclineQuote declineQuote) {
        this.readSurfaces = readSurfaces;
        this.draftQuote = draftQuote;
        this.reviseQuote = reviseQuote;
        this.sendQuote = sendQuote;
        this.acceptQuote = acceptQuote;
        this.declineQuote = declineQuote;
    }

    /** The surfaces as they are known on the day, those found on visits too. */
    List<Surface> surfaces(DemoSite site) {
        return readSurfaces.ofSite(site.site()).stream().filter(Surface::active).toList();
    }

    Quote make(Scene scene, DemoSite site, List<Wish> wishes, @Nullable FindingId cameFrom) {
        return draftQuote.draft(new NewQuote(
                QuoteId.next(),
                site.customer(),
                site.site(),
                cameFrom,
                scope(scene, site, wishes),
                scene.staff().scheduler()));
    }

    /** The customer wants something else after all. */
    Quote revise(Scene scene, Quote quote, DemoSite site, List<Wish> wishes) {
        return reviseQuote.revise(new QuoteRevision(
                quote.id(),
                quote.version(),
                scope(scene, site, wishes),
                scene.staff().scheduler()));
    }

    private static QuoteScope scope(Scene scene, DemoSite site, List<Wish> wishes) {
        return new QuoteScope(
                scene.day().plusDays(VALID_DAYS),
                "",
                new ExpectedTravel(site.miles() * 4, Quantity.of(site.miles(), Unit.MILE)),
                wishes.stream()
                        .map(wish -> new QuoteScope.Line(
                                QuoteLineId.next(), scene.range().id(wish.work()), wish.surface(), wish.quantity()))
                        .toList());
    }

    Quote send(Scene scene, Quote quote) {
        return sendQuote.send(
                new QuoteSending(quote.id(), quote.version(), scene.staff().scheduler()));
    }

    void accept(Scene scene, Quote quote, String acceptedBy) {
        acceptQuote.accept(new QuoteAcceptance(
                quote.id(), quote.version(), acceptedBy, scene.staff().scheduler()));
    }

    void decline(Scene scene, Quote quote, String reason) {
        declineQuote.decline(new QuoteDecline(
                quote.id(), quote.version(), reason, scene.staff().scheduler()));
    }
}
