package eaveside.pricing;

import eaveside.kernel.CustomerId;
import eaveside.kernel.FindingId;
import eaveside.kernel.QuoteId;
import eaveside.kernel.SiteId;
import eaveside.kernel.UserId;
import org.jspecify.annotations.Nullable;

/**
 * A new quote.
 *
 * @param  cameFrom the finding that it answers
 */
public record NewQuote(
        QuoteId id,
        CustomerId customer,
        SiteId site,
        @Nullable FindingId cameFrom,
        QuoteScope scope,
        UserId by) {}
