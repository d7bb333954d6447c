package eaveside.web.prices;

import eaveside.catalog.Catalog;
import eaveside.catalog.ServiceItem;
import eaveside.catalog.ServiceLine;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.UnitPrice;
import eaveside.pricing.LineMinimum;
import eaveside.pricing.PriceList;
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
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Two price lists side by side.
 *
 * @param  before what the old list is called, and {@code after} the new one
 * @param  rows   what either of them says, in reading order
 */
public record Comparison(String before, String after, List<Row> rows) {
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

    /** The same of two lists that are called otherwise. */
    Comparison named(String old, String now) {
        return new Comparison(old, now, rows);
    }

    static Comparison of(PriceList before, PriceList after, Catalog catalog, View view) {
        List<Row> rows = new ArrayList<>();
        rows.add(minimum(
                view.t("prices.visitMinimum"),
                new Both<>(Optional.of(before.visitMinimum()), Optional.of(after.visitMinimum())),
                view));
        rows.add(new Row(
                view.t("prices.sharedReduction"),
                "",
                view.percent(before.sharedReduction()),
                view.percent(after.sharedReduction()),
                null));
        for (ServiceLine line : catalog.lines()) {
            Both<Money> minimums =
                    new Both<>(before.minimumOf(line.id()), after.minimumOf(line.id())).map(LineMinimum::amount);
            if (minimums.either().findAny().isPresent()) {
                rows.add(minimum(view.t("prices.line-minimum", line.name()), minimums, view));
            }
        }
        for (ServiceItem item : catalog.serviceItems()) {
            Both<ServiceItemPrice> prices = new Both<>(before.priceOf(item.id()), after.priceOf(item.id()));
            rows.addAll(steps(item, prices, view));
            rows.addAll(surcharges(item, prices, view));
        }
        return new Comparison(before.name(), after.name(), rows);
    }

    private static Row minimum(String what, Both<Money> minimums, View view) {
        return minimums.row(what, "", view::money, Money::amount);
    }

    /** A row for each quantity at which either list has a step, with the price that each asks there. */
    private static List<Row> steps(ServiceItem item, Both<ServiceItemPrice> prices, View view) {
        TreeSet<Quantity> thresholds = prices.either()
                .flatMap(price -> price.steps().stream())
                .map(step -> step.from().in(item.unit()))
                .collect(Collectors.toCollection(TreeSet::new));
        List<Row> rows = new ArrayList<>();
        for (Quantity from : thresholds) {
            String detail =
                    from.isZero() ? view.t("prices.lowest") : view.t("prices.from-quantity", view.exactly(from));
            rows.add(prices.map(price -> price.stepAt(from).price())
                    .row(
                            item.name(),
                            thresholds.size() == 1 ? "" : detail,
                            price -> PriceWords.price(view, price),
                            price -> perOne(price, item)));
        }
        return rows;
    }

    private static List<Row> surcharges(ServiceItem item, Both<ServiceItemPrice> prices, View view) {
        Map<String, String> was = rates(prices.old(), view);
        Map<String, String> is = rates(prices.now(), view);
        return Stream.concat(was.keySet().stream(), is.keySet().stream())
                .distinct()
                .map(when -> new Row(item.name(), when, was.getOrDefault(when, ""), is.getOrDefault(when, ""), null))
                .toList();
    }

    private static Map<String, String> rates(Optional<ServiceItemPrice> price, View view) {
        Map<String, String> rates = new LinkedHashMap<>();
        for (Surcharge surcharge : price.map(ServiceItemPrice::surcharges).orElse(List.of())) {
            rates.put(PriceWords.when(view, surcharge), PriceWords.rate(view, surcharge));
        }
        return rates;
    }

    /** For the comparison only: two lists may price by unlike base quantities. */
    private static BigDecimal perOne(UnitPrice price, ServiceItem item) {
        return price.amount().divide(price.base().exactlyIn(item.unit()), MathContext.DECIMAL64);
    }

    /** What the lists say of one thing, as far as they do. */
    private record Both<T>(Optional<T> old, Optional<T> now) {
        <R> Both<R> map(Function<T, R> part) {
            return new Both<>(old.map(part), now.map(part));
        }

        Stream<T> either() {
            return Stream.of(old, now).flatMap(Optional::stream);
        }

        Row row(String what, String detail, Function<T, String> words, Function<T, BigDecimal> amount) {
            BigDecimal percent = old.isPresent() && now.isPresent()
                    ? change(amount.apply(old.get()), amount.apply(now.get()))
                    : null;
            return new Row(
                    what, detail, old.map(words).orElse(""), now.map(words).orElse(""), percent);
        }
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
