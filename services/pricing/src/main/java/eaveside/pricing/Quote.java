package eaveside.pricing;

import eaveside.catalog.StandardMinutes;
import eaveside.kernel.CustomerId;
import eaveside.kernel.FindingId;
import eaveside.kernel.Money;
import eaveside.kernel.PriceBookId;
import eaveside.kernel.Quantity;
import eaveside.kernel.QuoteId;
import eaveside.kernel.QuoteLineId;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.SiteId;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.UnitPrice;
import eaveside.kernel.UserId;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * A quote with its prices, net of tax.
 *
 * @param  number       in a series of its own, gapless from 1
 * @param  version      to send back with the next change
 * @param  book         the price book that it was priced from and stays with until it expires
 * @param  cameFrom     the finding that it answers
 * @param  total        of the lines
 * @param  expectedCost labor, travel, overhead and consumables of one visit for all of it, at what was known when it was
 *                     priced; null where no cost rates were set or a consumable had never been bought
 * @param  decision     on an accepted or declined quote
 */
public record Quote(
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
        List<Line> lines,
        Money total,
        StandardMinutes expectedMinutes,
        @Nullable Money expectedCost,
        @Nullable Decision decision) {
    public Quote {
        lines = List.copyOf(lines);
        Money sum = Money.sum(total.currency(), lines.stream().map(Line::net).toList());
        StandardMinutes minutes =
                lines.stream().map(Line::standardMinutes).reduce(StandardMinutes.ZERO, StandardMinutes::plus);
        if (!sum.equals(total) || !minutes.equals(expectedMinutes)) {
            throw new PricingRefusal.Unexplained();
        }
    }

    /**
     * A line of a quote.
     *
     * @param  net             before and after its share of what is missing to minimums
     * @param  standardMinutes labor minutes by the company's standard
     */
    public record Line(
            QuoteLineId id,
            ServiceItemId serviceItem,
            ServiceLineId serviceLine,
            @Nullable SurfaceId surface,
            Quantity quantity,
            UnitPrice unitPrice,
            Money netBeforeTopUp,
            Money topUp,
            Money net,
            Explanation explanation,
            StandardMinutes standardMinutes,
            @Nullable Money expectedCost) {}

    /** What the customer, or the company, said in the end. */
    public record Decision(String words, UserId by, Instant at) {}

    /** Whether it has expired by that day. */
    public boolean isExpiredOn(LocalDate day) {
        return status.isOpen() && validUntil.isBefore(day);
    }

    /** What it offers, as a revision would start from it. */
    public QuoteScope scope() {
        return new QuoteScope(
                validUntil,
                note,
                travel,
                lines.stream()
                        .map(line ->
                                new QuoteScope.Line(line.id(), line.serviceItem(), line.surface(), line.quantity()))
                        .toList());
    }

    /** The price against the expected cost, where that is known. */
    public Optional<Earnings> earnings() {
        return Optional.ofNullable(expectedCost).map(cost -> new Earnings(total, cost));
    }
}
