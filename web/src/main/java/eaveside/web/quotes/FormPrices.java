package eaveside.web.quotes;

import eaveside.catalog.StandardMinutes;
import eaveside.kernel.Money;
import eaveside.kernel.UnitPrice;
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
        Map<String, Line> lines,
        @Nullable PricedWork work,
        StandardMinutes minutes,
        PriceList book,
        List<String> errors) {
    /** The price of a row with the sentence that explains it. */
    public record Line(UnitPrice unitPrice, Money net, String because) {}

    public @Nullable Line line(String prefix) {
        return lines.get(prefix);
    }

    /** What was added to reach minimums. */
    public Money topUp() {
        return work == null
                ? Money.zero(book.currency())
                : Money.sum(
                        book.currency(),
                        work.lines().stream().map(PricedWork.Line::topUp).toList());
    }

    public Money beforeTopUp() {
        return work == null ? Money.zero(book.currency()) : work.total().minus(topUp());
    }

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
