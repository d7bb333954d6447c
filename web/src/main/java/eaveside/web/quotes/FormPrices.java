package eaveside.web.quotes;

import eaveside.catalog.StandardMinutes;
import eaveside.pricing.PriceList;
import eaveside.pricing.PricedWork;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * The prices of a form that is still being written.
 *
 * @param  lines   by the prefix of the row's fields
 * @param  work    null where nothing is selected yet, or something is wrong
 * @param  book    what they are from
 * @param  errors  why there are no prices
 */
public record FormPrices(
        Map<String, PricedWork.Line> lines,
        @Nullable PricedWork work,
        StandardMinutes minutes,
        PriceList book,
        List<String> errors) {
    /** Whether several services share the visit, and the book rewards that. */
    public boolean isReduced() {
        return work != null
                && !book.sharedReduction().isZero()
                && work.lines().stream()
                                .map(PricedWork.Line::serviceLine)
                                .distinct()
                                .count()
                        > 1;
    }
}
