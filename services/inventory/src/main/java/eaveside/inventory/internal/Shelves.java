package eaveside.inventory.internal;

import eaveside.inventory.InventoryRefusal;
import eaveside.inventory.StockItem;
import eaveside.inventory.internal.Shelf.Held;
import eaveside.inventory.internal.StockLedger.Movement;
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
import java.math.BigDecimal;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
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

    /** What a locked place holds of the items; their lots there are locked in the order of their ids. */
    public Shelf load(PlaceId place, List<StockItemId> wanted) {
        Map<StockItemId, StockItem> items = new LinkedHashMap<>();
        wanted.forEach(id -> items.computeIfAbsent(id, catalogue::item));
        String name = queries.placeState(place.value()).name();
        if (items.isEmpty()) {
            return new Shelf(name, items, List.of());
        }
        List<UUID> ids = items.keySet().stream().map(StockItemId::value).toList();
        queries.lockLots(place.value(), ids);
        List<Held> lots = queries.lotsOnShelf(place.value(), ids).stream()
                .map(lot -> held(lot, items))
                .toList();
        return new Shelf(name, items, lots);
    }

    private Held held(LotInPlace lot, Map<StockItemId, StockItem> items) {
        StockItemId id = new StockItemId(lot.item());
        StockItem item = items.get(id);
        if (item == null) {
            throw new IllegalStateException("a lot of an item that was not asked for");
        }
        return new Held(
                new LotId(lot.lot()), id, Quantity.of(lot.quantity(), item.baseUnit()), books.money(lot.value()));
    }

    /**
     * Refuses with {@link InventoryRefusal.GoodsGone} movements out of locked places that no longer hold the goods at
     * that value.
     */
    public void requireRoomFor(List<Movement> movements) {
        Map<LotStockKey, List<Movement>> byShelf = new LinkedHashMap<>();
        for (Movement movement : movements) {
            LotStockKey key =
                    new LotStockKey(movement.lot().value(), movement.place().value());
            byShelf.merge(key, List.of(movement), Shelves::joined);
        }
        byShelf.forEach((key, moved) -> {
            List<LotInPlace> there = queries.lotIn(key.lotId(), key.placeId());
            BigDecimal quantity =
                    there.isEmpty() ? BigDecimal.ZERO : there.getFirst().quantity();
            Money value = there.isEmpty()
                    ? books.zero()
                    : books.money(there.getFirst().value());
            for (Movement movement : moved) {
                quantity = quantity.add(movement.quantity().value());
                value = value.plus(movement.value());
            }
            boolean emptyButWorthSomething = quantity.signum() == 0 && !value.isZero();
            if (quantity.signum() < 0 || value.isNegative() || emptyButWorthSomething) {
                throw new InventoryRefusal.GoodsGone(
                        catalogue.item(moved.getFirst().item()).name(),
                        queries.placeState(key.placeId()).name());
            }
        });
    }

    private static List<Movement> joined(List<Movement> one, List<Movement> other) {
        return Stream.concat(one.stream(), other.stream()).toList();
    }
}
