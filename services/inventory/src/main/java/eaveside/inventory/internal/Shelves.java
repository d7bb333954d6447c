package eaveside.inventory.internal;

import eaveside.inventory.InventoryRefusal;
import eaveside.inventory.StockItem;
import eaveside.inventory.internal.Shelf.Change;
import eaveside.inventory.internal.Shelf.Held;
import eaveside.inventory.internal.StockLedger.Movement;
import eaveside.inventory.internal.StockQueries.LaterDay;
import eaveside.inventory.internal.StockQueries.LotInPlace;
import eaveside.inventory.internal.StockQueries.PlaceState;
import eaveside.kernel.LotId;
import eaveside.kernel.Money;
import eaveside.kernel.PlaceId;
import eaveside.kernel.Quantity;
import eaveside.kernel.StockItemId;
import eaveside.ledger.Books;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Locks places and their lots, and reads what they hold under the lock. Nothing is read through managed entities here:
 * what a transaction had loaded before it got the lock may be out of date.
 */
@Dependent
public class Shelves {
    private final StockQueries queries;
    private final Catalogue catalogue;
    private final Books books;

    @Inject
    public Shelves(StockQueries queries, Catalogue catalogue, Books books) {
        this.queries = queries;
        this.catalogue = catalogue;
        this.books = books;
    }

    /** Locks the places in the order of their ids until the transaction ends; refuses an unknown one. */
    public void lock(Collection<PlaceId> places) {
        List<UUID> ids = places.stream().map(PlaceId::value).distinct().toList();
        if (ids.isEmpty()) {
            return;
        }
        List<UUID> locked = queries.lockPlaces(ids);
        ids.stream().filter(id -> !locked.contains(id)).findFirst().ifPresent(missing -> {
            throw new InventoryRefusal.NoSuchPlace(missing.toString());
        });
    }

    /** The name of a locked place; refuses one that is out of use. */
    public String requireInUse(PlaceId place) {
        PlaceState state = queries.placeState(place.value());
        if (!state.active()) {
            throw new InventoryRefusal.Inactive(state.name(), "place");
        }
        return state.name();
    }

    /** What a locked place holds of the items on the day; their lots there are locked in the order of their ids. */
    public Shelf load(PlaceId place, LocalDate day, List<StockItemId> wanted) {
        Map<StockItemId, StockItem> items = new LinkedHashMap<>();
        wanted.forEach(id -> items.computeIfAbsent(id, catalogue::item));
        String name = queries.placeState(place.value()).name();
        if (items.isEmpty()) {
            return new Shelf(name, day, items, List.of());
        }
        List<UUID> ids = items.keySet().stream().map(StockItemId::value).toList();
        queries.lockLots(place.value(), ids);
        return new Shelf(name, day, items, held(place, day, items));
    }

    /** Lots that were emptied after the day count too: they were there on it. */
    private List<Held> held(PlaceId place, LocalDate day, Map<StockItemId, StockItem> items) {
        List<UUID> ids = items.keySet().stream().map(StockItemId::value).toList();
        Map<UUID, List<LaterDay>> later =
                queries.laterDays(place.value(), ids, day).stream().collect(Collectors.groupingBy(LaterDay::lot));
        return queries.lotsOnShelf(place.value(), ids, later.keySet()).stream()
                .map(lot -> held(lot, later.getOrDefault(lot.lot(), List.of()), items))
                .toList();
    }

    private Held held(LotInPlace lot, List<LaterDay> later, Map<StockItemId, StockItem> items) {
        StockItemId id = new StockItemId(lot.item());
        StockItem item = items.get(id);
        if (item == null) {
            throw new IllegalStateException("a lot of an item that was not asked for");
        }
        return Held.before(
                new LotId(lot.lot()),
                id,
                Quantity.of(lot.quantity(), item.baseUnit()),
                books.money(lot.value()),
                later.stream()
                        .map(l -> new Change(Quantity.of(l.quantity(), item.baseUnit()), books.money(l.value())))
                        .toList());
    }

    /**
     * Refuses with {@link InventoryRefusal.GoodsGone} movements out of locked places that do not hold the goods at that
     * value on the day and on every later one, and with {@link InventoryRefusal.NotThereYet} a day before the goods came.
     */
    public void requireRoomFor(LocalDate day, List<Movement> movements) {
        Map<LotStockKey, List<Movement>> byShelf = new LinkedHashMap<>();
        for (Movement movement : movements) {
            LotStockKey key =
                    new LotStockKey(movement.lot().value(), movement.place().value());
            byShelf.merge(key, List.of(movement), Shelves::joined);
        }
        byShelf.forEach((key, moved) -> {
            StockItem item = catalogue.item(moved.getFirst().item());
            Quantity change =
                    moved.stream().map(Movement::quantity).reduce(Quantity.zero(item.baseUnit()), Quantity::plus);
            Money worth = Money.sum(
                    books.currency(), moved.stream().map(Movement::value).toList());
            requireCame(key.lotId(), item, day);
            Held held = held(moved.getFirst(), day, item);
            Quantity quantity = held.quantity().plus(change);
            Money value = held.value().plus(worth);
            boolean emptyButWorthSomething = quantity.isZero() && !value.isZero();
            boolean gone = change.isNegative() && held.free().plus(change).isNegative();
            if (gone || value.isNegative() || emptyButWorthSomething) {
                throw new InventoryRefusal.GoodsGone(
                        item.name(), queries.placeState(key.placeId()).name(), day, change.negated(), held.free());
            }
        });
    }

    private void requireCame(UUID lot, StockItem item, LocalDate day) {
        for (LocalDate came : queries.cameAfter(lot, day)) {
            throw new InventoryRefusal.NotThereYet(item.name(), day, came);
        }
    }

    private Held held(Movement movement, LocalDate day, StockItem item) {
        return held(movement.place(), day, Map.of(item.id(), item)).stream()
                .filter(held -> held.lot().equals(movement.lot()))
                .findFirst()
                .orElseGet(() -> new Held(movement.lot(), item.id(), Quantity.zero(item.baseUnit()), books.zero()));
    }

    private static List<Movement> joined(List<Movement> one, List<Movement> other) {
        return Stream.concat(one.stream(), other.stream()).toList();
    }
}
