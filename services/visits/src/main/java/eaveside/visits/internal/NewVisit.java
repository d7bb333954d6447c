package eaveside.visits.internal;

import eaveside.kernel.CustomerId;
import eaveside.kernel.Elements;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.PriceBookId;
import eaveside.kernel.Quantity;
import eaveside.kernel.QuoteId;
import eaveside.kernel.QuoteLineId;
import eaveside.kernel.ScopeChangeId;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.SiteId;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import eaveside.kernel.VisitLineId;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A visit about to be scheduled: from a quote, without one, or to return for skipped work. */
record NewVisit(
        VisitId id,
        CustomerId customer,
        SiteId site,
        @Nullable QuoteId quote,
        @Nullable PriceBookId priceBook,
        @Nullable VisitId returnsTo,
        LocalDate date,
        List<UserId> crew,
        List<Line> lines,
        String note,
        UserId by) {
    public NewVisit {
        crew = List.copyOf(crew);
        lines = List.copyOf(lines);
        if (lines.isEmpty()) {
            throw new KernelRefusal.NoRows("lines");
        }
        Elements.requireDistinct("lines", lines, "id", Line::id);
    }

    /** Planned work; its quantity is in the service's unit. */
    public record Line(
            VisitLineId id,
            ServiceItemId serviceItem,
            ServiceLineId serviceLine,
            @Nullable SurfaceId surface,
            Quantity quantity,
            @Nullable QuoteLineId quoteLine,
            @Nullable ScopeChangeId returnsFor) {
        public Line {
            if (!quantity.isPositive()) {
                throw new KernelRefusal.NotPositive("quantity");
            }
        }
    }
}
