package eaveside.inventory.internal;

import eaveside.inventory.LotLevel;
import eaveside.inventory.StockItem;
import eaveside.inventory.StockLevel;
import eaveside.inventory.internal.StockQueries.ItemInLocation;
import eaveside.inventory.internal.StockQueries.LotInLocation;
import eaveside.kernel.LocationId;
import eaveside.kernel.LotId;
import eaveside.kernel.Quantity;
import eaveside.kernel.Shared;
import eaveside.kernel.StockItemId;
import eaveside.ledger.Books;
import jakarta.inject.Inject;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Reads what locations hold. */
@Shared
public class StockLevels {
    private final StockQueries queries;
    private final Books books;

    @Inject
    public StockLevels(StockQueries queries, Books books) {
        this.queries = queries;
        this.books = books;
    }

    /** Each item that the location holds or should hold, by name. */
    public List<StockLevel> of(LocationId location) {
        Map<UUID, ItemInLocation> held =
                queries.itemsIn(location.value()).stream().collect(Collectors.toMap(ItemInLocation::item, i -> i));
        Map<UUID, BigDecimal> least = queries.reorderPointsOf(location.value()).stream()
                .collect(Collectors.toMap(m -> m.key.itemId(), m -> m.quantity.value()));
        return queries.items().stream()
                .map(StockItemRow::content)
                .filter(item -> held.containsKey(item.id().value())
                        || least.containsKey(item.id().value()))
                .map(item -> level(
                        item, held.get(item.id().value()), least.get(item.id().value())))
                .toList();
    }

    private StockLevel level(StockItem item, @Nullable ItemInLocation held, @Nullable BigDecimal least) {
        return new StockLevel(
                item,
                held == null ? Quantity.zero(item.baseUnit()) : Quantity.of(held.quantity(), item.baseUnit()),
                held == null ? books.zero() : books.money(held.value()),
                least == null ? null : Quantity.of(least, item.baseUnit()));
    }

    /** What is left of the items in a location, lot by lot, oldest first. */
    public List<LotLevel> lots(LocationId location, List<StockItem> items) {
        if (items.isEmpty()) {
            return List.of();
        }
        Map<StockItemId, StockItem> byId = items.stream().collect(Collectors.toMap(StockItem::id, i -> i));
        return queries.lotsOnHand(location.value(), List.copyOf(byId.keySet()), List.of()).stream()
                .map(lot -> lotLevel(lot, byId))
                .toList();
    }

    private LotLevel lotLevel(LotInLocation lot, Map<StockItemId, StockItem> items) {
        StockItem item = Objects.requireNonNull(items.get(lot.item()));
        return new LotLevel(
                new LotId(lot.lot()),
                item,
                lot.label(),
                lot.receivedOn(),
                Quantity.of(lot.received(), item.baseUnit()),
                Quantity.of(lot.quantity(), item.baseUnit()),
                books.money(lot.value()));
    }
}
