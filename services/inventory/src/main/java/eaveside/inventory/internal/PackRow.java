package eaveside.inventory.internal;

import eaveside.inventory.Pack;
import eaveside.inventory.StockItem;
import eaveside.kernel.Quantity;
import eaveside.kernel.Unit;
import jakarta.persistence.Embeddable;
import java.math.BigDecimal;
import java.util.Comparator;
import java.util.List;

/** A pack of an item, its content in the item's base unit. */
@Embeddable
public record PackRow(String name, BigDecimal content) {
    public PackRow {
        // The column pads with zeros; one form keeps equal packs equal.
        content = content.stripTrailingZeros();
    }

    static List<PackRow> all(StockItem item) {
        return item.packs().stream()
                .map(p -> new PackRow(p.name(), item.inBaseUnit(p.content()).value()))
                .sorted(Comparator.comparing(PackRow::name))
                .toList();
    }

    Pack toPack(Unit unit) {
        return new Pack(name, Quantity.of(content, unit));
    }
}
