package eaveside.inventory;

import eaveside.inventory.internal.LotsOnHand;
import eaveside.inventory.internal.StockLedger;
import eaveside.inventory.internal.StockLedger.Movement;
import eaveside.inventory.internal.StockOnHand;
import eaveside.kernel.LocationId;
import eaveside.kernel.Shared;
import eaveside.ledger.Books;
import eaveside.ledger.Posted;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.transaction.Transactional.TxType;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;

/**
 * Uses goods, inside the transaction of the document that uses them: {@link #draw} once, after the document's day was
 * opened and before the document is posted on that day or later, which then carries the cost; {@link #record} once it
 * stands.
 */
@Shared
public class DrawStock {
    private final StockOnHand stockOnHand;
    private final StockLedger stock;
    private final Books books;

    @Inject
    public DrawStock(StockOnHand stockOnHand, StockLedger stock, Books books) {
        this.stockOnHand = stockOnHand;
        this.stock = stock;
        this.books = books;
    }

    /**
     * Decides which lots the draws take from, and at which cost: the named lot, otherwise the oldest in the location first;
     * the last of a lot to leave the location takes the rest of its value. The location and its lots stay locked, in the order
     * of their ids, until the transaction ends. Refuses with {@link InventoryRefusal.NotEnough} what the books do not
     * hold on the day and on every later one; of a canister whose reading shows pure water they hold enough ({@link
     * Drawn.Overrun}), and {@link InventoryRefusal.CanisterSpent} says where the reading shows the opposite.
     *
     * @param  on the day that the document posts on, by {@code PostDocument.postingDay}
     */
    @Transactional(TxType.MANDATORY)
    public Drawn draw(LocationId from, LocalDate on, List<Draw> draws) {
        stockOnHand.lock(List.of(from));
        LotsOnHand lotsOnHand =
                stockOnHand.load(from, on, draws.stream().map(Draw::item).toList());
        List<Drawn.DrawnLine> lines = lotsOnHand.take(draws);
        return new Drawn(books.currency(), lines, lotsOnHand.overruns());
    }

    /** Enters what was drawn under the posted document. The money side is the document's own. */
    @Transactional(TxType.MANDATORY)
    public void record(Posted document, LocationId from, Drawn drawn) {
        Stream<Movement> corrected = drawn.overruns().stream()
                .map(over -> new Movement(over.item(), over.lot(), from, over.quantity(), books.zero()));
        Stream<Movement> out = drawn.lines().stream().map(line -> Movement.out(from, line));
        stock.record(document, Stream.concat(corrected, out).toList());
    }
}
