package eaveside.inventory.internal;

import eaveside.inventory.CountBasis;
import eaveside.inventory.CountedItem;
import eaveside.inventory.Draw;
import eaveside.inventory.Drawn.DrawnLine;
import eaveside.inventory.InventoryRefusal;
import eaveside.inventory.StockCount;
import eaveside.inventory.StockItem;
import eaveside.inventory.internal.StockLedger.Movement;
import eaveside.inventory.internal.StockQueries.LotCame;
import eaveside.inventory.internal.StockQueries.LotMoved;
import eaveside.kernel.Elements;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.LocationId;
import eaveside.kernel.LotId;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.Shared;
import eaveside.ledger.Books;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/** Decides what a count moves: which lots lose goods, and what found goods are worth. */
@Shared
public class Differences {
    private final EntityManager entities;
    private final StockQueries queries;
    private final StockLedger stock;
    private final Books books;

    @Inject
    public Differences(EntityManager entities, StockQueries queries, StockLedger stock, Books books) {
        this.entities = entities;
        this.queries = queries;
        this.stock = stock;
        this.books = books;
    }

    public List<CountedDifference> of(StockCount count, LocalDate day, LotsOnHand lotsOnHand) {
        requireOnce(count, lotsOnHand);
        List<CountedDifference> differences = new ArrayList<>();
        Elements.each("lines", count.lines(), (line, i) -> {
            Money said = line.cost();
            if (said != null) {
                stock.ours(said); // also where nothing is found that it would be the cost of
            }
            Quantity difference = difference(line, count, day, lotsOnHand);
            StockItem item = lotsOnHand.item(line.item());
            if (difference.isNegative()) {
                for (DrawnLine missing : lotsOnHand.take(new Draw(item.id(), line.lot(), difference.negated()))) {
                    differences.add(new CountedDifference(i, item, Movement.out(count.location(), missing), false));
                }
            } else if (difference.isPositive()) {
                LotId named = line.lot();
                LotId lot = named == null ? LotId.next() : named;
                Money worth = worth(line, item, count.location(), difference).held("quantity");
                differences.add(new CountedDifference(
                        i, item, new Movement(item.id(), lot, count.location(), difference, worth), named == null));
            }
        });
        return differences;
    }

    /**
     * Refuses a count of a lot on a day before the lot came to the location. A job sheet is not held to it: its technician had
     * the lot before him, and it is the receipt or the transfer that was entered late.
     */
    public void requireCame(StockCount count, LocalDate day, LotsOnHand lotsOnHand) {
        Elements.each("lines", count.lines(), (line, i) -> {
            LotId named = line.lot();
            LotRow lot = named == null ? null : entities.find(LotRow.class, named.value());
            if (lot != null) {
                LocalDate came = came(count.location(), lot).on();
                if (day.isBefore(came)) {
                    throw new InventoryRefusal.NotThereYet(
                            lotsOnHand.item(line.item()).name(), day, came);
                }
            }
        });
    }

    /** The first coming into the location; what is found where it never came is as old as its receipt. */
    private LotCame came(LocationId location, LotRow lot) {
        return queries.lotCame(location, new LotId(lot.id)).stream()
                .findFirst()
                .orElseGet(() -> new LotCame(lot.documentId.value(), lot.receivedOn));
    }

    private Quantity difference(CountedItem line, StockCount count, LocalDate day, LotsOnHand lotsOnHand) {
        StockItem item = lotsOnHand.item(line.item());
        LotId named = line.lot();
        LotRow lot = named == null ? null : there(named, item, lotsOnHand);
        Quantity said =
                item.inBaseUnit(line.quantity()).bounded("quantity"); // what is a drop in one unit is a sea in another
        boolean foundOne = line.basis() == CountBasis.DIFFERENCE && said.isPositive();
        if (named == null && item.type().isCountedSingly() && !foundOne) {
            throw new InventoryRefusal.LotNotNamed(item.name());
        }
        if (line.basis() == CountBasis.DIFFERENCE) {
            return said;
        }
        // What had come and gone by the count's day, whenever it was posted: that is what was there to count.
        List<LotMoved> since = lot == null
                ? queries.movedAfter(count.location(), item.id(), day)
                : queries.lotMovedAfter(
                        count.location(),
                        new LotId(lot.id),
                        came(count.location(), lot).document(),
                        day);
        BigDecimal moved = since.stream().map(LotMoved::quantity).reduce(BigDecimal.ZERO, BigDecimal::add);
        return said.minus(lotsOnHand.now(item.id(), named).minus(Quantity.of(moved, item.baseUnit())));
    }

    private LotRow there(LotId named, StockItem item, LotsOnHand lotsOnHand) {
        LotRow lot = entities.find(LotRow.class, named.value());
        if (lot == null || !lot.item().equals(item.id()) || !lot.stands()) {
            throw new KernelRefusal.NotFound("lot", named);
        }
        if (lotsOnHand.day().isBefore(lot.postingDate)) {
            throw new InventoryRefusal.NotThereYet(item.name(), lotsOnHand.day(), lot.postingDate);
        }
        return lot;
    }

    private Money worth(CountedItem line, StockItem item, LocationId location, Quantity found) {
        Money given = line.cost();
        if (given != null) {
            return given;
        }
        List<LotRow> newest = queries.newestCostedLotIn(location.value(), item.id());
        if (newest.isEmpty()) {
            newest = queries.newestCostedLot(item.id());
        }
        if (newest.isEmpty()) {
            throw new InventoryRefusal.CostUnknown(item.name());
        }
        return newest.getFirst().price(books.currency()).times(found);
    }

    /** A count says one thing about each of the goods: an item as a whole, or its lots, each once. */
    private static void requireOnce(StockCount count, LotsOnHand lotsOnHand) {
        Elements.each("lines", count.lines(), (line, i) -> {
            StockItem item = lotsOnHand.item(line.item());
            // Two rows of what is counted singly, without their lots, each add another one.
            boolean adds = line.lot() == null && item.type().isCountedSingly();
            if (count.lines().stream()
                    .limit(i)
                    .anyMatch(before -> overlap(line, before) && !(adds && before.lot() == null))) {
                throw new KernelRefusal.Twice("item");
            }
        });
    }

    private static boolean overlap(CountedItem one, CountedItem other) {
        return one.item().equals(other.item())
                && (one.lot() == null || other.lot() == null || one.lot().equals(other.lot()));
    }
}
