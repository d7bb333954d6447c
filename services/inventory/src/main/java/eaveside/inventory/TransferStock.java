package eaveside.inventory;

import eaveside.inventory.internal.Shelf;
import eaveside.inventory.internal.Shelves;
import eaveside.inventory.internal.StockLedger;
import eaveside.inventory.internal.StockLedger.Movement;
import eaveside.kernel.DocumentId;
import eaveside.kernel.Fingerprint;
import eaveside.kernel.PlaceId;
import eaveside.kernel.Texts;
import eaveside.kernel.UserId;
import eaveside.ledger.DocumentKind;
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
    private final Shelves shelves;
    private final StockLedger stock;

    @Inject
    public TransferStock(PostDocument postDocument, Shelves shelves, StockLedger stock) {
        this.postDocument = postDocument;
        this.shelves = shelves;
        this.stock = stock;
    }

    /** What moves where. The note may be empty. */
    public record Transfer(
            DocumentId id, LocalDate date, PlaceId from, PlaceId to, String note, List<Portion> lines, UserId by) {
        public Transfer {
            note = Texts.optional("note", note, 250);
            lines = List.copyOf(lines);
            if (lines.isEmpty()) {
                throw new InventoryRefusal.NothingEntered();
            }
            if (from.equals(to)) {
                throw new InventoryRefusal.SamePlace();
            }
        }
    }

    /**
     * Posts the transfer. Refuses more than the first place holds on its day and every later one, and a second place that is
     * out of use.
     */
    @Transactional
    public Posted transfer(Transfer transfer) {
        LocalDate open = postDocument.openDay(transfer.date());
        shelves.lock(List.of(transfer.from(), transfer.to()));
        Fingerprint fingerprint = Fingerprint.of(transfer);
        Optional<Posted> before = postDocument.alreadyPosted(transfer.id(), fingerprint);
        if (before.isPresent()) {
            return before.get();
        }
        String to = shelves.requireInUse(transfer.to());
        Shelf shelf = shelves.load(
                transfer.from(),
                postDocument.postingDay(DocumentKind.TRANSFER, open),
                transfer.lines().stream().map(Portion::item).toList());
        List<Movement> movements = new ArrayList<>();
        for (Drawn.DrawnLine line : shelf.takePortions(transfer.lines())) {
            movements.add(Movement.out(transfer.from(), line));
            movements.add(Movement.in(transfer.to(), line));
        }
        Posted posted = postDocument.post(NewDocument.of(
                transfer.id(),
                DocumentKind.TRANSFER,
                transfer.date(),
                "From " + shelf.place() + " to " + to + (transfer.note().isEmpty() ? "" : ": " + transfer.note()),
                transfer.by(),
                fingerprint,
                List.of()));
        stock.record(posted, movements);
        return posted;
    }
}
