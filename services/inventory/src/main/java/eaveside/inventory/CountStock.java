package eaveside.inventory;

import eaveside.inventory.internal.CountedDifference;
import eaveside.inventory.internal.Differences;
import eaveside.inventory.internal.LotsOnHand;
import eaveside.inventory.internal.StockLedger;
import eaveside.inventory.internal.StockOnHand;
import eaveside.kernel.Check;
import eaveside.kernel.Default;
import eaveside.kernel.DocumentId;
import eaveside.kernel.LocationId;
import eaveside.kernel.LotId;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.StockItemId;
import eaveside.kernel.UserId;
import eaveside.ledger.Decided;
import eaveside.ledger.DocumentType;
import eaveside.ledger.Lock;
import eaveside.ledger.Postable;
import eaveside.ledger.Posted;
import eaveside.ledger.Posting;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.transaction.Transactional.TxType;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Brings the books to what was counted. Missing goods leave oldest lot first at their cost; found goods come in at the
 * newest known cost of the item. A count is held against what had come and gone by its own day; what is missing must still
 * be there on the day that the count posts and on every later one.
 */
@Dependent
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

    /** What a counted quantity says. */
    public enum Basis {
        /** There was this much at the end of the count's day. */
        FOUND,
        /** There is this much more (above zero) or less (below) than the books hold. */
        DIFFERENCE
    }

    /**
     * One item counted, or one lot of it.
     *
     * @param  lot      null counts the item over all its lots in the location; canisters and brushes are counted by lot, but a
     *                 difference above zero without a lot enters a canister or brush that the books did not know
     * @param  quantity in the item's base unit or one like it
     * @param  cost     what all of the found goods are worth; null takes the newest unit cost of the item in the location, else
     *                 anywhere
     */
    public record Counted(
            StockItemId item,
            @Nullable LotId lot,
            @Default("FOUND") Basis basis,
            Quantity quantity,
            @Nullable Money cost) {
        public Counted {
            Check check = new Check();
            check.value(
                    () -> basis == Basis.FOUND
                            ? Limits.notNegative("quantity", quantity)
                            : Limits.bounded("quantity", quantity),
                    quantity);
            if (cost != null) {
                check.value(() -> Limits.notNegative("cost", cost), cost);
            }
            check.done();
        }

        public static Counted found(StockItemId item, @Nullable LotId lot, Quantity quantity) {
            return new Counted(item, lot, Basis.FOUND, quantity, null);
        }

        public static Counted difference(StockItemId item, @Nullable LotId lot, Quantity difference) {
            return new Counted(item, lot, Basis.DIFFERENCE, difference, null);
        }

        public Counted worth(Money total) {
            return new Counted(item, lot, basis, quantity, total);
        }
    }

    /**
     * A physical count of a location, and why it was made.
     *
     * @param  date at whose end the goods were counted; null for today
     */
    public record Count(
            DocumentId id, @Nullable LocalDate date, LocationId location, String reason, List<Counted> lines, UserId by)
            implements Postable {
        public Count {
            Check check = new Check();
            reason = check.required("reason", reason, 300);
            lines = List.copyOf(lines);
            check.that(!lines.isEmpty(), InventoryRefusal.NothingEntered::new);
            check.done();
        }

        @Override
        public DocumentId document() {
            return id;
        }
    }

    /** Posts the count; one that agrees with the books posts too, without entries. Refuses found goods of unknown cost. */
    @Transactional
    public Posted count(Count count) {
        return posting.post("stock.count", count, locks(count), day -> decide(count, day));
    }

    /**
     * The same inside another document's transaction, before that document draws: a job sheet that declares a difference.
     * The location stays locked, so a draw from the same location afterwards waits for nobody.
     */
    @Transactional(TxType.MANDATORY)
    public Posted countWithin(Count count) {
        return posting.within(count, locks(count), day -> decide(count, day));
    }

    private List<Lock> locks(Count count) {
        return List.of(stockOnHand.lockOf(count.location()));
    }

    private Decided decide(Count count, Posting.Day day) {
        LotsOnHand lots = stockOnHand.load(
                count.location(),
                posting.postingDay(DocumentType.COUNT, day.open()),
                count.lines().stream().map(Counted::item).toList());
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
