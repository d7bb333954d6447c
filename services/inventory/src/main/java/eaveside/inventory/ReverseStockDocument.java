package eaveside.inventory;

import eaveside.inventory.internal.StockLedger;
import eaveside.inventory.internal.StockLedger.Movement;
import eaveside.inventory.internal.StockOnHand;
import eaveside.kernel.DocumentId;
import eaveside.kernel.Fingerprint;
import eaveside.ledger.DocumentType;
import eaveside.ledger.PostDocument;
import eaveside.ledger.Posted;
import eaveside.ledger.ReadLedger;
import eaveside.ledger.ReverseDocument;
import eaveside.ledger.ReverseDocument.Reversal;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.transaction.Transactional.TxType;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/** Reverses a receipt, transfer, count or writing off in full, in both ledgers. */
@Dependent
public class ReverseStockDocument {
    private static final Set<DocumentType> TYPES =
            Set.of(DocumentType.RECEIPT, DocumentType.TRANSFER, DocumentType.COUNT, DocumentType.WRITE_OFF);

    private final PostDocument postDocument;
    private final ReverseDocument reverseDocument;
    private final ReadLedger readLedger;
    private final StockOnHand stockOnHand;
    private final StockLedger stock;

    @Inject
    public ReverseStockDocument(
            PostDocument postDocument,
            ReverseDocument reverseDocument,
            ReadLedger readLedger,
            StockOnHand stockOnHand,
            StockLedger stock) {
        this.postDocument = postDocument;
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
        Posted original = readLedger.document(reversal.original()).posted();
        if (!TYPES.contains(original.type()) && original.type() != DocumentType.REVERSAL) {
            throw new InventoryRefusal.NotAStockDocument(
                    original.type().name().toLowerCase(Locale.ROOT).replace('_', ' ') + " " + original.number());
        }
        postDocument.openDay(reversal.date());
        lockWithin(reversal.original());
        Optional<Posted> before = postDocument.alreadyPosted(reversal.id(), Fingerprint.of(reversal));
        if (before.isPresent()) {
            return before.get();
        }
        Posted posted = reverseDocument.reverse(DocumentType.REVERSAL, reversal);
        mirrorWithin(reversal.original(), posted);
        return posted;
    }

    /**
     * Locks the places of another module's document that is about to be reversed: after its day was opened, before {@link
     * ReverseDocument#reverse} takes the number counter, since the locks have one order everywhere.
     */
    @Transactional(TxType.MANDATORY)
    public void lockWithin(DocumentId original) {
        List<Movement> movements = stock.movements(original);
        stockOnHand.lock(movements.stream().map(Movement::location).toList());
    }

    /**
     * Mirrors the stock entries of the original under its posted reversal; nothing to do where it has none. Call {@link
     * #lockWithin} first. Refuses with {@link InventoryRefusal.GoodsGone} as above.
     */
    @Transactional(TxType.MANDATORY)
    public void mirrorWithin(DocumentId original, Posted reversal) {
        // The last first: what a document brought into a lot before it drew from it leaves once the draw is back.
        List<Movement> mirror = stock.movements(original).reversed().stream()
                .map(Movement::mirrored)
                .toList();
        stockOnHand.lock(mirror.stream().map(Movement::location).toList());
        stockOnHand.requireRoomFor(reversal.postingDate(), mirror);
        stock.record(reversal, mirror);
        stock.withdrawLotsOf(original);
    }
}
