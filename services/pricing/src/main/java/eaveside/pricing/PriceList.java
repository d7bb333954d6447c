package eaveside.pricing;

import eaveside.catalog.ServiceItem;
import eaveside.kernel.Check;
import eaveside.kernel.Default;
import eaveside.kernel.Elements;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Money;
import eaveside.kernel.Percent;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.ServiceLineId;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.joda.money.CurrencyUnit;

/**
 * What a price book says, draft or published; all in one currency, net of tax.
 *
 * @param  from            first day that it is in force
 * @param  visitMinimum    the least that a visit costs (call-out); zero for none
 * @param  sharedReduction taken off the unit price where work of two or more service lines shares the visit; 0 to below 100 %; none
 *                         where it is left out
 * @param  lineMinimums    at most one per service line
 * @param  prices          at most one per service
 */
public record PriceList(
        String name,
        LocalDate from,
        Money visitMinimum,
        @Default("0") Percent sharedReduction,
        List<LineMinimum> lineMinimums,
        List<ServiceItemPrice> prices) {
    private static final Percent ALL = Percent.of("100");
    private static final Percent NONE = Percent.of("0");

    public PriceList {
        Check check = new Check();
        name = check.required("name", name, 100);
        sharedReduction = sharedReduction == null ? NONE : sharedReduction;
        requireOneCurrency(visitMinimum, lineMinimums, prices);
        List<ServiceItemPrice> priced = List.copyOf(prices);
        List<LineMinimum> minimums = List.copyOf(lineMinimums);
        check.passes(() -> Elements.requireDistinct("lineMinimums", minimums, "serviceLine", LineMinimum::serviceLine));
        check.passes(() -> Elements.requireDistinct("prices", priced, "serviceItem", ServiceItemPrice::serviceItem));
        lineMinimums = minimums.stream()
                .sorted(Comparator.comparing(m -> m.serviceLine().value()))
                .toList();
        prices = priced;
        boolean shared = sharedReduction.value().signum() >= 0 && sharedReduction.compareTo(ALL) < 0;
        check.that(!visitMinimum.isNegative(), () -> new KernelRefusal.Negative("visitMinimum"));
        check.that(
                shared, () -> new KernelRefusal.Unfit("sharedReduction", "{field} must be at least 0 and below 100"));
        check.done();
    }

    /** Whichever of the two is the wrong one, both are told. */
    private static void requireOneCurrency(
            Money visitMinimum, List<LineMinimum> lineMinimums, List<ServiceItemPrice> prices) {
        CurrencyUnit currency = visitMinimum.currency();
        for (int i = 0; i < lineMinimums.size(); i++) {
            lineMinimums.get(i).amount().in(currency, "lineMinimums[" + i + "].amount", "visitMinimum");
        }
        for (int i = 0; i < prices.size(); i++) {
            prices.get(i).steps().getFirst().price().in(currency, "prices[" + i + "].steps[0].price", "visitMinimum");
        }
    }

    /** Refuses a service that the list has no price for by its name, since the engine knows it by its id alone. */
    public void requirePriceOf(ServiceItem serviceItem) {
        if (priceOf(serviceItem.id()).isEmpty()) {
            throw new PricingRefusal.NotInBook(serviceItem.name(), name);
        }
    }

    public CurrencyUnit currency() {
        return visitMinimum.currency();
    }

    public Optional<ServiceItemPrice> priceOf(ServiceItemId serviceItem) {
        return prices.stream().filter(p -> p.serviceItem().equals(serviceItem)).findFirst();
    }

    public Optional<LineMinimum> minimumOf(ServiceLineId line) {
        return lineMinimums.stream().filter(m -> m.serviceLine().equals(line)).findFirst();
    }

    /**
     * The same prices without the minimums that other work of the same job has borne already: that of the visit as soon
     * as any work has, and that of each of the service lines.
     */
    public PriceList afterMinimumsOf(Set<ServiceLineId> borne) {
        return borne.isEmpty()
                ? this
                : new PriceList(
                        name,
                        from,
                        Money.zero(currency()),
                        sharedReduction,
                        lineMinimums.stream()
                                .filter(m -> !borne.contains(m.serviceLine()))
                                .toList(),
                        prices);
    }
}
