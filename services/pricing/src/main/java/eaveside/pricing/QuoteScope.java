package eaveside.pricing;

import eaveside.kernel.Default;
import eaveside.kernel.Elements;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Quantity;
import eaveside.kernel.QuoteLineId;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.Texts;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a quote offers, before it is priced.
 *
 * @param  validUntil last day on which the customer can accept
 * @param  note       shown to the customer
 * @param  travel     none where it is left out
 * @param  lines      at least one, at most {@value #MOST_LINES}, each id once
 */
public record QuoteScope(
        LocalDate validUntil, @Default String note, @Default ExpectedTravel travel, List<Line> lines) {
    public static final int MOST_LINES = 200;

    public QuoteScope {
        travel = travel == null ? ExpectedTravel.NONE : travel;
        note = Texts.optional("note", note, 2000);
        lines = List.copyOf(lines);
        if (lines.isEmpty()) {
            throw new KernelRefusal.NoRows("lines");
        }
        if (lines.size() > MOST_LINES) {
            throw new KernelRefusal.TooMany("lines", lines.size(), MOST_LINES);
        }
        Elements.requireDistinct("lines", lines, "id", Line::id);
    }

    /**
     * A line to be priced.
     *
     * @param  surface what it is done on; null where it concerns no surface that is recorded
     */
    public record Line(
            QuoteLineId id,
            ServiceItemId serviceItem,
            @Nullable SurfaceId surface,
            Quantity quantity) {
        public Line {
            if (!quantity.isPositive()) {
                throw new KernelRefusal.NotPositive("quantity");
            }
        }
    }
}
