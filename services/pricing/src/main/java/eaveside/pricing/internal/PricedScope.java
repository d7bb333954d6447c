package eaveside.pricing.internal;

import eaveside.catalog.StandardMinutes;
import eaveside.kernel.Money;
import eaveside.kernel.PriceBookId;
import eaveside.pricing.Quote;
import eaveside.pricing.QuoteScope;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A quote's scope with its prices and expected cost. */
public record PricedScope(
        PriceBookId book,
        QuoteScope scope,
        List<Quote.Line> lines,
        Money total,
        StandardMinutes expectedMinutes,
        @Nullable Money expectedCost) {
    public PricedScope {
        lines = List.copyOf(lines);
    }
}
