package eaveside.inventory;

import eaveside.inventory.internal.Shelves;
import eaveside.inventory.internal.StockLedger;
import eaveside.inventory.internal.StockLedger.Movement;
import eaveside.kernel.DocumentId;
import eaveside.kernel.Fingerprint;
import eaveside.ledger.DocumentKind;
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

/** Reverses a receipt, transfer, count or scrapping in full, in both ledgers. */
@Dependent
public class ReverseStockDocument {
    private static final Set<DocumentKind> KINDS =
            Set.of(DocumentKind.RECEIPT, DocumentKind.TRANSFER, DocumentKind.COUNT, DocumentKind.SCRAP);

    private final PostDocument postDocument;
    private final ReverseDocument reverseDocument;
    private final ReadLedger readLedger;
    private final Shelves shelves;
    private final StockLedger stock;

    @Inject
    public ReverseStockDocument(
            PostDocument postDocument,
            ReverseDocument reverseDocument,
            ReadLedger readLedger,
            Shelves shelves,
            StockLedger stock) {
        this.postDocument = postDocument;
        this.reverseDocument = reverseDocument;
        this.readLedger = readLedger;
        this.shelves = shelves;
        this.stock = stock;
    }

    /**
     * Posts the mirror. Refuses documents of other kinds and reversed ones, and with {@link InventoryRefusal.GoodsGone}
     * one whose goods are not where it put them on the reversal's day and every later one.
     */
    @Transactional
    public Posted reverse(Reversal reversal) {
        Posted original = readLedger.document(reversal.original()).posted();
        if (!KINDS.contains(original.kind()) && original.kind() != DocumentKind.REVERSAL) {
            throw new InventoryRefusal.NotAStockDocument(
                    original.kind().name().toLowerCase(Locale.ROOT).replace('_', ' ') + " " + original.number());
        }
        postDocument.openDay(reversal.date());
        lockWithin(reversal.original());
        Optional<Posted> before = postDocument.alreadyPosted(reversal.id(), Fingerprint.of(reversal));
        if (before.isPresent()) {
            return before.get();
        }
        Posted posted = reverseDocument.reverse(DocumentKind.REVERSAL, reversal);
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
        shelves.lock(movements.stream().map(Movement::place).toList());
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
        shelves.lock(mirror.stream().map(Movement::place).toList());
        shelves.requireRoomFor(reversal.postingDate(), mirror);
        stock.record(reversal, mirror);
        stock.withdrawLotsOf(original);
    }
}
