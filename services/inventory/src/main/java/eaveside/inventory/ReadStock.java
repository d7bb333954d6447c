package eaveside.inventory;

import eaveside.access.Edits;
import eaveside.inventory.internal.Catalog;
import eaveside.inventory.internal.EntrySearch;
import eaveside.inventory.internal.LocationRow;
import eaveside.inventory.internal.LotRow;
import eaveside.inventory.internal.MixRow;
import eaveside.inventory.internal.ReorderPointRow;
import eaveside.inventory.internal.StockItemRow;
import eaveside.inventory.internal.StockLevels;
import eaveside.inventory.internal.StockQueries;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.LocationId;
import eaveside.kernel.LotId;
import eaveside.kernel.MixId;
import eaveside.kernel.Quantity;
import eaveside.kernel.Shared;
import eaveside.kernel.Slice;
import eaveside.kernel.StockItemId;
import eaveside.kernel.Texts;
import eaveside.kernel.UnitPrice;
import eaveside.kernel.UserId;
import eaveside.ledger.Books;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.hibernate.query.Page;
import org.jspecify.annotations.Nullable;

/** What there is, where, what it cost, and how it came to be so. */
@Shared
public class ReadStock {
    private final EntityManager entities;
    private final Edits edits;
    private final StockQueries queries;
    private final Catalog catalog;
    private final StockLevels levels;
    private final EntrySearch search;
    private final Books books;

    @Inject
    public ReadStock(
            EntityManager entities,
            Edits edits,
            StockQueries queries,
            Catalog catalog,
            StockLevels levels,
            EntrySearch search,
            Books books) {
        this.entities = entities;
        this.edits = edits;
        this.queries = queries;
        this.catalog = catalog;
        this.levels = levels;
        this.search = search;
        this.books = books;
    }

    /** All items, by name. */
    @Transactional
    public List<StockItem> items() {
        return queries.items().stream().map(StockItemRow::content).toList();
    }

    /**
     * The items whose code or name holds the text, by name, paged by key. A company keeps some hundred items, so they are
     * read whole.
     */
    @Transactional
    public Slice<StockItem> find(String text, @Nullable String after, int size) {
        String wanted = text.strip().toLowerCase(Locale.ROOT);
        List<StockItem> found = items().stream()
                .filter(item -> (item.code() + " " + item.name())
                        .toLowerCase(Locale.ROOT)
                        .contains(wanted))
                .toList();
        List<String> keys = found.stream().map(item -> item.id().toString()).toList();
        int start = after == null ? 0 : keys.indexOf(after) + 1;
        if (after != null && start == 0) {
            throw new KernelRefusal.BadPageKey();
        }
        return Slice.of(
                found.subList(start, Math.min(found.size(), start + size + 1)),
                size,
                item -> item.id().toString());
    }

    /** A few items for a search: each word begins a word of the code or name or, where none does, comes close to one. */
    @Transactional
    public List<StockItem> itemHits(String text, int most) {
        return queries.itemsLike(text, most).stream().map(StockItemRow::content).toList();
    }

    /** A few lots for a search, whose label begins so; the newest first. */
    @Transactional
    public List<Lot> lotHits(String text, int most) {
        return queries.lotsBeginning(Texts.beginning(text), Page.first(most)).stream()
                .map(row -> row.toLot(books.currency()))
                .toList();
    }

    @Transactional
    public StockItem item(StockItemId id) {
        return catalog.item(id);
    }

    /** Store rooms, then vans, each by name. */
    @Transactional
    public List<Location> locations() {
        return queries.locations().stream().map(LocationRow::content).toList();
    }

    @Transactional
    public Location location(LocationId id) {
        return edits.read(LocationRow.class, id, "location");
    }

    /** The van that a technician drives with, if any. */
    @Transactional
    public Optional<Location> vanOf(UserId technician) {
        return queries.vansOf(technician.value()).stream()
                .map(LocationRow::content)
                .findFirst();
    }

    /** All mixes, by name. */
    @Transactional
    public List<Mix> mixes() {
        return queries.mixes().stream().map(MixRow::content).toList();
    }

    @Transactional
    public Mix mix(MixId id) {
        return edits.read(MixRow.class, id, "mix");
    }

    @Transactional
    public Lot lot(LotId id) {
        LotRow row = entities.find(LotRow.class, id.value());
        if (row == null) {
            throw new KernelRefusal.NotFound("lot", id);
        }
        return row.toLot(books.currency());
    }

    /** Each item that the location holds or should hold, by name. */
    @Transactional
    public List<StockLevel> levels(LocationId location) {
        return levels.of(location);
    }

    /** What is left of an item in a location, lot by lot, oldest first. */
    @Transactional
    public List<LotLevel> lots(LocationId location, StockItemId item) {
        return levels.lots(location, List.of(catalog.item(item)));
    }

    /** The canisters and brushes in a location that have something left, oldest first: what a job sheet offers. */
    @Transactional
    public List<LotLevel> countedSingly(LocationId location) {
        return levels.lots(
                location,
                items().stream().filter(i -> i.type().isCountedSingly()).toList());
    }

    /** The item's reorder point in each location that has one, in its base unit. */
    @Transactional
    public Map<LocationId, Quantity> reorderPoints(StockItemId item) {
        return queries.reorderPointsFor(catalog.item(item).id().value()).stream()
                .collect(Collectors.toUnmodifiableMap(ReorderPointRow::location, ReorderPointRow::least));
    }

    /**
     * What the item cost when it last came in anywhere, as the whole cost for the whole quantity; empty where it never came
     * in with a cost. An expectation for quotes: a use is valued by its own lots.
     */
    @Transactional
    public Optional<UnitPrice> newestCost(StockItemId item) {
        return queries.newestCostedLot(item).stream()
                .map(lot -> lot.price(books.currency()))
                .findFirst();
    }

    /** The entries of a filter, newest first, paged by key. */
    @Transactional
    public Slice<StockEntryLine> entries(StockEntryFilter filter, @Nullable String after, int size) {
        return search.find(filter, after, size);
    }
}
