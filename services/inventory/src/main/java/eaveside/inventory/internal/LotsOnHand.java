package eaveside.inventory.internal;

import eaveside.inventory.Draw;
import eaveside.inventory.Drawn.DrawnLine;
import eaveside.inventory.Drawn.Overrun;
import eaveside.inventory.InventoryRefusal;
import eaveside.inventory.Portion;
import eaveside.inventory.StockItem;
import eaveside.inventory.WaterReading;
import eaveside.kernel.Decision;
import eaveside.kernel.Elements;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.LotId;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.StockItemId;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * What a location holds of some items on a day, lot by lot, while a document of that day is being decided. Plain arithmetic:
 * taking from it changes nothing else.
 */
@Decision
public final class LotsOnHand {
    private final String location;
    private final LocalDate day;
    private final Map<StockItemId, StockItem> items;
    private final Map<LotId, Held> held = new LinkedHashMap<>();
    private final List<Overrun> overruns = new ArrayList<>();

    /** What a location gained (above zero) or lost of a lot on one later day. */
    public record Change(Quantity quantity, Money value) {}

    /**
     * A lot in the location, in the item's base unit. Whatever leaves on the day is missing on every later one too, so no
     * more can leave than the least that is there from then on.
     *
     * @param  quantity after everything that is posted, later days included: what the location holds now
     * @param  value    of all of that; zero where the quantity is
     * @param  onDay    at the end of the day
     * @param  free     the least at the end of that day and of every later one: what may leave; at most the quantity
     * @param  worth    what those free goods cost, by the least value from that day on; at most the value
     */
    public record Held(
            LotId lot, StockItemId item, Quantity quantity, Money value, Quantity onDay, Quantity free, Money worth) {
        public Held {
            boolean emptyButWorthSomething = quantity.isZero() && !value.isZero();
            if (quantity.isNegative() || value.isNegative() || emptyButWorthSomething) {
                throw new IllegalArgumentException("a lot cannot hold " + quantity + " worth " + value);
            }
            boolean freeButGone = free.compareTo(quantity) > 0 || worth.compareTo(value) > 0;
            if (free.isNegative() || worth.isNegative() || freeButGone) {
                throw new IllegalArgumentException(free + " worth " + worth + " cannot be free of " + quantity);
            }
        }

        /** A lot that nothing moves after the day. */
        public Held(LotId lot, StockItemId item, Quantity quantity, Money value) {
            this(lot, item, quantity, value, quantity, quantity, value);
        }

        /**
         * A lot that later days move.
         *
         * @param  later one change a day, the latest day first
         */
        public static Held before(LotId lot, StockItemId item, Quantity quantity, Money value, List<Change> later) {
            Quantity held = quantity;
            Money heldValue = value;
            Quantity free = quantity;
            Money worth = value;
            for (Change change : later) {
                held = held.minus(change.quantity());
                heldValue = heldValue.minus(change.value());
                free = free.min(held);
                worth = worth.compareTo(heldValue) <= 0 ? worth : heldValue;
            }
            // Books from before the rule may have been below zero on a day: then nothing is free.
            Quantity none = Quantity.zero(quantity.unit());
            return new Held(
                    lot,
                    item,
                    quantity,
                    value,
                    held,
                    free.isNegative() ? none : free,
                    worth.isNegative() ? value.minus(value) : worth);
        }

        /** More of it than the books had, from the day on and at no cost. */
        private Held with(Quantity more) {
            return new Held(lot, item, quantity.plus(more), value, onDay.plus(more), free.plus(more), worth);
        }

        private Held without(Quantity part, Money cost) {
            return new Held(
                    lot,
                    item,
                    quantity.minus(part),
                    value.minus(cost),
                    onDay.minus(part),
                    free.minus(part),
                    worth.compareTo(cost) <= 0 ? worth.minus(worth) : worth.minus(cost));
        }

        /** Its share of the free goods' worth; the last of the lot takes the rest of its value. */
        private Money costOf(Quantity part) {
            return part.equals(quantity) ? value : worth.times(part.value(), free.value());
        }
    }

    /**
     * @param  location its name, for refusals
     * @param  day   on which the document posts
     * @param  lots  oldest first
     */
    public LotsOnHand(String location, LocalDate day, Map<StockItemId, StockItem> items, List<Held> lots) {
        this.location = location;
        this.day = day;
        this.items = Map.copyOf(items);
        lots.forEach(lot -> held.put(lot.lot(), lot));
    }

    public String location() {
        return location;
    }

    public LocalDate day() {
        return day;
    }

    public StockItem item(StockItemId id) {
        StockItem item = items.get(id);
        if (item == null) {
            throw new KernelRefusal.NotFound("stock item", id);
        }
        return item;
    }

    /** What is there of an item, or of one lot of it, at the end of the day, in the base unit. */
    public Quantity held(StockItemId item, @Nullable LotId lot) {
        return sum(item, lot, Held::onDay);
    }

    /** What of it no later day needs. */
    public Quantity free(StockItemId item, @Nullable LotId lot) {
        return sum(item, lot, Held::free);
    }

    /** What is there after all later days as well. */
    public Quantity now(StockItemId item, @Nullable LotId lot) {
        return sum(item, lot, Held::quantity);
    }

    private Quantity sum(StockItemId item, @Nullable LotId lot, Function<Held, Quantity> what) {
        return lots(item, lot).stream()
                .map(what)
                .reduce(Quantity.zero(item(item).baseUnit()), Quantity::plus);
    }

    /**
     * Takes the draws: from the named lot, otherwise oldest first, of each what no later day needs. A part of a lot costs its
     * share of what the lot is worth from the day on, rounded HALF_UP to the minor unit; the last of it takes the rest. Draws
     * that name their lot go first, so that no other draw takes it from under them.
     */
    public List<DrawnLine> take(List<Draw> draws) {
        return take(draws, i -> Elements.at("draws", draws, i, () -> take(i, draws.get(i))));
    }

    /** Takes one, as {@link #take(List)} does. */
    public List<DrawnLine> take(Draw draw) {
        return take(0, draw);
    }

    private static List<DrawnLine> take(List<Draw> draws, IntFunction<List<DrawnLine>> one) {
        return IntStream.range(0, draws.size())
                .boxed()
                .sorted(Comparator.comparing((Integer i) -> draws.get(i).lot() == null))
                .flatMap(i -> one.apply(i).stream())
                .sorted(Comparator.comparing(DrawnLine::index))
                .toList();
    }

    /** Takes the lines of a command; refuses to split a canister or brush, and to take all of nothing. */
    public List<DrawnLine> takePortions(List<Portion> lines) {
        List<Draw> draws = new ArrayList<>();
        Elements.each("lines", lines, (line, i) -> draws.add(toDraw(line)));
        return take(draws, i -> Elements.at("lines", lines, i, () -> take(i, draws.get(i))));
    }

    private Draw toDraw(Portion portion) {
        StockItem item = item(portion.item());
        if (portion.lot() == null && item.type().isCountedSingly()) {
            throw new InventoryRefusal.LotNotNamed(item.name());
        }
        Quantity there = held(portion.item(), portion.lot());
        Quantity asked = portion.quantity();
        if (asked == null) {
            if (!there.isPositive()) {
                throw new InventoryRefusal.NothingThere(
                        item.name(), location, day, portion.lot() == null ? "item" : "lot");
            }
            return new Draw(portion.item(), portion.lot(), there);
        }
        if (item.type().isCountedSingly() && item.inBaseUnit(asked).compareTo(there) < 0) {
            throw new InventoryRefusal.NotWhole(item.name(), there);
        }
        return new Draw(portion.item(), portion.lot(), asked);
    }

    private List<DrawnLine> take(int index, Draw draw) {
        StockItem item = item(draw.item());
        if (draw.lot() == null && item.type().isCountedSingly()) {
            throw new InventoryRefusal.LotNotNamed(item.name());
        }
        Quantity asked = item.inBaseUnit(draw.quantity());
        believeReading(draw, item, asked);
        Quantity free = free(draw.item(), draw.lot());
        if (asked.compareTo(free) > 0) {
            Quantity there = held(draw.item(), draw.lot());
            throw new InventoryRefusal.NotEnough(item.name(), location, day, asked, there, free);
        }
        List<DrawnLine> lines = new ArrayList<>();
        Quantity left = asked;
        for (Held lot : lots(draw.item(), draw.lot())) {
            Quantity part = left.min(lot.free());
            if (part.isPositive()) {
                Money cost = lot.costOf(part);
                held.put(lot.lot(), lot.without(part, cost));
                lines.add(new DrawnLine(index, draw, lot.lot(), part, cost));
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
        if (there.onDay().isZero() && there.quantity().isPositive()) {
            return; // it only came later, so it is not what was read
        }
        if (reading.isPure() && asked.compareTo(there.free()) >= 0) {
            Quantity more = asked.minus(there.free()).plus(Quantity.of(1, item.baseUnit()));
            overruns.add(new Overrun(item.id(), there.lot(), more));
            held.put(there.lot(), there.with(more));
        } else if (!reading.isPure() && asked.compareTo(there.free()) > 0) {
            throw new InventoryRefusal.CanisterSpent(item.name(), location, reading, asked, there.free());
        }
    }

    /** By how much readings have shown the books to be too low, so far. */
    public List<Overrun> overruns() {
        return List.copyOf(overruns);
    }

    private List<Held> lots(StockItemId item, @Nullable LotId lot) {
        return held.values().stream()
                .filter(h -> h.item().equals(item) && (lot == null || h.lot().equals(lot)))
                .toList();
    }
}
