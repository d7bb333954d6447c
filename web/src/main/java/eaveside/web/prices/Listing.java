package eaveside.web.prices;

import eaveside.catalog.Catalog;
import eaveside.catalog.ServiceItem;
import eaveside.catalog.ServiceLine;
import eaveside.kernel.Money;
import eaveside.kernel.ServiceItemId;
import eaveside.pricing.LineMinimum;
import eaveside.pricing.PriceList;
import eaveside.pricing.ServiceItemPrice;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** A price list in the order that people read it in: by service line, then by service. */
public record Listing(List<Section> sections) {
    /** What is sold of one service line. */
    public record Section(ServiceLine line, @Nullable Money minimum, List<Item> items) {}

    /** One service with its price. */
    public record Item(ServiceItem serviceItem, ServiceItemPrice price) {}

    /** Lines without a price and without a minimum are left out. */
    static Listing of(PriceList list, Catalog catalog) {
        Map<ServiceItemId, ServiceItemPrice> prices =
                list.prices().stream().collect(Collectors.toMap(ServiceItemPrice::serviceItem, Function.identity()));
        List<ServiceItem> serviceItems = catalog.serviceItems();
        List<Section> sections = new ArrayList<>();
        for (ServiceLine line : catalog.lines()) {
            List<Item> items = new ArrayList<>();
            for (ServiceItem serviceItem : serviceItems) {
                ServiceItemPrice price = prices.get(serviceItem.id());
                if (price != null && serviceItem.serviceLine().equals(line.id())) {
                    items.add(new Item(serviceItem, price));
                }
            }
            Money minimum = list.minimumOf(line.id()).map(LineMinimum::amount).orElse(null);
            if (!items.isEmpty() || minimum != null) {
                sections.add(new Section(line, minimum, items));
            }
        }
        return new Listing(sections);
    }
}
