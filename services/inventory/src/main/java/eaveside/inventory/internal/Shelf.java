package eaveside.inventory.internal;

import eaveside.inventory.Draw;
import eaveside.inventory.Drawn.DrawnLine;
import eaveside.inventory.Drawn.Overrun;
import eaveside.inventory.InventoryRefusal;
import eaveside.inventory.Portion;
import eaveside.inventory.StockItem;
import eaveside.inventory.WaterReading;
import eaveside.kernel.LotId;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.StockItemId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * What a place holds of some items, lot by lot, while a document is being decided. Plain arithmetic: taking from it
 * changes nothing but the shelf itself.
 */
public final class Shelf {
    private final String place;
    private final Map<StockItemId, StockItem> items;
    private final Map<LotId, Held> held = new LinkedHashMap<>();
    private final List<Overrun> overruns = new ArrayList<>();

    /** A lot on the shelf: quantity in the item's base unit, and the value of all of it. Both zero, or quantity above zero. */
    public record Held(LotId lot, StockItemId item, Quantity quantity, Money value) {
        public Held {
            boolean emptyButWorthSomething = quantity.isZero() && !value.isZero();
            if (quantity.isNegative() || value.isNegative() || emptyButWorthSomething) {
                throw new IllegalArgumentException("a lot cannot hold " + quantity + " worth " + value);
            }
        }
    }

    /**
     * @param place its name, for refusals
     * @param lots  oldest first
     */
    public Shelf(String place, Map<StockItemId, StockItem> items, List<Held> lots) {
        this.place = place;
        this.items = Map.copyOf(items);
        lots.forEach(lot -> held.put(lot.lot(), lot));
    }

    public String place() {
        return place;
    }

    public StockItem item(StockItemId id) {
        StockItem item = items.get(id);
        if (item == null) {
            throw new InventoryRefusal.NoSuchItem(id.toString());
        }
        return item;
    }

    /** What is there of an item, or of one lot of it, in the base unit. */
    public Quantity held(StockItemId item, @Nullable LotId lot) {
        return lots(item, lot).stream()
                .map(Held::quantity)
                .reduce(Quantity.zero(item(item).baseUnit()), Quantity::plus);
    }

    /**
     * Takes the draws: from the named lot, otherwise oldest first. A part of a lot costs its share of the lot's value,
     * rounded HALF_UP to the minor unit; the last of it takes the rest. Draws that name their lot go first, so that no other
     * draw takes it from under them.
     */
    public List<DrawnLine> take(List<Draw> draws) {
        List<DrawnLine> lines = new ArrayList<>();
        IntStream.range(0, draws.size())
                .boxed()
                .sorted(Comparator.comparing((Integer i) -> draws.get(i).lot() == null))
                .forEach(i -> lines.addAll(take(i, draws.get(i))));
        lines.sort(Comparator.comparing(DrawnLine::index));
        return List.copyOf(lines);
    }

    /** Takes portions; refuses to split a canister or brush, and to take all of nothing. */
    public List<DrawnLine> takePortions(List<Portion> portions) {
        return take(portions.stream().map(this::toDraw).toList());
    }

    private Draw toDraw(Portion portion) {
        StockItem item = item(portion.item());
        Quantity there = held(portion.item(), portion.lot());
        Quantity asked = portion.quantity();
        if (asked == null) {
            if (there.isZero()) {
                throw new InventoryRefusal.NothingThere(item.name(), place);
            }
            return new Draw(portion.item(), portion.lot(), there);
        }
        if (item.kind().isCountedSingly() && item.inBaseUnit(asked).compareTo(there) < 0) {
            throw new InventoryRefusal.NotWhole(item.name(), there);
        }
        return new Draw(portion.item(), portion.lot(), asked);
    }

    private List<DrawnLine> take(int index, Draw draw) {
        StockItem item = item(draw.item());
        if (draw.lot() == null && item.kind().isCountedSingly()) {
            throw new InventoryRefusal.LotNotNamed(item.name());
        }
        Quantity asked = item.inBaseUnit(draw.quantity());
        believeReading(draw, item, asked);
        Quantity there = held(draw.item(), draw.lot());
        if (asked.compareTo(there) > 0) {
            throw new InventoryRefusal.NotEnough(item.name(), place, asked, there);
        }
        List<DrawnLine> lines = new ArrayList<>();
        Quantity left = asked;
        for (Held lot : lots(draw.item(), draw.lot())) {
            Quantity part = left.min(lot.quantity());
            if (part.isPositive()) {
                lines.add(new DrawnLine(index, draw, lot.lot(), part, remove(lot, part)));
                left = left.minus(part);
            }
        }
        return lines;
    }

    /**
     * What was read at a canister decides over the books' estimate of it: one that makes pure water holds what is drawn,
     * and a unit more, so that it can be named again and thrown away one day.
     */
    private void believeReading(Draw draw, StockItem item, Quantity asked) {
        WaterReading reading = draw.reading();
        LotId lot = draw.lot();
        Held there = lot == null ? null : held.get(lot);
        if (reading == null || there == null || !there.item().equals(item.id()) || asked.isZero()) {
            return;
        }
        if (reading.isPure() && asked.compareTo(there.quantity()) >= 0) {
            Quantity more = asked.minus(there.quantity()).plus(Quantity.of(1, item.baseUnit()));
            overruns.add(new Overrun(item.id(), there.lot(), more));
            held.put(
                    there.lot(),
                    new Held(there.lot(), item.id(), there.quantity().plus(more), there.value()));
        } else if (!reading.isPure() && asked.compareTo(there.quantity()) > 0) {
            throw new InventoryRefusal.CanisterSpent(item.name(), place, reading, asked, there.quantity());
        }
    }

    /** By how much readings have shown the books to be too low, so far. */
    public List<Overrun> overruns() {
        return List.copyOf(overruns);
    }

    private Money remove(Held lot, Quantity part) {
        boolean last = part.equals(lot.quantity());
        Money cost = last
                ? lot.value()
                : lot.value().times(part.value(), lot.quantity().value());
        held.put(
                lot.lot(),
                new Held(
                        lot.lot(),
                        lot.item(),
                        lot.quantity().minus(part),
                        lot.value().minus(cost)));
        return cost;
    }

    private List<Held> lots(StockItemId item, @Nullable LotId lot) {
        return held.values().stream()
                .filter(h -> h.item().equals(item) && (lot == null || h.lot().equals(lot)))
                .toList();
    }
}
