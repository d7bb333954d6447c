package eaveside.inventory.internal;

import eaveside.inventory.Pack;
import eaveside.inventory.StockItem;
import eaveside.kernel.Quantity;
import eaveside.kernel.Unit;
import jakarta.persistence.Embeddable;
import java.math.BigDecimal;
import java.util.Set;
import java.util.stream.Collectors;

/** A pack of an item, its content in the item's base unit. */
@Embeddable
record PackRow(String name, BigDecimal content) {
    public PackRow {
        // The column pads with zeros; one form keeps equal packs equal.
        content = content.stripTrailingZeros();
    }

    static Set<PackRow> all(StockItem item) {
        return item.packs().stream()
                .map(p -> new PackRow(p.name(), p.content().value()))
                .collect(Collectors.toSet());
    }

    Pack toPack(Unit unit) {
        return new Pack(name, Quantity.of(content, unit));
    }
}
