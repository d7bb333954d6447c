package eaveside.inventory;

import eaveside.inventory.internal.LotsOnHand;
import eaveside.inventory.internal.StockLedger;
import eaveside.inventory.internal.StockLedger.Movement;
import eaveside.inventory.internal.StockOnHand;
import eaveside.kernel.DocumentId;
import eaveside.kernel.Fingerprint;
import eaveside.kernel.LocationId;
import eaveside.kernel.Texts;
import eaveside.kernel.UserId;
import eaveside.ledger.DocumentType;
import eaveside.ledger.NewDocument;
import eaveside.ledger.PostDocument;
import eaveside.ledger.Posted;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Moves goods from one place to another. Each lot takes its cost along, so the money ledger has nothing to say. */
@Dependent
public class TransferStock {
    private final PostDocument postDocument;
    private final StockOnHand stockOnHand;
    private final StockLedger stock;

    @Inject
    public TransferStock(PostDocument postDocument, StockOnHand stockOnHand, StockLedger stock) {
        this.postDocument = postDocument;
        this.stockOnHand = stockOnHand;
        this.stock = stock;
    }

    /** What moves where. The note may be empty. */
    public record Transfer(
            DocumentId id,
            LocalDate date,
            LocationId from,
            LocationId to,
            String note,
            List<Portion> lines,
            UserId by) {
        public Transfer {
            note = Texts.optional("note", note, 250);
            lines = List.copyOf(lines);
            if (lines.isEmpty()) {
                throw new InventoryRefusal.NothingEntered();
            }
            if (from.equals(to)) {
                throw new InventoryRefusal.SameLocation();
            }
        }
    }

    /**
     * Posts the transfer. Refuses more than the first place holds on its day and every later one, and a second location that is
     * out of use.
     */
    @Transactional
    public Posted transfer(Transfer transfer) {
        LocalDate open = postDocument.openDay(transfer.date());
        stockOnHand.lock(List.of(transfer.from(), transfer.to()));
        Fingerprint fingerprint = Fingerprint.of(transfer);
        Optional<Posted> before = postDocument.alreadyPosted(transfer.id(), fingerprint);
        if (before.isPresent()) {
            return before.get();
        }
        String to = stockOnHand.requireInUse(transfer.to());
        LotsOnHand lotsOnHand = stockOnHand.load(
                transfer.from(),
                postDocument.postingDay(DocumentType.TRANSFER, open),
                transfer.lines().stream().map(Portion::item).toList());
        List<Movement> movements = new ArrayList<>();
        for (Drawn.DrawnLine line : lotsOnHand.takePortions(transfer.lines())) {
            movements.add(Movement.out(transfer.from(), line));
            movements.add(Movement.in(transfer.to(), line));
        }
        Posted posted = postDocument.post(NewDocument.of(
                transfer.id(),
                DocumentType.TRANSFER,
                transfer.date(),
                "From " + lotsOnHand.location() + " to " + to
                        + (transfer.note().isEmpty() ? "" : ": " + transfer.note()),
                transfer.by(),
                fingerprint,
                List.of()));
        stock.record(posted, movements);
        return posted;
    }
}
