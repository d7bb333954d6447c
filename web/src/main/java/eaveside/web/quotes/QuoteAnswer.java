package eaveside.web.quotes;

import eaveside.catalog.StandardMinutes;
import eaveside.kernel.CustomerId;
import eaveside.kernel.FindingId;
import eaveside.kernel.Money;
import eaveside.kernel.Percent;
import eaveside.kernel.PriceBookId;
import eaveside.kernel.QuoteId;
import eaveside.kernel.SiteId;
import eaveside.pricing.Earnings;
import eaveside.pricing.ExpectedTravel;
import eaveside.pricing.Quote;
import eaveside.pricing.QuoteStatus;
import eaveside.web.View;
import eaveside.web.prices.LineAnswer;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

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
        return new QuoteAnswer(
                quote.id(),
                quote.number(),
                quote.version(),
                quote.status(),
                quote.customer(),
                quote.site(),
                quote.book(),
                quote.date(),
                quote.validUntil(),
                quote.cameFrom(),
                quote.note(),
                quote.travel(),
                quote.lines().stream().map(line -> LineAnswer.of(line, view)).toList(),
                quote.total(),
                quote.expectedMinutes(),
                view.cost(quote.expectedCost()),
                view.cost(quote.earnings().flatMap(Earnings::margin).orElse(null)),
                quote.decision());
    }
}
