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
            Quantity used = used(serviceItem, standard, quantity);
            Optional<UnitPrice> cost = stock.newestCost(standard.item());
            if (cost.isEmpty() || !used.unit().isLike(cost.get().base().unit())) {
                return Optional.empty();
            }
            sum = sum.plus(cost.get().times(used));
        }
        if (!sum.isHeld()) {
            throw tooMuch(serviceItem);
        }
        return Optional.of(sum);
    }

    private static Quantity used(ServiceItem serviceItem, StandardConsumable standard, Quantity quantity) {
        try {
            return standard.perUnit().times(quantity.in(serviceItem.unit()).value(), "quantity");
        } catch (KernelRefusal.TooLarge ofTheConsumable) {
            throw tooMuch(serviceItem);
        }
    }

    /** Without the amount, which not everybody may see. */
    private static KernelRefusal.Unfit tooMuch(ServiceItem serviceItem) {
        return new KernelRefusal.Unfit(
                "quantity",
                "{field}: its consumables would be more, or cost more, than the books can hold. Look at the standard of '"
                        + serviceItem.name() + "', and at what they cost when they were last bought");
    }
}
