package eaveside.inventory.internal;

import eaveside.inventory.InventoryRefusal;
import eaveside.inventory.StockItem;
import eaveside.inventory.internal.LotsOnHand.Change;
import eaveside.inventory.internal.LotsOnHand.Held;
import eaveside.inventory.internal.StockLedger.Movement;
import eaveside.inventory.internal.StockQueries.LaterDay;
import eaveside.inventory.internal.StockQueries.LocationState;
import eaveside.inventory.internal.StockQueries.LotInLocation;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.LocationId;
import eaveside.kernel.LotId;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.Shared;
import eaveside.kernel.StockItemId;
import eaveside.ledger.Books;
import eaveside.ledger.Lock;
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
 * Locks locations and their lots, and reads what they hold under the lock. Nothing is read through managed entities here:
 * what a transaction had loaded before it got the lock may be out of date.
 */
@Shared
public class StockOnHand {
    private final StockQueries queries;
    private final Catalog catalog;
    private final Books books;

    @Inject
    public StockOnHand(StockQueries queries, Catalog catalog, Books books) {
        this.queries = queries;
        this.catalog = catalog;
        this.books = books;
    }

    /** Locks the locations in the order of their ids until the transaction ends; refuses an unknown one. */
    public void lock(Collection<LocationId> locations) {
        List<UUID> ids = locations.stream().map(LocationId::value).distinct().toList();
        if (ids.isEmpty()) {
            return;
        }
        List<UUID> locked = queries.lockLocations(ids);
        ids.stream().filter(id -> !locked.contains(id)).findFirst().ifPresent(missing -> {
            throw new KernelRefusal.NotFound("location", missing);
        });
    }

    /** The same as a posting's lock. */
    public Lock lockOf(LocationId... locations) {
        return Lock.of(Lock.Rank.LOCATION, () -> lock(List.of(locations)));
    }

    /** The name of a locked location; refuses one that is not active. */
    public String requireActive(LocationId location) {
        LocationState state = queries.locationState(location.value());
        if (!state.active()) {
            throw new KernelRefusal.NotActive("location", state.name(), "location");
        }
        return state.name();
    }

    /** What a locked location holds of the items on the day; their lots there are locked in the order of their ids. */
    public LotsOnHand load(LocationId location, LocalDate day, List<StockItemId> wanted) {
        Map<StockItemId, StockItem> items = new LinkedHashMap<>();
        wanted.forEach(id -> items.computeIfAbsent(id, catalog::item));
        String name = queries.locationState(location.value()).name();
        if (items.isEmpty()) {
            return new LotsOnHand(name, day, items, List.of());
        }
        List<UUID> ids = items.keySet().stream().map(StockItemId::value).toList();
        queries.lockLots(location.value(), ids);
        return new LotsOnHand(name, day, items, held(location, day, items));
    }

    /** Lots that were emptied after the day count too: they were there on it. */
    private List<Held> held(LocationId location, LocalDate day, Map<StockItemId, StockItem> items) {
        List<StockItemId> ids = List.copyOf(items.keySet());
        Map<UUID, List<LaterDay>> later = queries.laterDays(location, ids, day).stream()
                .collect(Collectors.groupingBy(change -> change.lot().value()));
        return queries.lotsOnHand(location.value(), ids, later.keySet()).stream()
                .map(lot -> held(lot, later.getOrDefault(lot.lot(), List.of()), items))
                .toList();
    }

    private Held held(LotInLocation lot, List<LaterDay> later, Map<StockItemId, StockItem> items) {
        StockItem item = items.get(lot.item());
        if (item == null) {
            throw new IllegalStateException("a lot of an item that was not asked for");
        }
        return Held.before(
                new LotId(lot.lot()),
                lot.item(),
                Quantity.of(lot.quantity(), item.baseUnit()),
                books.money(lot.value()),
                later.stream()
                        .map(l -> new Change(Quantity.of(l.quantity(), item.baseUnit()), books.money(l.value())))
                        .toList());
    }

    /**
     * Refuses with {@link InventoryRefusal.GoodsGone} movements out of locked locations that do not hold the goods at that
     * value on the day and on every later one, and with {@link InventoryRefusal.NotThereYet} a day before the goods came.
     */
    public void requireRoomFor(LocalDate day, List<Movement> movements) {
        Map<LotStockKey, List<Movement>> byLocation = new LinkedHashMap<>();
        for (Movement movement : movements) {
            LotStockKey key =
                    new LotStockKey(movement.lot().value(), movement.location().value());
            byLocation.merge(key, List.of(movement), StockOnHand::joined);
        }
        byLocation.forEach((key, moved) -> {
            StockItem item = catalog.item(moved.getFirst().item());
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
                        item.name(),
                        queries.locationState(key.locationId()).name(),
                        day,
                        change.negated(),
                        held.free());
            }
        });
    }

    private void requireCame(UUID lot, StockItem item, LocalDate day) {
        for (LocalDate came : queries.cameAfter(lot, day)) {
            throw new InventoryRefusal.NotThereYet(item.name(), day, came);
        }
    }

    private Held held(Movement movement, LocalDate day, StockItem item) {
        return held(movement.location(), day, Map.of(item.id(), item)).stream()
                .filter(held -> held.lot().equals(movement.lot()))
                .findFirst()
                .orElseGet(() -> new Held(movement.lot(), item.id(), Quantity.zero(item.baseUnit()), books.zero()));
    }

    private static List<Movement> joined(List<Movement> one, List<Movement> other) {
        return Stream.concat(one.stream(), other.stream()).toList();
    }
}
