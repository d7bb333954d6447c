package eaveside.catalog.internal;

import eaveside.catalog.StandardConsumable;
import eaveside.kernel.Quantity;
import eaveside.kernel.StockItemId;
import eaveside.kernel.Unit;
import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import java.math.BigDecimal;
import java.util.UUID;

/** What one unit of a service uses up. */
@Embeddable
record ConsumableRow(@Column(name = "stock_item_id") UUID stockItemId, BigDecimal quantity, String unit) {
    static ConsumableRow of(StandardConsumable consumable) {
        return new ConsumableRow(
                consumable.item().value(),
                consumable.perUnit().value(),
                consumable.perUnit().unit().code());
    }

    StandardConsumable toConsumable() {
        return new StandardConsumable(new StockItemId(stockItemId), Quantity.of(quantity, Unit.ofCode(unit)));
    }
}
