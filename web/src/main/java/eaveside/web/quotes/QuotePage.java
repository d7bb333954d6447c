package eaveside.web.quotes;

import eaveside.catalog.ServiceItem;
import eaveside.customers.Customer;
import eaveside.customers.Site;
import eaveside.customers.Surface;
import eaveside.findings.FindingView;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.SurfaceId;
import eaveside.pricing.Earnings;
import eaveside.pricing.ExplanationText;
import eaveside.pricing.PriceBook;
import eaveside.pricing.Quote;
import eaveside.pricing.QuoteStatus;
import eaveside.web.Names;
import eaveside.web.Page;
import eaveside.web.View;
import eaveside.web.forms.Fields;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * A quote whole.
 *
 * @param  book     that it is pinned to
 * @param  finding  that it came from
 * @param  earnings for the owner, where the cost is known
 */
public record QuotePage(
        Quote quote,
        Customer customer,
        Site site,
        PriceBook book,
        @Nullable FindingView finding,
        Map<SurfaceId, Surface> surfaces,
        Map<ServiceItemId, ServiceItem> serviceItems,
        @Nullable Earnings earnings,
        Names names,
        Fields fields)
        implements Page {
    @Override
    public String template() {
        return "quotes/quote.jte";
    }

    public String serviceItem(Quote.Line line) {
        ServiceItem serviceItem = serviceItems.get(line.serviceItem());
        return serviceItem == null ? "" : serviceItem.name();
    }

    /** The surface's name; empty where the line is on none that is recorded. */
    public String surface(Quote.Line line) {
        Surface surface = line.surface() == null ? null : surfaces.get(line.surface());
        return surface == null ? "" : surface.name();
    }

    public String because(Quote.Line line, View view) {
        return ExplanationText.of(line.explanation(), view.locale());
    }

    public boolean isExpired(View view) {
        return quote.isExpiredOn(view.today());
    }

    public boolean isDraft() {
        return quote.status() == QuoteStatus.DRAFT;
    }

    public boolean isAccepted() {
        return quote.status() == QuoteStatus.ACCEPTED;
    }
}
