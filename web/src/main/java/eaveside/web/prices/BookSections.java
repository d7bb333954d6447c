package eaveside.web.prices;

import eaveside.catalog.Catalog;
import eaveside.catalog.ServiceItem;
import eaveside.catalog.ServiceLine;
import eaveside.kernel.Money;
import eaveside.pricing.LineMinimum;
import eaveside.pricing.PriceList;
import eaveside.pricing.ServiceItemPrice;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** A price list in the order that people read it in: by service line, then by service. */
public final class BookSections {
    private BookSections() {}

    /** What is sold of one service line. */
    public record Section(ServiceLine line, @Nullable Money minimum, List<Item> items) {}

    /** One service with its price. */
    public record Item(ServiceItem serviceItem, ServiceItemPrice price) {}

    /** Lines without a price and without a minimum are left out. */
    static List<Section> of(PriceList list, Catalog catalog) {
        List<ServiceItem> serviceItems = catalog.serviceItems();
        return catalog.lines().stream()
                .map(line -> new Section(
                        line,
                        list.minimumOf(line.id()).map(LineMinimum::amount).orElse(null),
                        serviceItems.stream()
                                .filter(item -> item.serviceLine().equals(line.id()))
                                .flatMap(item -> item(item, list))
                                .toList()))
                .filter(section -> !section.items().isEmpty() || section.minimum() != null)
                .toList();
    }

    private static Stream<Item> item(ServiceItem item, PriceList list) {
        return list.priceOf(item.id()).stream().map(price -> new Item(item, price));
    }
}
