package eaveside.web.prices;

import eaveside.catalog.StandardMinutes;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.QuoteLineId;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.UnitPrice;
import eaveside.pricing.ExplanationText;
import eaveside.pricing.PricedWork;
import eaveside.pricing.Quote;
import eaveside.web.View;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * A priced line as scripts get it, net of tax, with the sentence that explains its price.
 *
 * @param  id              of a line of a quote; absent where prices were only asked for, as are the last two
 * @param  standardMinutes labor minutes by the company's standard
 * @param  expectedCost    absent also where it is not known, and for who may not see costs
 */
public record LineAnswer(
        @Nullable QuoteLineId id,
        ServiceItemId serviceItem,
        ServiceLineId serviceLine,
        @Nullable SurfaceId surface,
        Quantity quantity,
        UnitPrice unitPrice,
        Money netBeforeTopUp,
        Money topUp,
        Money net,
        String explanation,
        @Nullable StandardMinutes standardMinutes,
        @Nullable Money expectedCost) {
    static LineAnswer of(PricedWork.Line line, Locale locale) {
        return new LineAnswer(
                null,
                line.serviceItem(),
                line.serviceLine(),
                null,
                line.quantity(),
                line.unitPrice(),
                line.netBeforeTopUp(),
                line.topUp(),
                line.net(),
                ExplanationText.of(line.explanation(), locale),
                null,
                null);
    }

    public static LineAnswer of(Quote.Line line, View view) {
        return new LineAnswer(
                line.id(),
                line.serviceItem(),
                line.serviceLine(),
                line.surface(),
                line.quantity(),
                line.unitPrice(),
                line.netBeforeTopUp(),
                line.topUp(),
                line.net(),
                ExplanationText.of(line.explanation(), view.locale()),
                line.standardMinutes(),
                view.cost(line.expectedCost()));
    }
}
