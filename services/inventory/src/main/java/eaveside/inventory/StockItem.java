package eaveside.inventory;

import eaveside.kernel.Check;
import eaveside.kernel.Default;
import eaveside.kernel.Elements;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Quantity;
import eaveside.kernel.StockItemId;
import eaveside.kernel.Unit;
import eaveside.kernel.Versioned;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/**
 * An item of the stock: what the company buys and uses up.
 *
 * @param  code     the company's own short name, unique
 * @param  baseUnit what its quantities are kept in; fixed, with the type, as soon as there is a lot, a mix or a reorder point
 * @param  packs    how it is bought, by name, each with its content in the base unit
 * @param  alkaline some manufacturers of solar panels forbid it
 * @param  active   whether it can still be received
 */
public record StockItem(
        StockItemId id,
        String code,
        String name,
        StockType type,
        Unit baseUnit,
        @Default List<Pack> packs,
        @Default("false") boolean alkaline,
        @Default("true") boolean active,
        @Default("0") int version)
        implements Versioned {
    public StockItem {
        Check check = new Check();
        String called = check.required("name", name, 200);
        code = check.required("code", code, 40);
        name = called;
        check.value(() -> type.requireCounting(baseUnit), baseUnit);
        packs = packsIn(baseUnit, packs, called, check);
        check.done();
    }

    /** One order and one unit, so that equal items are equal however they were entered and the rows came back. */
    private static List<Pack> packsIn(Unit baseUnit, List<Pack> packs, String item, Check check) {
        List<Pack> same = new ArrayList<>();
        for (int i = 0; i < packs.size(); i++) {
            int index = i;
            Pack pack = packs.get(i);
            check.passes(() -> Elements.at("packs", packs, index, () -> same.add(inBase(baseUnit, pack, item))));
        }
        check.passes(() -> Elements.requireDistinct(
                "packs", packs, "name", pack -> pack.name().toLowerCase(Locale.ROOT)));
        same.sort(Comparator.comparing(Pack::name));
        return List.copyOf(same);
    }

    /** The same pack; what is next to nothing in its own unit may come to nothing in the base unit, which is refused. */
    private static Pack inBase(Unit baseUnit, Pack pack, String item) {
        if (!pack.content().unit().isLike(baseUnit)) {
            throw new KernelRefusal.WrongUnit("content", item, pack.content().unit(), List.of(baseUnit));
        }
        return new Pack(pack.name(), pack.content().in(baseUnit));
    }

    /** A new item, active and without packs. */
    public static StockItem of(StockItemId id, String code, String name, StockType type, Unit baseUnit) {
        return new StockItem(id, code, name, type, baseUnit, List.of(), false, true, 0);
    }

    public StockItem with(Pack... newPacks) {
        return new StockItem(id, code, name, type, baseUnit, List.of(newPacks), alkaline, active, version);
    }

    /** Whether its quantities mean what they mean for the other. */
    public boolean isCountedLike(StockItem other) {
        return type == other.type() && baseUnit == other.baseUnit();
    }

    /** The quantity in the base unit, rounded HALF_UP to six decimals; refuses a unit that is not like it. */
    public Quantity inBaseUnit(Quantity quantity) {
        if (!quantity.unit().isLike(baseUnit)) {
            throw new KernelRefusal.WrongUnit("quantity", name, quantity.unit(), List.of(baseUnit));
        }
        return quantity.in(baseUnit);
    }

    /** The base quantity of that many packs; refuses a pack that the item does not come in, and a billion and more. */
    public Quantity ofPacks(String packName, Quantity count) {
        Pack pack = packs.stream()
                .filter(p -> p.name().equalsIgnoreCase(packName.strip()))
                .findFirst()
                .orElseThrow(() -> new InventoryRefusal.NoSuchPack(name, packName));
        if (!count.unit().isLike(Unit.PIECE)) {
            throw new KernelRefusal.WrongUnit("quantity", name, count.unit(), List.of(Unit.PIECE));
        }
        return inBaseUnit(pack.content()).times(count.value(), "quantity");
    }
}
