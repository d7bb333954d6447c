package eaveside.inventory;

import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Quantity;
import eaveside.kernel.StockItemId;
import eaveside.kernel.Texts;
import eaveside.kernel.Unit;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * A consumable.
 *
 * @param  code     the company's own short name, unique
 * @param  baseUnit what its quantities are kept in; fixed, with the type, as soon as there is a lot, a mix or a minimum
 * @param  alkaline some manufacturers of solar panels forbid it
 * @param  active   whether it can still be received
 * @param  version  as read; null for a new item
 */
public record StockItem(
        StockItemId id,
        String code,
        String name,
        StockType type,
        Unit baseUnit,
        List<Pack> packs,
        boolean alkaline,
        boolean active,
        @Nullable Integer version) {
    public StockItem {
        code = Texts.required("code", code, 40);
        name = Texts.required("name", name, 200);
        // One order, so that equal items are equal however the rows came back.
        packs = packs.stream().sorted(Comparator.comparing(Pack::name)).toList();
        if (!type.takes(baseUnit)) {
            throw new InventoryRefusal.WrongUnit(name, baseUnit.code(), "baseUnit");
        }
        Set<String> names = new HashSet<>();
        for (Pack pack : packs) {
            if (!pack.content().unit().isLike(baseUnit)) {
                throw new InventoryRefusal.WrongUnit(name, pack.content().unit().code(), "packs");
            }
            // What is next to nothing in its own unit may round to nothing in the one that is stored.
            if (!pack.content().in(baseUnit).isPositive()) {
                throw new KernelRefusal.NotPositive("packs");
            }
            if (!names.add(pack.name().toLowerCase(Locale.ROOT))) {
                throw new InventoryRefusal.NameTaken("pack", pack.name());
            }
        }
    }

    /** A new item, active and without packs. */
    public static StockItem of(StockItemId id, String code, String name, StockType type, Unit baseUnit) {
        return new StockItem(id, code, name, type, baseUnit, List.of(), false, true, null);
    }

    public StockItem with(Pack... newPacks) {
        return new StockItem(id, code, name, type, baseUnit, List.of(newPacks), alkaline, active, version);
    }

    /** The quantity in the base unit, rounded HALF_UP to six decimals; refuses a unit that is not like it. */
    public Quantity inBaseUnit(Quantity quantity) {
        if (!quantity.unit().isLike(baseUnit)) {
            throw new InventoryRefusal.WrongUnit(name, quantity.unit().code(), "quantity");
        }
        return quantity.in(baseUnit);
    }

    /** The base quantity of that many packs; refuses a pack that the item does not come in. */
    public Quantity ofPacks(String packName, Quantity count) {
        Pack pack = packs.stream()
                .filter(p -> p.name().equalsIgnoreCase(packName.strip()))
                .findFirst()
                .orElseThrow(() -> new InventoryRefusal.NoSuchPack(name, packName));
        if (!count.unit().isLike(Unit.PIECE)) {
            throw new InventoryRefusal.WrongUnit(name, count.unit().code(), "quantity");
        }
        return inBaseUnit(pack.content()).times(count.value());
    }
}
