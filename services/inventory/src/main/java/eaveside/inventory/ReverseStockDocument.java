package eaveside.inventory;

import eaveside.inventory.internal.StockLedger;
import eaveside.inventory.internal.StockLedger.Movement;
import eaveside.inventory.internal.StockOnHand;
import eaveside.kernel.DocumentId;
import eaveside.kernel.Shared;
import eaveside.ledger.Decided;
import eaveside.ledger.DocumentType;
import eaveside.ledger.Lock;
import eaveside.ledger.Posted;
import eaveside.ledger.Posting;
import eaveside.ledger.ReadLedger;
import eaveside.ledger.ReverseDocument;
import eaveside.ledger.ReverseDocument.Reversal;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.transaction.Transactional.TxType;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/** Reverses a receipt, transfer, physical count or write-off in full, in both ledgers. */
@Shared
public class ReverseStockDocument {
    private static final Set<DocumentType> TYPES =
            Set.of(DocumentType.RECEIPT, DocumentType.TRANSFER, DocumentType.COUNT, DocumentType.WRITE_OFF);

    private final Posting posting;
    private final ReverseDocument reverseDocument;
    private final ReadLedger readLedger;
    private final StockOnHand stockOnHand;
    private final StockLedger stock;

    @Inject
    public ReverseStockDocument(
            Posting posting,
            ReverseDocument reverseDocument,
            ReadLedger readLedger,
            StockOnHand stockOnHand,
            StockLedger stock) {
        this.posting = posting;
        this.reverseDocument = reverseDocument;
        this.readLedger = readLedger;
        this.stockOnHand = stockOnHand;
        this.stock = stock;
    }

    /**
     * Posts the mirror. Refuses documents of other types and reversed ones, and with {@link InventoryRefusal.GoodsGone}
     * one whose goods are not where it put them on the reversal's day and every later one.
     */
    @Transactional
    public Posted reverse(Reversal reversal) {
        List<Lock> locks = List.of(
                Lock.of(Lock.Rank.RECORD, () -> requireOfStock(reversal.original())), lockOf(reversal.original()));
        return posting.post(
                "document.reverse",
                reversal,
                locks,
                day -> mirrored(reversal.original(), reverseDocument.reversed(DocumentType.REVERSAL, reversal)));
    }

    private void requireOfStock(DocumentId id) {
        Posted original = readLedger.document(id).posted();
        if (!TYPES.contains(original.type()) && original.type() != DocumentType.REVERSAL) {
            throw new InventoryRefusal.NotAStockDocument(
                    original.type().name().toLowerCase(Locale.ROOT).replace('_', ' ') + " " + original.number());
        }
    }

    /** The locations of another module's document that is about to be reversed. */
    @Transactional(TxType.MANDATORY)
    public Lock lockOf(DocumentId original) {
        return Lock.of(
                Lock.Rank.LOCATION,
                () -> stockOnHand.lock(stock.movements(original).stream()
                        .map(Movement::location)
                        .toList()));
    }

    /**
     * Has the stock entries of the original mirrored under its reversal once that is posted; nothing to do where it has none.
     * The reversal takes {@link #lockOf} the original. Refuses with {@link InventoryRefusal.GoodsGone} as above.
     */
    @Transactional(TxType.MANDATORY)
    public Decided mirrored(DocumentId original, Decided reversal) {
        return reversal.then(posted -> {
            // The last first: what a document brought into a lot before it drew from it leaves once the draw is back.
            List<Movement> mirror = stock.movements(original).reversed().stream()
                    .map(Movement::mirrored)
                    .toList();
            stockOnHand.requireRoomFor(posted.postingDate(), mirror);
            stock.record(posted, mirror);
            stock.withdrawLotsOf(original);
        });
    }
}
