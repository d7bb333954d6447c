package eaveside.web.prices;

import eaveside.kernel.Money;
import eaveside.kernel.OfferingId;
import eaveside.offerings.Catalogue;
import eaveside.offerings.Offering;
import eaveside.offerings.ServiceLine;
import eaveside.pricing.LineMinimum;
import eaveside.pricing.OfferingPrice;
import eaveside.pricing.PriceList;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** A price list in the order that people read it in: by service line, then by offering. */
public record Listing(List<Section> sections) {
    /** What is sold of one service line. */
    public record Section(ServiceLine line, @Nullable Money minimum, List<Item> items) {}

    /** One offering with its price. */
    public record Item(Offering offering, OfferingPrice price) {}

    /** Lines without a price and without a minimum are left out. */
    static Listing of(PriceList list, Catalogue catalogue) {
        Map<OfferingId, OfferingPrice> prices =
                list.prices().stream().collect(Collectors.toMap(OfferingPrice::offering, Function.identity()));
        List<Offering> offerings = catalogue.offerings();
        List<Section> sections = new ArrayList<>();
        for (ServiceLine line : catalogue.lines()) {
            List<Item> items = new ArrayList<>();
            for (Offering offering : offerings) {
                OfferingPrice price = prices.get(offering.id());
                if (price != null && offering.serviceLine().equals(line.id())) {
                    items.add(new Item(offering, price));
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
