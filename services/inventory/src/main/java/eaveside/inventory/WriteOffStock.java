package eaveside.inventory;

import eaveside.inventory.internal.LotsOnHand;
import eaveside.inventory.internal.StockLedger;
import eaveside.inventory.internal.StockLedger.Movement;
import eaveside.inventory.internal.StockOnHand;
import eaveside.kernel.Check;
import eaveside.kernel.DocumentId;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.LocationId;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import eaveside.ledger.AccountRole;
import eaveside.ledger.Decided;
import eaveside.ledger.DocumentType;
import eaveside.ledger.Entry;
import eaveside.ledger.Lock;
import eaveside.ledger.Postable;
import eaveside.ledger.Posted;
import eaveside.ledger.Posting;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Writes off goods that are of no more use: spoiled soap, a spent canister, a worn brush. */
@Shared
public class WriteOffStock {
    private final Posting posting;
    private final StockOnHand stockOnHand;
    private final StockLedger stock;

    @Inject
    public WriteOffStock(Posting posting, StockOnHand stockOnHand, StockLedger stock) {
        this.posting = posting;
        this.stockOnHand = stockOnHand;
        this.stock = stock;
    }

    /**
     * What is written off, where it lay, and why.
     *
     * @param  date of the write-off; null for today
     */
    public record WriteOff(
            DocumentId id, @Nullable LocalDate date, LocationId location, String reason, List<Portion> lines, UserId by)
            implements Postable {
        public WriteOff {
            Check check = new Check();
            reason = check.required("reason", reason, 300);
            lines = List.copyOf(lines);
            check.that(!lines.isEmpty(), () -> new KernelRefusal.NoRows("lines"));
            check.done();
        }
    }

    /** Posts the write-off at the cost of the lots; refuses more than the location holds on its day and every later one. */
    @Transactional
    public Posted writeOff(WriteOff writeOff) {
        List<Lock> locks = List.of(stockOnHand.lockOf(writeOff.location()));
        return posting.post("stock.write-off", writeOff, locks, day -> {
            LotsOnHand lots = stockOnHand.load(
                    writeOff.location(),
                    posting.postingDay(DocumentType.WRITE_OFF, day.open()),
                    writeOff.lines().stream().map(Portion::item).toList());
            List<Movement> movements = new ArrayList<>();
            List<Entry> entries = new ArrayList<>();
            for (Drawn.DrawnLine line : lots.takePortions(writeOff.lines())) {
                String item = lots.item(line.draw().item()).name();
                movements.add(Movement.out(writeOff.location(), line));
                entries.addAll(StockLedger.money(AccountRole.WRITE_OFFS, AccountRole.INVENTORY, line.cost(), item));
            }
            String summary = "Written off in " + lots.location() + ": " + writeOff.reason();
            return Decided.document(DocumentType.WRITE_OFF, summary, entries)
                    .then(posted -> stock.record(posted, movements));
        });
    }
}
