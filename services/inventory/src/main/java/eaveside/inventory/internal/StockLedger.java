package eaveside.inventory.internal;

import eaveside.inventory.Drawn.DrawnLine;
import eaveside.inventory.StockItem;
import eaveside.kernel.DocumentId;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.LocationId;
import eaveside.kernel.LotId;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.Shared;
import eaveside.kernel.StockItemId;
import eaveside.ledger.AccountRole;
import eaveside.ledger.Books;
import eaveside.ledger.Entry;
import eaveside.ledger.Posted;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** Writes and reads the entries of the stock ledger. */
@Shared
public class StockLedger {
    private final EntityManager entities;
    private final StockQueries queries;
    private final Catalog catalog;
    private final Books books;

    @Inject
    public StockLedger(EntityManager entities, StockQueries queries, Catalog catalog, Books books) {
        this.entities = entities;
        this.queries = queries;
        this.catalog = catalog;
        this.books = books;
    }

    /** A lot coming into a location (quantity above zero) or leaving it (below); the value has the same sign, or is zero. */
    public record Movement(StockItemId item, LotId lot, LocationId location, Quantity quantity, Money value) {
        public Movement {
            if (quantity.isZero() || value.signum() * quantity.value().signum() < 0) {
                throw new IllegalArgumentException("a movement of " + quantity + " worth " + value);
            }
        }

        public static Movement out(LocationId location, DrawnLine line) {
            return in(location, line).mirrored();
        }

        public static Movement in(LocationId location, DrawnLine line) {
            return new Movement(line.draw().item(), line.lot(), location, line.quantity(), line.cost());
        }

        public Movement mirrored() {
            return new Movement(item, lot, location, quantity.negated(), value.negated());
        }
    }

    /** The money side of a movement: both entries, or none where nothing is worth nothing. */
    public static List<Entry> money(AccountRole debit, AccountRole credit, Money value, String note) {
        return value.isZero()
                ? List.of()
                : List.of(
                        Entry.debit(debit, value).noted(note),
                        Entry.credit(credit, value).noted(note));
    }

    /** What goods cost; refuses another currency than the company's. */
    public Money ours(Money cost) {
        return books.ours(cost, "cost");
    }

    /** Enters the movements under a posted document, after those that it has already. */
    public void record(Posted document, List<Movement> movements) {
        record(document, List.of(), movements);
    }

    /** The same with the lots that the movements bring in, which arrive in the order of their lines. */
    public void record(Posted document, List<NewLot> broughtIn, List<Movement> movements) {
        int line = queries.lastLineOf(document.id().value());
        Map<LotId, NewLot> lots = broughtIn.stream().collect(Collectors.toMap(NewLot::id, lot -> lot));
        List<StockEntryRow> entries = new ArrayList<>();
        for (Movement movement : movements) {
            entries.add(new StockEntryRow(document, ++line, movement));
            NewLot lot = lots.remove(movement.lot());
            if (lot != null) {
                entities.persist(new LotRow(lot, document, line));
            }
        }
        // The lots must stand before an entry points at them.
        entities.flush();
        entries.forEach(entities::persist);
        // What the location holds must be true for whatever the same transaction does next.
        entities.flush();
    }

    /** The entries of a document, in order; none for one that moved no stock. */
    public List<Movement> movements(DocumentId document) {
        return queries.entriesOf(document.value()).stream()
                .map(e -> e.toMovement(catalog.item(e.itemId).baseUnit(), books.currency()))
                .toList();
    }

    /**
     * Refuses a lot whose id, or label where each is kept by itself, is taken.
     *
     * @param  seen ids and labels of the lots before it, to which its own are added
     */
    public void requireFree(NewLot lot, Set<Object> seen) {
        if (!seen.add(lot.id())) {
            throw new KernelRefusal.Twice("lot");
        }
        if (entities.find(LotRow.class, lot.id().value()) != null) {
            throw new KernelRefusal.IdTaken("lot", lot.id(), lot.label(), "lot");
        }
        StockItem item = lot.item();
        if (item.type().isCountedSingly()
                && (!seen.add(List.of(item.id(), lot.label()))
                        || !queries.lotsLabeled(item.id(), lot.label()).isEmpty())) {
            throw new KernelRefusal.Taken("lot", "label", lot.label());
        }
    }

    /** Marks the lots that a reversed document had brought in: their cost and label no longer count. */
    public void withdrawLotsOf(DocumentId document) {
        queries.withdrawLots(document);
    }
}
