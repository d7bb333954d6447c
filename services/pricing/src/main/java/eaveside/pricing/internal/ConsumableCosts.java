package eaveside.pricing.internal;

import eaveside.catalog.ServiceItem;
import eaveside.catalog.StandardConsumable;
import eaveside.inventory.ReadStock;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.Shared;
import eaveside.kernel.UnitPrice;
import eaveside.ledger.Books;
import jakarta.inject.Inject;
import java.util.Optional;

/** What the standard consumables of work cost, at what each item cost when it last came in. */
@Shared
class ConsumableCosts {
    private final ReadStock stock;
    private final Books books;

    @Inject
    public ConsumableCosts(ReadStock stock, Books books) {
        this.stock = stock;
        this.books = books;
    }

    /**
     * Empty where an item has never come in with a cost, or is counted in another type of unit than its standard says.
     * Refuses what the books cannot hold without telling the amount, which not everybody may see.
     */
    public Optional<Money> of(ServiceItem serviceItem, Quantity quantity) {
        try {
            return cost(serviceItem, quantity);
        } catch (KernelRefusal.TooLarge tellsTheAmount) {
            throw new KernelRefusal.Unfit(
                    "quantity",
                    "{field}: its consumables would be more, or cost more, than the books can hold. Look at the standard of '"
                            + serviceItem.name() + "', and at what they cost when they were last bought");
        }
    }

    private Optional<Money> cost(ServiceItem serviceItem, Quantity quantity) {
        Money sum = books.zero();
        for (StandardConsumable standard : serviceItem.consumables()) {
            Quantity used =
                    standard.perUnit().times(quantity.in(serviceItem.unit()).value());
            Optional<UnitPrice> cost = stock.newestCost(standard.item());
            if (cost.isEmpty() || !used.unit().isLike(cost.get().base().unit())) {
                return Optional.empty();
            }
            sum = sum.plus(cost.get().times(used));
        }
        return Optional.of(sum.held());
    }
}
