package eaveside.web.prices;

import eaveside.catalog.Catalog;
import eaveside.catalog.ServiceItem;
import eaveside.catalog.ServiceLine;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.UnitPrice;
import eaveside.pricing.LineMinimum;
import eaveside.pricing.PriceList;
import eaveside.pricing.QuantityStep;
import eaveside.pricing.ServiceItemPrice;
import eaveside.pricing.Surcharge;
import eaveside.web.View;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * Two price lists side by side.
 *
 * @param  rows what either of them says, in reading order
 */
public record Comparison(List<Row> rows) {
    private static final int DECIMALS = 1;

    /**
     * One price, minimum or surcharge.
     *
     * @param  what    the service, or what else it is about
     * @param  detail  the quantity or the condition; may be empty
     * @param  before  empty where the old list does not have it
     * @param  after   empty where the new list does not have it
     * @param  percent by how much a price or minimum changed; null where that says nothing
     */
    public record Row(
            String what,
            String detail,
            String before,
            String after,
            @Nullable BigDecimal percent) {
        public boolean isChanged() {
            return !before.equals(after);
        }

        /** Such as "+4.5%"; empty where nothing is to be said. */
        public String change(View view) {
            return percent == null || percent.signum() == 0
                    ? ""
                    : (percent.signum() > 0 ? "+" : "−") + view.number(percent.abs()) + "%";
        }
    }

    public long changes() {
        return rows.stream().filter(Row::isChanged).count();
    }

    static Comparison of(PriceList before, PriceList after, Catalog catalog, View view) {
        List<Row> rows = new ArrayList<>();
        rows.add(minimum(view.t("prices.visitMinimum"), before.visitMinimum(), after.visitMinimum(), view));
        rows.add(new Row(
                view.t("prices.sharedReduction"),
                "",
                view.percent(before.sharedReduction()),
                view.percent(after.sharedReduction()),
                null));
        for (ServiceLine line : catalog.lines()) {
            Money old = before.minimumOf(line.id()).map(LineMinimum::amount).orElse(null);
            Money now = after.minimumOf(line.id()).map(LineMinimum::amount).orElse(null);
            if (old != null || now != null) {
                rows.add(minimum(view.t("prices.line-minimum", line.name()), old, now, view));
            }
        }
        for (ServiceItem serviceItem : catalog.serviceItems()) {
            ServiceItemPrice old = before.priceOf(serviceItem.id()).orElse(null);
            ServiceItemPrice now = after.priceOf(serviceItem.id()).orElse(null);
            steps(serviceItem, old, now, view, rows);
            surcharges(serviceItem, old, now, view, rows);
        }
        return new Comparison(rows);
    }

    private static Row minimum(String what, @Nullable Money old, @Nullable Money now, View view) {
        return new Row(
                what,
                "",
                old == null ? "" : view.money(old),
                now == null ? "" : view.money(now),
                old == null || now == null ? null : change(old.amount(), now.amount()));
    }

    /** A row for each quantity at which either list has a step, with the price that each asks there. */
    private static void steps(
            ServiceItem serviceItem,
            @Nullable ServiceItemPrice old,
            @Nullable ServiceItemPrice now,
            View view,
            List<Row> rows) {
        TreeMap<BigDecimal, Quantity> thresholds = new TreeMap<>();
        for (ServiceItemPrice price : of(old, now)) {
            for (QuantityStep step : price.steps()) {
                Quantity from = step.from().in(serviceItem.unit());
                thresholds.put(from.value(), from);
            }
        }
        for (Quantity from : thresholds.values()) {
            UnitPrice was = old == null ? null : old.stepAt(from).price();
            UnitPrice is = now == null ? null : now.stepAt(from).price();
            rows.add(new Row(
                    serviceItem.name(),
                    thresholds.size() == 1
                            ? ""
                            : from.isZero()
                                    ? view.t("prices.lowest")
                                    : view.t("prices.from-quantity", view.exactly(from)),
                    was == null ? "" : PriceWords.price(view, was),
                    is == null ? "" : PriceWords.price(view, is),
                    was == null || is == null ? null : change(perOne(was, serviceItem), perOne(is, serviceItem))));
        }
    }

    private static void surcharges(
            ServiceItem serviceItem,
            @Nullable ServiceItemPrice old,
            @Nullable ServiceItemPrice now,
            View view,
            List<Row> rows) {
        Map<String, String> was = rates(old, view);
        Map<String, String> is = rates(now, view);
        Map<String, String> either = new LinkedHashMap<>(was);
        either.putAll(is);
        for (String when : either.keySet()) {
            rows.add(new Row(serviceItem.name(), when, was.getOrDefault(when, ""), is.getOrDefault(when, ""), null));
        }
    }

    private static Map<String, String> rates(@Nullable ServiceItemPrice price, View view) {
        Map<String, String> rates = new LinkedHashMap<>();
        if (price != null) {
            for (Surcharge surcharge : price.surcharges()) {
                rates.put(PriceWords.when(view, surcharge), PriceWords.rate(view, surcharge));
            }
        }
        return rates;
    }

    private static List<ServiceItemPrice> of(@Nullable ServiceItemPrice old, @Nullable ServiceItemPrice now) {
        List<ServiceItemPrice> prices = new ArrayList<>();
        if (old != null) {
            prices.add(old);
        }
        if (now != null) {
            prices.add(now);
        }
        return prices;
    }

    /** For the comparison only: two lists may price by unlike base quantities. */
    private static BigDecimal perOne(UnitPrice price, ServiceItem serviceItem) {
        BigDecimal base = price.base().exactlyIn(serviceItem.unit());
        return price.amount().divide(base, MathContext.DECIMAL64);
    }

    private static @Nullable BigDecimal change(BigDecimal old, BigDecimal now) {
        return old.signum() == 0
                ? null
                : now.subtract(old)
                        .multiply(BigDecimal.valueOf(100))
                        .divide(old, MathContext.DECIMAL64)
                        .setScale(DECIMALS, RoundingMode.HALF_UP);
    }
}
