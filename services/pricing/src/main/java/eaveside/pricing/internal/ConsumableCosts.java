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

    /** Empty where an item has never come in with a cost, or is counted in another type of unit than its standard says. */
    public Optional<Money> of(ServiceItem serviceItem, Quantity quantity) {
        Money sum = books.zero();
        for (StandardConsumable standard : serviceItem.consumables()) {
            Quantity used =
                    standard.perUnit().times(quantity.in(serviceItem.unit()).value(), "quantity");
            Optional<UnitPrice> cost = stock.newestCost(standard.item());
            if (cost.isEmpty() || !used.unit().isLike(cost.get().base().unit())) {
                return Optional.empty();
            }
            sum = sum.plus(cost.get().times(used));
        }
        if (!sum.isHeld()) {
            // Without the amount, which not everybody may see.
            throw new KernelRefusal.Unfit(
                    "quantity",
                    "{field}: its consumables would cost more than the books can hold. Look at what those of '"
                            + serviceItem.name() + "' cost when they were last bought");
        }
        return Optional.of(sum);
    }
}
