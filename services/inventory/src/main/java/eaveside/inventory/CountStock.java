package eaveside.inventory;

import eaveside.inventory.internal.CountedDifference;
import eaveside.inventory.internal.Differences;
import eaveside.inventory.internal.LotsOnHand;
import eaveside.inventory.internal.StockLedger;
import eaveside.inventory.internal.StockOnHand;
import eaveside.kernel.Shared;
import eaveside.ledger.Decided;
import eaveside.ledger.DocumentType;
import eaveside.ledger.Lock;
import eaveside.ledger.Posted;
import eaveside.ledger.Posting;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.transaction.Transactional.TxType;
import java.util.List;

/**
 * Brings the books to what was counted. Missing goods leave oldest lot first at their cost; found goods come in at the
 * newest known cost of the item. A count is held against what had come and gone by its own day; what is missing must still
 * be there on the day that the count posts and on every later one.
 */
@Shared
public class CountStock {
    private final Posting posting;
    private final StockOnHand stockOnHand;
    private final Differences differences;
    private final StockLedger stock;

    @Inject
    public CountStock(Posting posting, StockOnHand stockOnHand, Differences differences, StockLedger stock) {
        this.posting = posting;
        this.stockOnHand = stockOnHand;
        this.differences = differences;
        this.stock = stock;
    }

    /**
     * Posts the count; one that agrees with the books posts too, without entries. Refuses found goods of unknown cost, and a
     * count of a lot before the lot came to the location.
     */
    @Transactional
    public Posted count(StockCount count) {
        return posting.post("stock.count", count, locks(count), day -> {
            LotsOnHand lots = lots(count, day);
            differences.requireCame(count, day.date(), lots);
            return decide(count, day, lots);
        });
    }

    /**
     * The same inside another document's transaction, before that document draws: a job sheet that declares a difference.
     * The location stays locked, so a draw from the same location afterwards waits for nobody.
     */
    @Transactional(TxType.MANDATORY)
    public Posted countWithin(StockCount count) {
        return posting.within(count, locks(count), day -> decide(count, day, lots(count, day)));
    }

    private List<Lock> locks(StockCount count) {
        return List.of(stockOnHand.lockOf(count.location()));
    }

    private LotsOnHand lots(StockCount count, Posting.Day day) {
        return stockOnHand.load(
                count.location(),
                posting.postingDay(DocumentType.COUNT, day.open()),
                count.lines().stream().map(CountedItem::item).toList());
    }

    private Decided decide(StockCount count, Posting.Day day, LotsOnHand lots) {
        List<CountedDifference> found = differences.of(count, day.date(), lots);
        return Decided.document(
                        DocumentType.COUNT,
                        "Counted in " + lots.location() + ": " + count.reason(),
                        found.stream().flatMap(d -> d.money().stream()).toList())
                .then(posted -> stock.record(
                        posted,
                        found.stream()
                                .flatMap(d -> d.newLot(posted, day.date()).stream())
                                .toList(),
                        found.stream().map(CountedDifference::movement).toList()));
    }
}
