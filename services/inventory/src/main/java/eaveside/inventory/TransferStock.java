package eaveside.inventory;

import eaveside.inventory.internal.LotsOnHand;
import eaveside.inventory.internal.StockLedger;
import eaveside.inventory.internal.StockLedger.Movement;
import eaveside.inventory.internal.StockOnHand;
import eaveside.kernel.Check;
import eaveside.kernel.Default;
import eaveside.kernel.DocumentId;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.LocationId;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import eaveside.ledger.Decided;
import eaveside.ledger.DocumentType;
import eaveside.ledger.Lock;
import eaveside.ledger.Postable;
import eaveside.ledger.Posted;
import eaveside.ledger.Posting;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Transfers goods from one location to another. Each lot takes its cost along, so the money ledger has nothing to say. */
@Shared
public class TransferStock {
    private final Posting posting;
    private final StockOnHand stockOnHand;
    private final StockLedger stock;

    @Inject
    public TransferStock(Posting posting, StockOnHand stockOnHand, StockLedger stock) {
        this.posting = posting;
        this.stockOnHand = stockOnHand;
        this.stock = stock;
    }

    /**
     * What is transferred, and where.
     *
     * @param  date of the transfer; null for today
     * @param  note may be empty
     */
    public record Transfer(
            DocumentId id,
            @Nullable LocalDate date,
            LocationId from,
            LocationId to,
            @Default String note,
            List<Portion> lines,
            UserId by)
            implements Postable {
        public Transfer {
            Check check = new Check();
            note = check.optional("note", note, 250);
            lines = List.copyOf(lines);
            check.that(!lines.isEmpty(), () -> new KernelRefusal.NoRows("lines"));
            check.that(!from.equals(to), InventoryRefusal.SameLocation::new);
            check.done();
        }
    }

    /**
     * Posts the transfer. Refuses more than the first location holds on its day and every later one, and a second location that
     * is not active.
     */
    @Transactional
    public Posted transfer(Transfer transfer) {
        List<Lock> locks = List.of(stockOnHand.lockOf(transfer.from(), transfer.to()));
        return posting.post("stock.transfer", transfer, locks, day -> {
            String to = stockOnHand.requireActive(transfer.to());
            LotsOnHand lots = stockOnHand.load(
                    transfer.from(),
                    posting.postingDay(DocumentType.TRANSFER, day.open()),
                    transfer.lines().stream().map(Portion::item).toList());
            List<Movement> movements = lots.takePortions(transfer.lines()).stream()
                    .flatMap(line -> Stream.of(Movement.out(transfer.from(), line), Movement.in(transfer.to(), line)))
                    .toList();
            String summary =
                    "From " + lots.location() + " to " + to + (transfer.note().isEmpty() ? "" : ": " + transfer.note());
            return Decided.document(DocumentType.TRANSFER, summary, List.of())
                    .then(posted -> stock.record(posted, movements));
        });
    }
}
