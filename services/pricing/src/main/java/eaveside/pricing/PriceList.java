package eaveside.pricing;

import eaveside.kernel.Money;
import eaveside.kernel.Percent;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.Texts;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.joda.money.CurrencyUnit;

/**
 * What a price book says, draft or published; all in one currency, net of tax.
 *
 * @param  from            first day that it is in force
 * @param  visitMinimum    the least that a visit costs (call-out); zero for none
 * @param  sharedReduction taken off the unit price where work of two or more service lines shares the visit; 0 to below 100 %
 * @param  lineMinimums    at most one per service line
 * @param  prices          at most one per service
 */
public record PriceList(
        String name,
        LocalDate from,
        Money visitMinimum,
        Percent sharedReduction,
        List<LineMinimum> lineMinimums,
        List<ServiceItemPrice> prices) {
    private static final Percent ALL = Percent.of("100");

    public PriceList {
        name = Texts.required("name", name, 100);
        lineMinimums = lineMinimums.stream()
                .sorted(Comparator.comparing(m -> m.serviceLine().value()))
                .toList();
        prices = List.copyOf(prices);
        if (visitMinimum.isNegative()) {
            throw new PricingRefusal.BadPriceList("visitMinimum", "A minimum cannot be below zero");
        }
        if (sharedReduction.value().signum() < 0 || sharedReduction.compareTo(ALL) >= 0) {
            throw new PricingRefusal.BadPriceList(
                    "sharedReduction", "The reduction for a shared visit is 0 % or more and below 100 %");
        }
        Set<ServiceLineId> lines = new HashSet<>();
        for (LineMinimum minimum : lineMinimums) {
            requireCurrency(visitMinimum.currency(), minimum.amount().currency());
            if (!lines.add(minimum.serviceLine())) {
                throw new PricingRefusal.BadPriceList("lineMinimums", "A service line has two minimums");
            }
        }
        Set<ServiceItemId> serviceItems = new HashSet<>();
        for (ServiceItemPrice price : prices) {
            requireCurrency(
                    visitMinimum.currency(), price.steps().getFirst().price().currency());
            if (!serviceItems.add(price.serviceItem())) {
                throw new PricingRefusal.BadPriceList("prices", "A service is priced twice");
            }
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

    private static void requireCurrency(CurrencyUnit one, CurrencyUnit other) {
        if (!one.equals(other)) {
            throw new PricingRefusal.BadPriceList("prices", "All prices of a book are in one currency");
        }
    }
}
